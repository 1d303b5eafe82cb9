// The drawing sheet: the axle from the rear, its section, its ribs and its title block, drawn in pixels of the screen.
import { drawRibs, element, halo, line, path, text } from "./panels.js";
import { fixed, inUnit, shown, unit } from "./words.js";

const SIDES = ["left", "right"];
/** Width from which on section, ribs and title block stand beside the axle. */
const WIDE = 880;
/** Room over the tires for their camber, under the road for its load, and for the strip of stress. */
const ABOVE = 58, BELOW = 44, STRIP = 84;
/** Largest scale, pixels per meter. */
const LARGEST = 215;
/** Rubber beside the tread, share of a tire's width. */
const TREAD = 0.8;

/** Where the axle stands on the sheet. */
function layout(width, scene) {
  const wide = width >= WIDE;
  const side = wide ? Math.min(250, 0.21 * width) : 0;
  const reach = Math.max(...scene.tires.flat().map(([y, w]) => Math.abs(y) + w / 2), Math.abs(scene.hubs[0])) + 0.06;
  const radius = Math.max(...scene.tires.flat().map(tire => tire[2]), 0.3);
  const room = width - 2 * side - (wide ? 90 : 20);
  const scale = Math.min(LARGEST, room / (2 * reach));
  const ground = ABOVE + 2 * radius * scale;
  const height = ground + BELOW + (wide ? STRIP : 0);
  return { wide, side, reach, radius, scale, ground, height, width, middle: width / 2 };
}

/** Draws a sheet anew.
 *  view: scene, pose (see `atRest` and `overBump`), tires (ribs of each side), cambers, loads, texts of the controls,
 *  letters of the controls, pointed letter, title rows, baseline. */
export function drawSheet(svg, view) {
  const width = Math.max(300, Math.floor(svg.parentElement.clientWidth));
  const at = layout(width, view.scene);
  svg.setAttribute("viewBox", `0 0 ${width} ${Math.ceil(at.height)}`);
  svg.setAttribute("width", width);
  svg.setAttribute("height", Math.ceil(at.height));
  for (const old of [...svg.children].filter(own => !["title", "desc"].includes(own.tagName))) old.remove();
  const sheet = new Sheet(svg, at, view);
  sheet.draw();
}

/** The pose of an axle at rest. */
export const atRest = (scene, cambers) => ({
  factor: scene.factor, heights: 1, bend: scene.bend, hubs: [0, 0], turns: [-cambers[0], cambers[1]], road: [0, 0],
  off: [false, false],
});

/** The pose of a frame of a ride. */
export function overBump({ scene, frames }, index) {
  const own = list => list[index] / frames.fineness;
  const both = sides => [own(sides.left), own(sides.right)];
  return {
    factor: scene.flex_factor, heights: scene.height_factor,
    bend: frames.bends[index].map(height => height / frames.fineness),
    hubs: both(frames.hubs), turns: both(frames.tilts), road: both(frames.road),
    off: SIDES.map(side => frames.load[side][index] <= 0),
  };
}

class Sheet {
  constructor(svg, at, view) {
    Object.assign(this, { svg, at, view });
    this.x = y => at.middle - at.scale * y;
    this.z = height => at.ground - at.scale * height;
  }

  draw() {
    const { at, view } = this;
    this.frame();
    this.centerLine();
    this.unloaded();
    if (view.baseline) this.axle(view.baseline.scene.outline, atRest(view.baseline.scene, view.baseline.cambers), "ghost");
    this.axle(view.scene.outline, view.pose, "steel");
    this.stiffeners();
    this.seats();
    SIDES.forEach((side, i) => this.tires(side, i));
    this.road();
    SIDES.forEach((side, i) => this.wheelWords(i));
    if (!view.bump) this.dimensions();
    if (!at.wide) return;
    this.section();
    this.ribs();
    this.titleBlock();
    if (view.bump) return;
    this.balloons();
    this.strip();
    this.parts();
  }

