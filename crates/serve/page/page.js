// The live page: asks the server, shows what it answers.
import { Controls, letter } from "./controls.js";
import { atRest, drawSheet, overBump } from "./sheet.js";
import { drawRibBars } from "./panels.js";
import { abandon, ask, notice, problemText, showProblems } from "./asking.js";
import { cells } from "./figures.js";
import { explainCase, layOutCase } from "./case.js";
import { drive, setUpBump, stopBump } from "./ride.js";
import { tryRemedies } from "./remedies.js";
import { SIDES, choice, state } from "./state.js";
import { fixed, made, significant, speakIn, stepped } from "./words.js";

const byId = id => document.getElementById(id);
/** Milliseconds after which a slider has come to rest. */
const REST = 350;
/** Milliseconds between looks at the file. */
const LOOK = 2000;

function showStrip() {
  const list = cells().map(cell => {
    const own = made("div", { class: `cell${cell.pending ? " pending" : ""}${cell.fails ? " fails" : ""}`, id: `cell-${cell.key}` },
      made("dt", {}, cell.name),
      made("dd", { class: "value" }, cell.pending ? "\u2026" : cell.value),
      made("dd", { class: "more", title: cell.pending ? "" : cell.more }, cell.pending ? "working it out" : cell.more),
      made("dd", { class: "change" }, (!cell.pending && cell.change) || "\u00a0"));
    return own;
  });
  byId("strip").replaceChildren(...list);
}

// The drawing.

const cambersOf = flex => SIDES.map(side => flex.cases[0].wheels[side].camber_rad);
const ribsOf = tire => SIDES.map(side => tire.cases[0].wheels[side].tires.map(own => own.ribs));

function texts() {
  const own = {};
  for (const { control, input } of state.controls.rows.values()) {
    if (control.form.kind === "slider") own[control.key] = stepped(input.value, control.form.step, control.form.unit);
  }
  return own;
}

/** Words in at most two lines of a width, the second cut short. */
function wrapped(words, width) {
  if (words.length <= width) return [words];
  const at = words.lastIndexOf(" ", width);
  const [first, second] = at > 0 ? [words.slice(0, at), words.slice(at + 1)] : [words.slice(0, width), words.slice(width)];
  return [first, second.length > width ? `${second.slice(0, width - 1)}\u2026` : second];
}

function titleRows(factor, note) {
  const { model } = state.figures.flex;
  const data = model.invented ? "demonstration data, invented" : model.typical.length ? "typical values, not measured" : "as the model file says";
  const name = wrapped(model.name, 29).map(row => [row, true]);
  return [...name, [note ?? `case ${byId("load-case").value}`], [`from the rear, bend and lean \u00d7${significant(factor, 2)}`], [data]];
}

function showSheet() {
  if (!state.figures) return;
  const { figures, baseline, frame, bump } = state;
  const cambers = cambersOf(figures.flex);
  const letters = Object.fromEntries(state.controls.list.map((control, number) => [control.key, letter(number)]));
  const view = {
    scene: figures.scene, pose: atRest(figures.scene, cambers), ribs: ribsOf(figures.tire), cambers,
    loads: SIDES.map(side => figures.flex.cases[0].wheels[side].vertical_load_n), texts: texts(), letters,
    pointed: state.pointed, title: titleRows(figures.scene.factor),
    baseline: baseline && { scene: baseline.figures.scene, cambers: cambersOf(baseline.figures.flex) },
    ribsThen: baseline && ribsOf(baseline.figures.tire), split: figures.flex.cases[0].wheels.left.split,
  };
  if (view.baseline) view.baseline.scene = { ...view.baseline.scene, factor: figures.scene.factor };
  if (frame !== null && bump) {
    const { frames, units, scene } = bump;
    const number = (values, decimals) => fixed(values, decimals);
    view.bump = { time: frames.time, camber: frames.camber, frame, unitName: units.angle };
    view.pose = overBump(bump, frame);
    view.scene = { ...figures.scene, outline: scene.outline };
    view.baseline = null;
    view.cambers = SIDES.map(side => `${number(frames.camber[side][frame], 2)}\u00a0${units.angle}`);
    view.loads = SIDES.map(side => `${number(frames.load[side][frame], units.force_decimals)}\u00a0${units.force}`);
    view.title = titleRows(scene.flex_factor, `bump: ${number(frames.time[frame], 3)} s, heights \u00d7${significant(scene.height_factor, 2)}`);
  }
  byId("sheet-about").textContent = figures.flex.answer.join(" ");
  drawSheet(byId("sheet"), view);
}

