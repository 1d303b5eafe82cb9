// The case sheet of a worn tire: what was seen, filled in on the page, and the causes that it may have.
import { ask, problemText } from "./asking.js";
import { fixed, made } from "./words.js";
import { SIDES, choice, state } from "./state.js";

const byId = id => document.getElementById(id);
const UNITS = {
  si: { depth: "mm", pressure: "kPa", play: "mm", distance: "km", load: "kN" },
  us: { depth: "in", pressure: "psi", play: "in", distance: "mi", load: "lbf" },
};
const FEATHERS = [["", "not felt"], ["none", "none"], ["inboard", "points inboard"], ["outboard", "points outboard"]];
const DAMPERS = [["", "not looked at"], ["good", "good"], ["leaking", "leaking"], ["dead", "dead"]];

const units = () => UNITS[state.begun.system];

/** A text as a sheet's file writes it. */
const quoted = text => JSON.stringify(text);

/** A number with the unit of its field, where it has none of its own. */
const measured = (text, unit) => /^[-+\d.\s/]+$/.test(text) ? `${text.trim()} ${unit}` : text.trim();

/** A labeled field; its name says where it goes. */
function field(name, label, hint, options) {
  const id = `seen-${name}`;
  const own = options
    ? made("select", { id, name }, ...options.map(([value, words]) => made("option", { value }, words)))
    : made("input", { id, name, type: "text", placeholder: hint, autocomplete: "off", spellcheck: "false", maxlength: "80" });
  return made("p", { class: "field" }, made("label", { for: id }, label), own);
}

/** The tires of the axle, as a sheet names them. */
function tires() {
  return SIDES.flatMap(side => {
    const own = state.figures.tire.cases[0].wheels[side].tires;
    const places = own.length === 1 ? ["single"] : ["outer", "inner"];
    return places.map((place, i) => ({ side, place, ribs: own[i].ribs.length, name: place === "single" ? `${side} tire` : `${side} ${place} tire` }));
  });
}

/** Lays the sheet out for the tires of the axle; what was filled in for the same tires stays. */
export function layOutCase() {
  const list = tires(), form = byId("case-fields"), { depth, pressure, play, distance, load } = units();
  const layout = JSON.stringify([list, state.begun.system]);
  if (form.dataset.layout === layout) return;
  form.dataset.layout = layout;
  const set = (title, ...fields) => made("fieldset", {}, made("legend", {}, title), ...fields);
  form.replaceChildren(
    ...list.map(({ side, place, ribs, name }) => set(name[0].toUpperCase() + name.slice(1),
      field(`${side}-${place}-depths`, `Depths from the inner shoulder out, ${depth}`, `${ribs} numbers, - where none`),
      field(`${side}-${place}-cups`, "Cups round it", "0 if none"),
      field(`${side}-${place}-feather`, "Feathering", "", FEATHERS),
      field(`${side}-${place}-inflation`, `Pressure, cold, ${pressure}`, ""))),
    ...SIDES.map(side => set(`${side[0].toUpperCase()}${side.slice(1)} wheel end`,
      field(`${side}-endplay`, `Endplay, ${play}`, ""), field(`${side}-toe`, "Toe, deg, toe-in positive", ""),
      field(`${side}-runout`, `Runout, ${play}`, ""))),
    set("Axle", field("new_depth", `Depth when new, ${depth}`, ""), field("distance", `Distance run, ${distance}`, ""),
      field("axle_load", `Mean axle load, ${load}`, ""), field("damper", "Dampers", "", DAMPERS)));
  byId("causes").hidden = true;
  byId("case-answer").textContent = "";
}

/** What was filled in, as the file of a sheet says it. */
function sheet() {
  const { depth, pressure, play, distance, load } = units();
  const value = name => byId(`seen-${name}`).value.trim();
  const rows = [];
  const add = (key, name, unit) => {
    const text = value(name);
    if (text) rows.push(`${key} = ${unit === null ? text : quoted(unit ? measured(text, unit) : text)}`);
  };
  rows.push('name = "case sheet of the live page"', 'axle = "the axle of the live page"');
  add("new_depth", "new_depth", depth);
  add("distance", "distance", distance);
  add("axle_load", "axle_load", load);
  add("damper", "damper", "");
  for (const { side, place } of tires()) {
    rows.push("[[tire]]", `side = ${quoted(side)}`, `place = ${quoted(place)}`);
    const depths = value(`${side}-${place}-depths`).split(/[\s,;]+/).filter(Boolean);
    if (depths.length > 0) rows.push(`depths = [${depths.map(own => quoted(own === "-" ? own : measured(own, depth))).join(", ")}]`);
    add("cups", `${side}-${place}-cups`, null);
    add("feather", `${side}-${place}-feather`, "");
    add("inflation", `${side}-${place}-inflation`, pressure);
  }
  for (const side of SIDES) {
    rows.push("[[wheel_end]]", `side = ${quoted(side)}`);
    add("endplay", `${side}-endplay`, play);
    add("toe", `${side}-toe`, "deg");
    add("runout", `${side}-runout`, play);
  }
  return `${rows.join("\n")}\n`;
}

/** Asks for the causes and shows them. */
export async function explainCase(event) {
  event.preventDefault();
  byId("case-answer").textContent = "Weighing the causes\u2026";
  const answer = await ask("explain", { axle: choice(), sheet: sheet() });
  if (!answer) return;
  byId("causes").hidden = !answer.ok;
  if (!answer.ok) {
    // Lines are those of a sheet that nobody sees.
    byId("case-answer").textContent = answer.document.problems.map(own => problemText({ ...own, line: null })).join(" ");
    return;
  }
  const { answer: words, causes, checks } = answer.document;
  byId("case-answer").textContent = words.join(" ");
  const row = ({ name, probability, size, remedy }) => made("tr", {}, made("td", {}, name),
    made("td", { class: "number" }, fixed(100 * probability, 0)), made("td", {}, size ?? "\u2013"), made("td", {}, remedy));
  const head = (title, kind) => made("th", { scope: "col", ...kind && { class: kind } }, title);
  const table = made("table", {}, made("caption", {}, "The most probable first"),
    made("thead", {}, made("tr", {}, head("Cause"), head("Probability, %", "number"), head("How large it would be"), head("What is done about it"))),
    made("tbody", {}, ...causes.filter(own => own.probability >= 0.005).map(row)));
  const list = made("ul", {}, ...checks.map(own => made("li", {}, own)));
  byId("causes").replaceChildren(table, made("h3", {}, "What to check next"), list);
}