  frame() {
    const { width, height, wide } = this.at;
    if (!wide) return;
    element(this.svg, "rect", { x: 0.5, y: 0.5, width: width - 1, height: height - 1, class: "border" });
    element(this.svg, "rect", { x: 5.5, y: 5.5, width: width - 11, height: height - 11, class: "border thin" });
  }

  centerLine() {
    line(this.svg, [this.x(0), this.z(2 * this.at.radius)], [this.x(0), this.at.ground + 8], "center");
  }

  /** Height of the line through the hubs at a place, as drawn, m. */
  hubLine(pose, y) {
    const [left, right] = this.view.scene.hubs;
    const share = (y - right) / (left - right);
    return this.at.radius + pose.heights * (pose.hubs[1] + share * (pose.hubs[0] - pose.hubs[1]));
  }

  /** Height of the axle's line at a place, as drawn, m. */
  level(pose, y) {
    const { outline } = this.view.scene;
    const next = Math.max(1, outline.findIndex(point => point.y <= y));
    const [a, b] = [next - 1, next];
    const run = outline[a].y - outline[b].y;
    const share = run > 0 ? (outline[a].y - y) / run : 0;
    const bend = pose.bend[a] + share * (pose.bend[b] - pose.bend[a]);
    return this.hubLine(pose, y) + pose.factor * bend;
  }

  unloaded() {
    const { outline } = this.view.scene;
    const edge = sign => outline.map(({ y, half }) => [this.x(y), this.z(this.at.radius + sign * half)]);
    path(this.svg, [...edge(1), ...edge(-1).reverse()], "unloaded", true);
  }

  axle(outline, pose, kind) {
    const edge = sign => outline.map(({ y, half }, i) =>
      [this.x(y), this.z(this.hubLine(pose, y) + pose.factor * pose.bend[i] + sign * half)]);
    path(this.svg, [...edge(1), ...edge(-1).reverse()], kind, true);
  }

  stiffeners() {
    const { pose, scene } = this.view;
    for (const [left, right, low, high] of scene.stiffeners) {
      const places = Array.from({ length: 25 }, (_, i) => left + (right - left) * i / 24);
      const edge = height => places.map(y => [this.x(y), this.z(this.level(pose, y) + height)]);
      path(this.svg, [...edge(high), ...edge(low).reverse()], "stiffener", true);
    }
  }

  seats() {
    const { pose, scene } = this.view;
    for (const [y, width] of scene.seats) {
      const half = this.halfHeight(y) + 0.02, side = Math.max(width / 2, 0.02);
      const corner = (dy, dz) => [this.x(y + dy), this.z(this.level(pose, y + dy) + dz)];
      path(this.svg, [corner(side, half), corner(-side, half), corner(-side, -half), corner(side, -half)], "seat", true);
    }
  }

  halfHeight(y) {
    const near = this.view.scene.outline.find(point => point.y <= y);
    return near ? near.half : 0.05;
  }

  tires(side, i) {
    const { scene, pose, ribs } = this.view;
    const slope = (pose.hubs[0] - pose.hubs[1]) / (scene.hubs[0] - scene.hubs[1]);
    const lean = (pose.heights * slope + pose.factor * pose.turns[i]) * 180 / Math.PI;
    scene.tires[i].forEach(([y, width, radius], number) => {
      const center = this.at.radius + pose.heights * (pose.hubs[i] + slope * (y - scene.hubs[i]));
      // A tire on the road reaches it, however much its motion is enlarged.
      const below = pose.off[i] ? radius : center - pose.heights * pose.road[i];
      const group = element(this.svg, "g",
        { transform: `translate(${this.x(y)} ${this.z(center)}) skewX(${(-lean).toFixed(3)})` });
      const [half, top, bottom] = [width / 2, radius, below].map(own => own * this.at.scale);
      const round = 0.2 * 2 * half;
      element(group, "rect", { x: -half, y: -top, width: 2 * half, height: top + bottom, rx: round,
        class: pose.off[i] ? "tire off" : "tire" });
      this.treadOf(group, ribs?.[i]?.[number], { half, top, bottom, sign: i === 0 ? -1 : 1 });
      line(group, [0, -top - 10], [0, bottom], "plane");
    });
  }

