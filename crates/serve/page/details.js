// What stands about the axle on the sheet: its section, the wear of its ribs, what its camber is made of, the title block.
import { drawRibBars, element, halo, line, path, text } from "./panels.js";
import { fixed, inUnit, shown, unit } from "./words.js";

const SIDES = ["left", "right"];
/** Room under the road for its load. */
export const BELOW = 44;

/** Fiber stress along the axle under it. */
export function drawStrip(sheet) {
  const { along } = sheet.view.scene;
  const level = sheet.at.ground + BELOW + 34, half = 26;
  const peak = along.reduce((most, own) => Math.abs(own[1]) > Math.abs(most[1]) ? own : most, [0, 0]);
  const scale = half / Math.max(Math.abs(peak[1]), 1);
  const points = along.map(([y, stress]) => [sheet.x(y), level - scale * Math.abs(stress)]);
  const ends = [[sheet.x(along.at(-1)[0]), level], [sheet.x(along[0][0]), level]];
  path(sheet.svg, [...points, ...ends], "stress", true);
  line(sheet.svg, ends[0], ends[1], "axis");
  const x = sheet.x(peak[0]);
  line(sheet.svg, [x, level - half], [x, level], "leader");
  halo(sheet.svg, x, level - half - 5, shown(Math.abs(peak[1]), "stress"), "small middle");
  const from = sheet.x(along[0][0]) - 10;
  text(sheet.svg, from, level - 12, "fiber stress", "small muted end");
  text(sheet.svg, from, level + 2, `0 to ${fixed(Math.abs(inUnit(peak[1], "stress")), unit("stress") === "ksi" ? 1 : 0)} ${unit("stress")}`,
    "small muted end");
  text(sheet.svg, sheet.x(0), level + 16, "left of the vehicle on the left", "small muted middle");
}

/** Camber of both wheels over the ride, and the moment that is shown. */
export function drawHistory(sheet, { time, camber, frame, unitName }) {
  const from = sheet.x(sheet.at.reach), to = sheet.x(-sheet.at.reach), top = sheet.at.ground + BELOW + 4, height = 52;
  const all = [...camber.left, ...camber.right], low = Math.min(...all), high = Math.max(...all);
  const last = time.length - 1, x = i => from + (to - from) * (time[i] - time[0]) / (time[last] - time[0]);
  const y = value => top + height * (high - value) / Math.max(high - low, 1e-9);
  line(sheet.svg, [from, top + height], [to, top + height], "grid");
  line(sheet.svg, [from, top], [to, top], "grid");
  for (const side of SIDES) path(sheet.svg, camber[side].map((value, i) => [x(i), y(value)]), `history ${side}`, false);
  line(sheet.svg, [x(frame), top - 4], [x(frame), top + height + 4], "axis");
  text(sheet.svg, from - 6, top + 4, `${fixed(high, 2)} ${unitName}`, "small muted end");
  text(sheet.svg, from - 6, top + height + 4, `${fixed(low, 2)} ${unitName}`, "small muted end");
  text(sheet.svg, from, top + height + 20, `camber over ${fixed(time[last] - time[0], 2)} s: left drawn full, right dashed`, "small muted");
}

