// Sliders, switches and choices of the dimensions, and what they were moved to.
import { made, stepped } from "./words.js";

const GROUPS = { axle: "Axle", seats: "Axle seats", stiffener: "Stiffener", load: "Load", wheels: "Wheels and bearings" };

/** The letter of a control's balloon on the sheet. */
export const letter = number => String.fromCharCode(65 + number);

/** Controls on the page. */
export class Controls {
  /** Builds them in a form; `moved` is called with a control's key when it is moved. */
  constructor(form, list, { moved, pointed }) {
    this.list = list;
    this.values = {};
    this.rows = new Map();
    form.replaceChildren();
    for (const [group, title] of Object.entries(GROUPS)) {
      const own = list.map((control, number) => [control, number]).filter(([control]) => control.group === group);
      if (own.length === 0) continue;
      const set = form.appendChild(made("fieldset", {}, made("legend", {}, title)));
      for (const [control, number] of own) set.append(this.row(control, number, { moved, pointed }));
    }
    if (this.rows.has("stiffener-length")) this.allowLength();
  }

  row(control, number, { moved, pointed }) {
    const id = `control-${control.key}`;
    const balloon = made("span", { class: "balloon", "aria-hidden": "true" }, letter(number));
    const label = made("label", { for: id }, balloon, control.label);
    const input = this.input(control, id);
    const output = made("output", { for: id });
    const row = made("div", { class: `row ${control.kind ?? control.form.kind}` }, label, input, output);
    this.rows.set(control.key, { control, input, output });
    input.addEventListener("input", () => {
      this.take(control);
      moved(control.key);
    });
    for (const kind of ["focus", "pointerenter"]) input.addEventListener(kind, () => pointed(letter(number)));
    for (const kind of ["blur", "pointerleave"]) input.addEventListener(kind, () => pointed(null));
    this.tell(control);
    return row;
  }

  input({ form }, id) {
    if (form.kind === "switch") {
      const own = made("input", { type: "checkbox", id });
      own.checked = form.value;
      return own;
    }
    if (form.kind === "choice") {
      const own = made("select", { id }, ...form.words.map(word => made("option", { value: word }, word)));
      own.value = form.value;
      return own;
    }
    const { min, max, step, value } = form;
    const own = made("input", { type: "range", id, min, max, step });
    own.value = value;
    return own;
  }

  /** The value that a control stands at. */
  read(key) {
    const { control, input } = this.rows.get(key);
    if (control.form.kind === "switch") return input.checked;
    return control.form.kind === "choice" ? input.value : Number(input.value);
  }

  /** Notes what a control was moved to; nothing where it is back at its first value. */
  take(control) {
    const value = this.read(control.key);
    const first = control.form.value;
    const same = typeof value === "number" ? Math.abs(value - first) < 1e-6 : value === first;
    if (same) delete this.values[control.key];
    else this.values[control.key] = value;
    this.tell(control);
  }

  /** Writes a control's value beside it, and the first one where it is another. */
  tell(control) {
    const { input, output } = this.rows.get(control.key);
    const { form, key } = control;
    const changed = key in this.values;
    if (form.kind !== "slider") {
      output.textContent = form.kind === "switch" ? (input.checked ? "yes" : "no") : "";
    } else {
      output.textContent = stepped(input.value, form.step, form.unit);
      input.setAttribute("aria-valuetext", `${stepped(input.value, form.step, form.unit)}`);
    }
    if (key === "stiffener-size" && this.rows.has("stiffener-length")) this.allowLength();
    output.classList.toggle("changed", changed);
    output.title = changed && form.kind === "slider" ? `was ${stepped(form.value, form.step, form.unit)}` : "";
  }

  /** A stiffener that is not there has no length. */
  allowLength() {
    this.rows.get("stiffener-length").input.disabled = this.rows.get("stiffener-size")?.input.value === "none";
  }

  /** Puts every control back to its first value. */
  reset() {
    this.values = {};
    for (const { control, input } of this.rows.values()) {
      if (control.form.kind === "switch") input.checked = control.form.value;
      else input.value = control.form.value;
      this.tell(control);
    }
  }
}