  /** Ribs of a tread as stripes, more or less worn than upright. */
  treadOf(group, ribs, { half, top, bottom, sign }) {
    if (!ribs) return;
    const width = 2 * half * TREAD / ribs.length;
    const reach = Math.max(...ribs.map(rib => Math.abs(rib.outboard_m)), 1e-9);
    for (const rib of ribs) {
      const x = sign * rib.outboard_m / reach * (half * TREAD - width / 2);
      const wear = (rib.wear_against_upright ?? 1) - 1;
      element(group, "rect", { x: x - width / 2 + 1, y: -0.93 * top, width: Math.max(1, width - 2),
        height: 0.93 * top + bottom - 2, class: wear >= 0 ? "more" : "less",
        "fill-opacity": Math.min(0.95, 0.1 + 2.2 * Math.abs(wear)).toFixed(3) });
    }
  }

  road() {
    const { pose } = this.view;
    const inner = 0.35 * this.at.reach, outer = this.at.reach + 0.05;
    const level = pose.road.map(height => pose.heights * height);
    const top = [[outer, level[0]], [inner, level[0]], [-inner, level[1]], [-outer, level[1]]];
    const points = top.map(([y, z]) => [this.x(y), this.z(z)]);
    const floor = this.at.ground + 12;
    path(this.svg, [...points, [this.x(-outer), floor], [this.x(outer), floor]], "ground", true);
    path(this.svg, points, "surface", false);
  }

  /** Camber over a wheel, load under it. */
  wheelWords(i) {
    const { scene, pose, cambers, loads } = this.view;
    const tires = scene.tires[i];
    const y = tires.reduce((sum, tire) => sum + tire[0], 0) / Math.max(1, tires.length) || scene.hubs[i];
    const x = this.x(y), top = this.z(2 * this.at.radius + pose.heights * pose.hubs[i]);
    const over = Math.max(34, top - 16);
    const camber = typeof cambers[i] === "string" ? cambers[i] : shown(cambers[i], "angle");
    if (this.at.wide) text(this.svg, x, over - 16, "camber", "small muted middle");
    halo(this.svg, x, over, camber, "value blue middle");
    const load = pose.off[i] ? "off the road" : typeof loads[i] === "string" ? loads[i] : shown(loads[i], "force");
    text(this.svg, x, this.at.ground + 30, load, "value vermillion middle");
  }

  dimensions() {
    const { scene, texts } = this.view;
    const level = this.z(0.2 * this.at.radius), [, right] = scene.seats;
    this.dimension(0, right[0], level, texts["seat-place"]);
    if (!this.at.wide) return;
    const [y, width] = scene.seats[0];
    const top = this.z(this.level(this.view.pose, y) + this.halfHeight(y) + 0.1);
    this.dimension(y + width / 2, y - width / 2, top, texts["seat-width"], true);
  }

  /** A dimension between two places along the axle at a level of the sheet. */
  dimension(from, to, level, words, above = false) {
    const [a, b] = [this.x(from), this.x(to)].sort((p, q) => p - q);
    this.span([a, level], [b, level]);
    halo(this.svg, (a + b) / 2, level - (above ? 9 : 5), words ?? "", "small middle");
  }

  /** A dimension's line with its arrows, level or upright. */
  span(from, to) {
    line(this.svg, from, to, "dimension");
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
    const along = [(to[0] - from[0]) / length, (to[1] - from[1]) / length], across = [-along[1], along[0]];
    for (const [end, way] of [[from, 1], [to, -1]]) {
      const at = (forth, side) => [0, 1].map(axis => end[axis] + forth * way * along[axis] + side * across[axis]);
      line(this.svg, at(0, -6), at(0, 6), "dimension");
      path(this.svg, [end, at(7, -2.5), at(7, 2.5)], "arrow", true);
    }
  }

