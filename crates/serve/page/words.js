// Numbers to text, in the units of the reader.
const UNITS = {
  si: { mass: ["kg", 1], force: ["kN", 1e3], stress: ["MPa", 1e6], length: ["mm", 1e-3], angle: ["deg", Math.PI / 180] },
  us: { mass: ["lb", 0.45359237], force: ["lbf", 4.4482216152605], stress: ["ksi", 6894757.293168],
    length: ["in", 0.0254], angle: ["deg", Math.PI / 180] },
};

let system = "si";

/** Sets the units of the reader: `si` or `us`. */
export function speakIn(name) {
  system = name;
}

/** A number with a true minus sign, to some decimals; no minus before zero. */
export function fixed(value, decimals) {
  const text = value.toFixed(decimals).replace(/^-(0(?:\.0*)?)$/, "$1");
  return text.replace("-", "\u2212");
}

/** A number to some significant digits, plain. */
export function significant(value, digits = 3) {
  if (value === 0 || !Number.isFinite(value)) return "0";
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))));
  return fixed(value, Math.min(decimals, 6));
}

/** The unit of a kind of quantity. */
export const unit = kind => UNITS[system][kind][0];

/** An SI value in the unit of its kind. */
export const inUnit = (value, kind) => value / UNITS[system][kind][1];

/** An SI value with its unit, to three digits; an angle to two decimals. */
export function shown(value, kind) {
  const own = inUnit(value, kind);
  return `${kind === "angle" ? fixed(own, 2) : significant(own)}\u00a0${unit(kind)}`;
}

/** A difference, with its sign always, in the unit of its kind; none below what is shown. */
export function difference(now, then, kind) {
  const own = inUnit(now - then, kind);
  const text = kind === "angle" ? fixed(own, 2) : significant(own, 2);
  if (Math.abs(own) < 1e-9 || /^\u2212?0(\.0*)?$/.test(text)) return "as the baseline";
  return `${own > 0 ? "+" : ""}${text}\u00a0${unit(kind)}`;
}

/** Words of a slider's value: as many decimals as its step, more where the value has them, up to five digits. */
export function stepped(value, step, unitName) {
  const decimalsOf = own => (String(own).split(".")[1] ?? "").length;
  const own = Number(value), whole = Math.max(1, Math.ceil(Math.log10(Math.abs(own) + 1e-9)));
  const decimals = Math.max(decimalsOf(step), Math.min(decimalsOf(own), Math.max(0, 5 - whole)));
  return `${fixed(own, decimals)}${unitName ? `\u00a0${unitName}` : ""}`;
}

/** An element with text, attributes and children; text is never read as markup. */
export function made(name, attributes = {}, ...inside) {
  const own = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) own.setAttribute(key, value);
  own.append(...inside);
  return own;
}