/** The section with its sizes. */
export function drawSection(sheet) {
  const { section } = sheet.view.scene;
  const { texts, letters } = sheet.view;
  if (section.length === 0) return;
  const points = section.flat(2), reach = axis => points.map(own => own[axis]);
  const [low, high] = [0, 1].map(axis => [Math.min(...reach(axis)), Math.max(...reach(axis))]);
  const room = 118, scale = Math.min(room / (low[1] - low[0]), room / (high[1] - high[0]));
  const center = [24 + sheet.at.side / 2, 48 + room / 2];
  const place = ([x, z]) => [center[0] + scale * (x - (low[0] + low[1]) / 2), center[1] - scale * (z - (high[0] + high[1]) / 2)];
  text(sheet.svg, center[0], 28, section.length > 1 ? "section with its stiffener" : "section at the seat", "small muted middle");
  section.forEach((part, number) => {
    const d = part.map(edge => `M${edge.map(own => place(own).map(v => v.toFixed(1)).join(" ")).join("L")}Z`).join("");
    element(sheet.svg, "path", { d, class: number === 0 ? "steel" : "stiffener", "fill-rule": "evenodd" });
  });
  const [left, bottom] = place([Math.min(...section[0][0].map(own => own[0])), Math.min(...section[0][0].map(own => own[1]))]);
  const [right, top] = place([Math.max(...section[0][0].map(own => own[0])), Math.max(...section[0][0].map(own => own[1]))]);
  const level = bottom + 22;
  if (letters.diameter) {
    sheet.span([left, level], [right, level]);
    halo(sheet.svg, (left + right) / 2, level + 18, texts.diameter, "small middle");
    sheet.balloon(letters.diameter, null, [(left + right) / 2 - 62, level + 14]);
  } else {
    sheet.span([left - 18, top], [left - 18, bottom]);
    halo(sheet.svg, (left + right) / 2, level, `height ${texts.height}`, "small middle");
    sheet.balloon(letters.height, null, [left - 18, bottom + 18]);
  }
  const xs = section[0][0].map(own => own[0]);
  const inner = section[0][1]?.map(own => own[0]) ?? xs;
  const wall = place([(Math.max(...xs) + Math.max(...inner)) / 2, 0]);
  const end = [right + 22, wall[1] - 30];
  line(sheet.svg, wall, end, "leader");
  sheet.balloon(letters.wall, null, [end[0] + 4, end[1] - 6]);
  text(sheet.svg, end[0] - 6, end[1] - 22, texts.wall, "small");
  drawKey(sheet, center[0] - sheet.at.side / 2 + 2, level + 52);
}

/** What the lines mean. */
function drawKey(sheet, x, top) {
  const rows = [["unloaded", "not loaded"], ["ghost", "baseline"], ["more", "wears more than upright"], ["less", "wears less"]];
  rows.forEach(([kind, words], number) => {
    const y = top + 17 * number;
    const fill = kind === "more" || kind === "less";
    element(sheet.svg, "rect", { x, y: y - 9, width: 20, height: 10, class: kind, ...(fill ? { "fill-opacity": 0.7 } : {}) });
    text(sheet.svg, x + 28, y, words, "small muted");
  });
}

/** Wear of the ribs of the left wheel. */
export function drawRibs(sheet) {
  const { ribs, ribsThen } = sheet.view;
  if (!ribs) return;
  const x = sheet.at.width - sheet.at.side - 20;
  drawRibBars(sheet.svg, { x, y: 22, width: sheet.at.side, height: 130 }, { tires: ribs[0], then: ribsThen?.[0], side: "left" });
}

/** Where the left wheel's change of camber comes from. */
export function drawParts(sheet) {
  const { split } = sheet.view;
  const names = [["bending_rad", "bending"], ["shear_rad", "shear"], ["seat_rad", "seats"], ["bearing_rad", "bearings"], ["disc_rad", "disc"],
    ["clearance_rad", "clearance"]];
  const own = names.map(([key, name]) => [name, split[key]]).sort((a, b) => Math.abs(b[1]) - Math.abs(a[1])).slice(0, 4);
  const x = sheet.at.width - sheet.at.side - 14, top = 178, room = sheet.at.side - 150, most = Math.max(...own.map(part => Math.abs(part[1])), 1e-9);
  text(sheet.svg, x + 6, top, "what its camber change is made of", "small muted");
  own.forEach(([name, value], number) => {
    const y = top + 19 + 17 * number;
    text(sheet.svg, x + 6, y, name, "small");
    element(sheet.svg, "rect", { x: x + 76, y: y - 9, width: Math.max(1, room * Math.abs(value) / most).toFixed(1), height: 9,
      class: "part" });
    text(sheet.svg, x + sheet.at.side - 4, y, shown(value, "angle"), "small end");
  });
}

/** What is drawn, of what, and how much larger. */
export function drawTitleBlock(sheet) {
  const { title } = sheet.view, width = sheet.at.side;
  const x = sheet.at.width - width - 14, row = 22, top = sheet.at.height - 14 - row * title.length;
  element(sheet.svg, "rect", { x, y: top, width, height: row * title.length, class: "block" });
  title.forEach(([words, strong], number) => {
    const y = top + row * number;
    if (number > 0) line(sheet.svg, [x, y], [x + width, y], "rule");
    text(sheet.svg, x + 8, y + 15, words, strong ? "small strong" : "small");
  });
}