  balloons() {
    const { scene, letters, pose } = this.view;
    const edge = (i, share) => {
      const [y, width] = scene.tires[i][0] ?? [scene.hubs[i], 0];
      const sign = i === 0 ? 1 : -1;
      return [this.x(y + sign * (width / 2)), this.z(share * 2 * this.at.radius), -sign];
    };
    const places = [["wheel-offset", 0, 0.82], ["wheel-reversed", 0, 0.62], ["load", 0, 0.22], ["inflation", 1, 0.82],
      ["endplay", 1, 0.62], ["toe", 1, 0.42], ["side-force", 1, 0.22]];
    for (const [key, i, share] of places) {
      const [x, z, way] = edge(i, share);
      this.balloon(letters[key], [x, z], [x + 26 * way, z]);
    }
    const [, right] = scene.seats, [left, width] = scene.seats[0];
    this.balloon(letters["seat-place"], null, [this.x(right[0] / 2), this.z(0.2 * this.at.radius) + 16]);
    const top = this.z(this.level(pose, left) + this.halfHeight(left) + 0.1);
    this.balloon(letters["seat-width"], null, [this.x(left) - atLeast(width * this.at.scale / 2) - 22, top]);
    const [own] = scene.stiffeners;
    if (!own) return;
    const z = this.z(this.level(pose, 0.1) + own[3]);
    this.balloon(letters["stiffener-length"] ?? letters["stiffener-size"], [this.x(0.1), z], [this.x(0.1), z - 26]);
  }

  balloon(letter, from, [x, y]) {
    if (!letter) return;
    if (from) line(this.svg, from, [x, y], "leader");
    const group = element(this.svg, "g", { class: letter === this.view.pointed ? "balloon pointed" : "balloon" });
    element(group, "circle", { cx: x, cy: y, r: 9 });
    text(group, x, y + 4, letter, "small middle");
  }

  /** Fiber stress along the axle under it. */
  strip() {
    const { along } = this.view.scene;
    const level = this.at.ground + BELOW + 34, half = 26;
    const peak = along.reduce((most, own) => Math.abs(own[1]) > Math.abs(most[1]) ? own : most, [0, 0]);
    const scale = half / Math.max(Math.abs(peak[1]), 1);
    const points = along.map(([y, stress]) => [this.x(y), level - scale * Math.abs(stress)]);
    const ends = [[this.x(along.at(-1)[0]), level], [this.x(along[0][0]), level]];
    path(this.svg, [...points, ...ends], "stress", true);
    line(this.svg, ends[0], ends[1], "axis");
    const x = this.x(peak[0]);
    line(this.svg, [x, level - half], [x, level], "leader");
    halo(this.svg, x, level - half - 5, shown(Math.abs(peak[1]), "stress"), "small middle");
    const from = this.x(along[0][0]) - 10;
    text(this.svg, from, level - 12, "fiber stress", "small muted end");
    text(this.svg, from, level + 2, `0 to ${fixed(Math.abs(inUnit(peak[1], "stress")), unit("stress") === "ksi" ? 1 : 0)} ${unit("stress")}`,
      "small muted end");
    text(this.svg, this.x(0), level + 16, "left of the vehicle on the left", "small muted middle");
  }

