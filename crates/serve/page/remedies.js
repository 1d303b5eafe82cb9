// Every remedy tried on the axle, as a table.
import { ask, problemText } from "./asking.js";
import { fixed, inUnit, made, unit } from "./words.js";
import { SIDES, choice } from "./state.js";

const byId = id => document.getElementById(id);

/** Asks for them and shows them; `apply` puts one into the axle. */
export async function tryRemedies(apply) {
  byId("remedies-answer").textContent = "Trying them\u2026";
  const answer = await ask("remedies", choice());
  if (!answer) return;
  if (!answer.ok) {
    byId("remedies-answer").textContent = answer.document.problems.map(problemText).join(" ");
    return;
  }
  const { answer: words, remedies, base } = answer.document;
  byId("remedies-answer").textContent = words.join(" ");
  const heads = [["Remedy"], ["Who does it"], ["Wear, \u00d7 upright", 1], [`Camber, ${unit("angle")}`, 1], [`More mass, ${unit("mass")}`, 1], ["Worst check, %", 1], ["Needs and risks"], ["In the axle"]];
  const camber = own => SIDES.map(side => own.camber_rad[side]).reduce((a, b) => Math.abs(b) > Math.abs(a) ? b : a);
  const told = { holds: "", "still-fails": " (a check still fails)", refused: " (refused: a check fails by it)" };
  const put = ({ name, changes }) => {
    const button = made("button", { type: "button" }, "Put in");
    button.setAttribute("aria-label", `Put in: ${name}`);
    button.addEventListener("click", () => apply(changes.map(({ path, text }) => ({ path, text })), name));
    return button;
  };
  const rows = remedies.map(({ name, done_by, checks, state: own, needs_and_risks, changes }) => [
    `${name}${told[checks] ?? ""}`, done_by, fixed(own.shoulder.wear, 2), fixed(inUnit(camber(own), "angle"), 2),
    fixed(inUnit(own.axle_mass_kg - base.axle_mass_kg, "mass"), 1), own.binding_check ? fixed(100 * own.binding_check.utilization, 0) : "",
    needs_and_risks.join(" "), put({ name, changes })]);
  const kind = numeric => numeric ? { class: "number" } : {};
  const table = made("table", {}, made("caption", {}, "The best first, those with which every check holds before the others"),
    made("thead", {}, made("tr", {}, ...heads.map(([head, numeric]) => made("th", { scope: "col", ...kind(numeric) }, head)))),
    made("tbody", {}, ...rows.map(row => made("tr", {}, ...row.map((cell, i) => made("td", kind(heads[i][1]), cell))))));
  byId("remedies").replaceChildren(table);
  byId("remedies").hidden = false;
}

