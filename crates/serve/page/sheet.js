// The drawing sheet: the axle from the rear, its section, its ribs and its title block, drawn in pixels of the screen.
import { BELOW, drawHistory, drawParts, drawRibs, drawSection, drawStrip, drawTitleBlock } from "./details.js";
import { element, halo, line, path, text } from "./panels.js";
import { shown } from "./words.js";

const SIDES = ["left", "right"];
/** Width from which on section, ribs and title block stand beside the axle. */
const WIDE = 880;
/** Room over the tires for their camber, and under all for the strip of stress. */
const ABOVE = 58, STRIP = 84;
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
    drawSection(this);
    drawRibs(this);
    drawTitleBlock(this);
    if (view.bump) {
      drawHistory(this, view.bump);
      return;
    }
    this.balloons();
    drawStrip(this);
    drawParts(this);
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
}

const atLeast = value => Math.max(value, 8);