  section() {
    const { section } = this.view.scene;
    const { texts, letters } = this.view;
    if (section.length === 0) return;
    const points = section.flat(2), reach = axis => points.map(own => own[axis]);
    const [low, high] = [0, 1].map(axis => [Math.min(...reach(axis)), Math.max(...reach(axis))]);
    const room = 118, scale = Math.min(room / (low[1] - low[0]), room / (high[1] - high[0]));
    const center = [24 + this.at.side / 2, 48 + room / 2];
    const place = ([x, z]) => [center[0] + scale * (x - (low[0] + low[1]) / 2), center[1] - scale * (z - (high[0] + high[1]) / 2)];
    text(this.svg, center[0], 28, section.length > 1 ? "section with its stiffener" : "section at the seat", "small muted middle");
    section.forEach((part, number) => {
      const d = part.map(edge => `M${edge.map(own => place(own).map(v => v.toFixed(1)).join(" ")).join("L")}Z`).join("");
      element(this.svg, "path", { d, class: number === 0 ? "steel" : "stiffener", "fill-rule": "evenodd" });
    });
    const [left, bottom] = place([Math.min(...section[0][0].map(own => own[0])), Math.min(...section[0][0].map(own => own[1]))]);
    const [right, top] = place([Math.max(...section[0][0].map(own => own[0])), Math.max(...section[0][0].map(own => own[1]))]);
    const level = bottom + 22;
    if (letters.diameter) {
      this.span([left, level], [right, level]);
      halo(this.svg, (left + right) / 2, level + 18, texts.diameter, "small middle");
      this.balloon(letters.diameter, null, [(left + right) / 2 - 62, level + 14]);
    } else {
      this.span([left - 18, top], [left - 18, bottom]);
      halo(this.svg, (left + right) / 2, level, `height ${texts.height}`, "small middle");
      this.balloon(letters.height, null, [left - 18, bottom + 18]);
    }
    const xs = section[0][0].map(own => own[0]);
    const inner = section[0][1]?.map(own => own[0]) ?? xs;
    const wall = place([(Math.max(...xs) + Math.max(...inner)) / 2, 0]);
    const end = [right + 22, wall[1] - 30];
    line(this.svg, wall, end, "leader");
    this.balloon(letters.wall, null, [end[0] + 4, end[1] - 6]);
    text(this.svg, end[0] - 6, end[1] - 22, texts.wall, "small");
    this.key(center[0] - this.at.side / 2 + 2, level + 52);
  }

  /** What the lines mean. */
  key(x, top) {
    const rows = [["unloaded", "not loaded"], ["ghost", "baseline"], ["more", "wears more than upright"], ["less", "wears less"]];
    rows.forEach(([kind, words], number) => {
      const y = top + 17 * number;
      const fill = kind === "more" || kind === "less";
      element(this.svg, "rect", { x, y: y - 9, width: 20, height: 10, class: kind, ...(fill ? { "fill-opacity": 0.7 } : {}) });
      text(this.svg, x + 28, y, words, "small muted");
    });
  }

  ribs() {
    const { ribs, ribsThen } = this.view;
    if (!ribs) return;
    const x = this.at.width - this.at.side - 20;
    drawRibs(this.svg, { x, y: 22, width: this.at.side, height: 130 }, { tires: ribs[0], then: ribsThen?.[0], side: "left" });
  }

  /** Where the left wheel's change of camber comes from. */
  parts() {
    const { split } = this.view;
    const names = [["bending_rad", "bending"], ["shear_rad", "shear"], ["seat_rad", "seats"], ["bearing_rad", "bearings"], ["disc_rad", "disc"],
      ["clearance_rad", "clearance"]];
    const own = names.map(([key, name]) => [name, split[key]]).sort((a, b) => Math.abs(b[1]) - Math.abs(a[1])).slice(0, 4);
    const x = this.at.width - this.at.side - 14, top = 178, room = this.at.side - 150, most = Math.max(...own.map(part => Math.abs(part[1])), 1e-9);
    text(this.svg, x + 6, top, "what its camber change is made of", "small muted");
    own.forEach(([name, value], number) => {
      const y = top + 19 + 17 * number;
      text(this.svg, x + 6, y, name, "small");
      element(this.svg, "rect", { x: x + 76, y: y - 9, width: Math.max(1, room * Math.abs(value) / most).toFixed(1), height: 9,
        class: value < 0 ? "more" : "less" });
      text(this.svg, x + this.at.side - 4, y, shown(value, "angle"), "small end");
    });
  }

  titleBlock() {
    const { title } = this.view, width = this.at.side;
    const x = this.at.width - width - 14, row = 22, top = this.at.height - 14 - row * title.length;
    element(this.svg, "rect", { x, y: top, width, height: row * title.length, class: "block" });
    title.forEach(([words, strong], number) => {
      const y = top + row * number;
      if (number > 0) line(this.svg, [x, y], [x + width, y], "rule");
      text(this.svg, x + 8, y + 15, words, strong ? "small strong" : "small");
    });
  }
}

const atLeast = value => Math.max(value, 8);