function showRibs() {
  const svg = byId("ribs"), { figures, baseline } = state;
  const width = Math.max(260, Math.floor(svg.parentElement.clientWidth - 24)), beside = width >= 520;
  const one = beside ? (width - 20) / 2 : width, height = beside ? 170 : 350;
  svg.setAttribute("viewBox", `0 0 ${width} ${height}`);
  svg.setAttribute("width", width);
  svg.setAttribute("height", height);
  for (const old of svg.querySelectorAll("g")) old.remove();
  const now = ribsOf(figures.tire), then = baseline && ribsOf(baseline.figures.tire);
  SIDES.forEach((side, i) => drawRibBars(svg, { x: beside ? i * (one + 20) : 0, y: 6 + (beside ? 0 : i * 175), width: one, height: 160 },
    { tires: now[i], then: then?.[i], side }));
  byId("tire-answer").textContent = figures.tire.answer.join(" ");
}

function showWords() {
  const { flex, tire, set } = state.figures;
  byId("name").textContent = flex.model.name;
  document.title = `${flex.model.name}: live sheet`;
  byId("mark").textContent = flex.model.invented ? "Demonstration data, invented."
    : flex.model.typical.length ? `Typical values, not measured on this axle: ${flex.model.typical.join(", ")}.` : "";
  // The tire's answer begins with the camber, as flex's does.
  byId("answer").textContent = [...tire.answer.slice(0, 1), ...flex.answer.slice(1)].join(" ").replaceAll(" %", "\u00a0%");
  const cautions = byId("cautions");
  cautions.hidden = flex.cautions.length === 0;
  cautions.querySelector("ul").replaceChildren(...flex.cautions.map(own => made("li", {}, own)));
  const doubts = byId("doubts"), warnings = [...flex.warnings, ...tire.warnings];
  doubts.hidden = warnings.length === 0;
  doubts.querySelector("summary").textContent = warnings.length === 1 ? "A doubt about these numbers" : `${warnings.length} doubts about these numbers`;
  doubts.querySelector("ul").replaceChildren(...warnings.map(own => made("li", {}, `${own.text}; ${own.advice}`)));
  const model = state.begun.file ?? "my-axle";
  const quote = words => /^[\w./=+-]+$/.test(words) ? words : `'${words.replaceAll("'", "'\\''")}'`;
  const changes = set.map(own => ` --set ${quote(own)}`).join("");
  const first = state.begun.file ? "" : `axlebow start my-axle --like ${state.begun.from}\n`;
  const added = "stiffener-size" in state.controls.values && !flex.cases[0].stiffening === false && !set.some(own => own.startsWith("stiffener"));
  byId("command").textContent = `${first}axlebow flex ${quote(model)} --case ${byId("load-case").value}${changes}${added ? "\n# the stiffener that was added is in the saved file" : ""}`;
  byId("report").href = `report?ask=${encodeURIComponent(JSON.stringify(choice()))}`;
}

// The course of a change: figures at once, checks after them, the rest when the slider rests.

async function update({ first = false } = {}) {
  stopBump();
  clearTimeout(state.rest);
  // What is still worked on is about values that are gone.
  for (const what of ["checks", "rating", "money"]) abandon(what);
  const asked = choice();
  byId("top").setAttribute("aria-busy", "true");
  const answer = await ask("figures", asked);
  if (!answer) return;
  byId("top").setAttribute("aria-busy", "false");
  if (!answer.ok) {
    showProblems(answer.document.problems, "These values do not make an axle; the last good picture stays.");
    return;
  }
  showProblems(null);
  Object.assign(state, { figures: answer.document, checks: null, rating: null, money: null });
  showAll();
  state.rest = setTimeout(() => rest(asked), first ? 0 : REST);
  await add("checks", asked);
}

/** What is worked out when the sliders rest. */
async function rest(asked) {
  await Promise.all([add("rating", asked), state.begun.prices && add("money", asked)]);
}

/** Asks for a slower figure and shows it; the baseline gets it where it is about the same axle. */
async function add(what, asked) {
  const answer = await ask(what, asked);
  if (!answer) return;
  state[what] = answer.ok ? answer.document : { failed: answer.document.problems.map(problemText).join(" ") };
  if (state.baseline?.figures === state.figures) state.baseline[what] = state[what];
  showStrip();
}

/** Puts a remedy into the axle; the baseline stays as it was pinned. */
async function apply(changes, name) {
  const answer = await ask("apply", { axle: choice(), changes });
  if (!answer) return;
  if (!answer.ok) {
    showProblems(answer.document.problems, "This remedy does not go into the axle.");
    return;
  }
  await goOn(answer.document);
  state.remedied = true;
  byId("saved").textContent = `In the axle now: ${name}. The baseline stays as it was.`;
}

