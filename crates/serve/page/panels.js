// Small drawings, and the pieces that all drawings are made of.
import { fixed } from "./words.js";

const SVG = "http://www.w3.org/2000/svg";

/** An SVG element. */
export function element(parent, name, attributes) {
  const made = parent.appendChild(document.createElementNS(SVG, name));
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
}

/** A straight line. */
export const line = (parent, [x1, y1], [x2, y2], kind) =>
  element(parent, "line", { x1: x1.toFixed(1), y1: y1.toFixed(1), x2: x2.toFixed(1), y2: y2.toFixed(1), class: kind });

/** A line through points, closed or not. */
export const path = (parent, points, kind, closed) =>
  element(parent, closed ? "polygon" : "polyline",
    { points: points.map(([x, y]) => `${x.toFixed(2)},${y.toFixed(2)}`).join(" "), class: kind });

/** Words at a place. */
export function text(parent, x, y, words, kind) {
  const made = element(parent, "text", { x: x.toFixed(1), y: y.toFixed(1), class: kind });
  made.textContent = words;
  return made;
}

/** Words that stay readable over lines. */
export const halo = (parent, x, y, words, kind) => text(parent, x, y, words, `${kind} halo`);

/** Steps of an axis from 0 to at least `most`: 1, 2 or 5 times a power of ten, at most five of them. */
export function steps(most) {
  const rough = Math.max(most, 1e-9) / 4, power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map(own => own * power).find(own => own >= rough * 0.999);
  return { step, count: Math.ceil(most / step - 1e-9) };
}

/** Wear of each rib of the tires of a wheel over that upright, as bars from 1; outboard as it stands on the sheet. */
export function drawRibBars(parent, { x, y, width, height }, { tires, then, side }) {
  const group = element(parent, "g", { class: "ribs" });
  const ribs = tires.flatMap((own, tire) => own.map((rib, number) => ({ rib, tire, number })));
  // Left of the vehicle is on the left, so that the left wheel has its outboard side there.
  const sign = side === "left" ? 1 : -1;
  ribs.sort((a, b) => a.tire - b.tire || b.number - a.number);
  if (sign < 0) ribs.reverse();
  const wears = ribs.map(({ rib }) => rib.wear_against_upright ?? 1);
  const before = then?.flat().map(rib => rib.wear_against_upright ?? 1) ?? [];
  const most = Math.max(0.1, ...[...wears, ...before].map(wear => Math.abs(wear - 1)));
  const { step, count } = steps(most);
  const left = x + 30, right = x + width - 4, top = y + 22, bottom = y + height - 30;
  const middle = (top + bottom) / 2, scale = (bottom - top) / 2 / (step * count);
  text(group, x, y + 6, `wear of each rib over upright, ${side} wheel`, "small muted");
  for (let i = -count; i <= count; i += 1) {
    const at = middle - scale * step * i;
    line(group, [left, at], [right, at], i === 0 ? "axis" : "grid");
    if (count < 4 || i % 2 === 0) text(group, left - 4, at + 4, fixed(1 + step * i, step < 0.1 ? 2 : 1), "tick end");
  }
  const slots = ribs.length + (tires.length - 1), room = (right - left) / slots;
  let slot = 0;
  ribs.forEach(({ tire, number }, i) => {
    if (i > 0 && ribs[i - 1].tire !== tire) slot += 1;
    const from = left + room * slot, wear = wears[i] - 1;
    element(group, "rect", { x: (from + 2).toFixed(1), width: Math.max(2, room - 4).toFixed(1),
      y: (middle - Math.max(0, scale * wear)).toFixed(1), height: Math.max(0.5, Math.abs(scale * wear)).toFixed(1),
      class: wear >= 0 ? "more" : "less" });
    const old = then?.[tire]?.[number]?.wear_against_upright;
    if (old !== undefined && old !== null) {
      const at = middle - scale * (old - 1);
      line(group, [from, at], [from + room, at], "then");
    }
    slot += 1;
  });
  const names = tires.length > 1 ? ["outer tire", "inner tire"] : ["tire"];
  if (sign < 0) names.reverse();
  const share = (right - left) / tires.length;
  names.forEach((name, number) => text(group, left + share * (number + 0.5), bottom + 15, name, "small muted middle"));
  text(group, sign > 0 ? left : right, bottom + 28, "outboard", sign > 0 ? "tick" : "tick end");
  text(group, sign > 0 ? right : left, bottom + 28, "inboard", sign > 0 ? "tick end" : "tick");
}
