// A ride over a bump, frame by frame.
import { abandon, ask, problemText } from "./asking.js";
import { fixed, stepped } from "./words.js";
import { SIDES, choice, state } from "./state.js";

const byId = id => document.getElementById(id);

/** Sliders: least, most, step, first value, unit. */
const BUMP = { si: { height: [5, 100, 5, 40, "mm"], speed: [10, 110, 5, 80, "km/h"] }, us: { height: [0.2, 4, 0.1, 1.6, "in"], speed: [5, 70, 5, 50, "mph"] } };

let draw = () => {};

/** Sets up the sliders; `show` draws the sheet. */
export function setUpBump(show) {
  draw = show;
  for (const [key, [min, max, step, value, unitName]] of Object.entries(BUMP[state.begun.system])) {
    const input = byId(`bump-${key}`), output = byId(`bump-${key}-value`);
    Object.assign(input, { min, max, step });
    input.value = value;
    const tell = () => {
      output.textContent = stepped(input.value, step, unitName);
      input.setAttribute("aria-valuetext", output.textContent);
      stopBump();
    };
    input.oninput = tell;
    tell();
  }
}

/** Goes back to the axle at rest. */
export function stopBump() {
  abandon("bump");
  if (state.frame === null) return;
  state.frame = null;
  byId("play").textContent = "Drive over it";
  draw();
}

/** Drives over the bump, or stops. */
export async function drive() {
  if (state.frame !== null) return stopBump();
  const own = BUMP[state.begun.system];
  byId("bump-answer").textContent = "Working it out\u2026";
  const answer = await ask("bump", { axle: choice(), height: `${byId("bump-height").value} ${own.height[4]}`,
    speed: `${byId("bump-speed").value} ${own.speed[4]}`, wheels: byId("bump-wheels").value });
  if (!answer) return;
  if (!answer.ok) {
    byId("bump-answer").textContent = answer.document.problems.map(problemText).join(" ");
    return;
  }
  state.bump = answer.document;
  const { frames, units } = state.bump;
  const range = SIDES.map(side => Math.max(...frames.camber[side]) - Math.min(...frames.camber[side]));
  const most = Math.max(...SIDES.flatMap(side => frames.load[side]));
  const off = SIDES.some(side => frames.load[side].some(load => load <= 0));
  byId("bump-answer").textContent = `Camber swings by ${fixed(Math.max(...range), 2)} ${units.angle} peak to peak; the most that a wheel carries is `
    + `${fixed(most, units.force_decimals)} ${units.force}${off ? "; a wheel leaves the road" : ""}. Shown ten times slower.`;
  byId("play").textContent = "Stop";
  byId("sheet-frame").scrollIntoView({ block: "nearest" });
  play();
}

function play() {
  const { frames } = state.bump, last = frames.time.length - 1;
  const begin = performance.now(), from = frames.time[0], lasts = frames.time[last] - from;
  state.frame = 0;
  const tick = now => {
    if (state.frame === null) return;
    const share = (now - begin) / 1e4 / lasts;
    if (share >= 1) return stopBump();
    state.frame = Math.round(share * last);
    draw();
    requestAnimationFrame(tick);
  };
  requestAnimationFrame(tick);
}