function showAll() {
  if (!state.baseline) pin();
  layOutCase();
  showStrip();
  showSheet();
  showRibs();
  showWords();
}

function pin() {
  state.baseline = { figures: state.figures, checks: state.checks, rating: state.rating };
}

// Saving, the file.

async function save(write) {
  const answer = await ask("save", { axle: choice(), write });
  if (!answer) return;
  if (!answer.ok) {
    byId("saved").textContent = answer.document.problems.map(problemText).join(" ");
    return;
  }
  const { name, text, written } = answer.document;
  if (written) {
    byId("saved").textContent = `Saved as ${written}.`;
    return;
  }
  const link = made("a", { href: URL.createObjectURL(new Blob([text], { type: "application/toml" })), download: name });
  link.click();
  URL.revokeObjectURL(link.href);
  byId("saved").textContent = `Handed to the browser as ${name}.`;
}

async function look() {
  if (!state.begun?.starts.some(own => own.from === "file")) return;
  try {
    const { revision } = await (await fetch("disk")).json();
    if (revision === state.seen) return;
    state.seen = revision;
    if (revision === state.begun?.revision) return notice("changed");
    const reload = made("button", { type: "button", id: "reload" }, "Reload it");
    reload.addEventListener("click", () => begin("file"));
    notice("changed", revision ? "The model file has changed on the disk. " : "The model file can no longer be read. ", ...(revision ? [reload] : []));
  } catch {
    // A server that has ended is told of when something is asked.
  }
}

async function begin(from) {
  const answer = await fetch(`controls${from ? `?from=${encodeURIComponent(from)}` : ""}`);
  const document = await answer.json();
  if (!answer.ok) {
    showProblems(document.problems, "The model file has problems; the last good picture stays.");
    if (!state.begun) await begin("trailer-5-inch-duals");
    state.seen = (await (await fetch("disk")).json()).revision;
    showProblems(document.problems, "The model file has problems; the last good picture stays.");
    return;
  }
  notice("changed");
  Object.assign(state, { baseline: null, remedied: false });
  if (document.file) state.seen = document.revision;
  await goOn(document);
}

/** Takes an axle up: its controls, load cases and figures. */
async function goOn(document) {
  showProblems(null);
  Object.assign(state, { begun: document, figures: null, checks: null, rating: null, money: null, bump: null, frame: null });
  speakIn(document.system);
  fill(byId("start"), document.starts.map(own => [own.from, own.about]), document.from);
  const cases = document.cases.map(own => [own.name, own.name]);
  fill(byId("load-case"), cases, cases.some(([name]) => name === byId("load-case").value) ? byId("load-case").value : cases[0][0]);
  state.controls = new Controls(byId("controls"), document.controls, { moved, pointed });
  byId("write").textContent = document.file ? "Save beside the file" : "Save in this folder";
  byId("saved").textContent = "";
  byId("remedies").hidden = true;
  byId("remedies-answer").textContent = "";
  setUpBump(showSheet);
  await update({ first: true });
}

function fill(select, list, value) {
  select.replaceChildren(...list.map(([key, words]) => made("option", { value: key }, words)));
  select.value = value;
}

function moved(key) {
  if (key === "side-force" && byId("load-case").value !== "side-load") byId("load-case").value = "side-load";
  update();
}

function pointed(which) {
  state.pointed = which;
  showSheet();
}

byId("start").addEventListener("change", () => begin(byId("start").value));
byId("load-case").addEventListener("change", () => update());
byId("pin").addEventListener("click", () => {
  pin();
  showAll();
});
byId("reset").addEventListener("click", () => {
  if (state.remedied) return begin(state.begun.from);
  state.controls.reset();
  return update();
});
byId("write").addEventListener("click", () => save(true));
byId("download").addEventListener("click", () => save(false));
byId("play").addEventListener("click", drive);
byId("try").addEventListener("click", () => tryRemedies(apply));
byId("case-sheet").addEventListener("submit", explainCase);
byId("controls").addEventListener("submit", event => event.preventDefault());
let resized = null;
addEventListener("resize", () => {
  cancelAnimationFrame(resized);
  resized = requestAnimationFrame(() => state.figures && (showSheet(), showRibs()));
});
matchMedia("print").addEventListener("change", () => state.figures && (showSheet(), showRibs()));
setInterval(look, LOOK);
begin(null);
