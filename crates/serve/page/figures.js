// The main figures, which are always in view.
import { difference, fixed, shown, significant } from "./words.js";
import { SIDES, state } from "./state.js";

const worst = flex => {
  const wheels = flex.cases[0].wheels;
  return SIDES.map(side => [side, wheels[side]]).reduce((a, b) => Math.abs(b[1].camber_rad) > Math.abs(a[1].camber_rad) + 1e-9 ? b : a);
};

/** The shoulder that wears most against upright. */
function shoulder(tire) {
  let most = { wear: 0 };
  for (const side of SIDES) {
    const tires = tire.cases[0].wheels[side].tires;
    tires.forEach(({ ribs }, number) => {
      for (const [name, rib] of [["inner", ribs[0]], ["outer", ribs.at(-1)]]) {
        const wear = rib.wear_against_upright ?? 0;
        if (wear > most.wear * (1 + 1e-9)) {
          const own = tires.length > 1 ? ["outer tire", "inner tire"][number] : "tire";
          most = { wear, words: `${name} shoulder, ${side} ${own}` };
        }
      }
    });
  }
  return most;
}

/** The rating of the wheels as they are. */
const ownRating = rating => rating?.points?.find(point => Math.abs(point.offset_m - rating.own_offset_m) < 1e-9);

/** A cell for each figure; one that is still worked out is pending. */
export function cells() {
  const { figures, checks, rating, money, baseline, begun } = state;
  const [side, wheel] = worst(figures.flex);
  const lean = wheel.camber_rad < 0 ? "tops lean in" : "tops lean out";
  const then = baseline && worst(baseline.figures.flex)[1].camber_rad;
  const wear = shoulder(figures.tire), wearThen = baseline && shoulder(baseline.figures.tire).wear;
  const own = ownRating(rating), ownThen = ownRating(baseline?.rating);
  const used = checks?.worst?.utilization, usedThen = baseline?.checks?.worst?.utilization;
  const plain = (now, before, name) => {
    const text = fixed(now - before, name === "%" ? 0 : 2);
    return /^\u2212?0(\.0*)?$/.test(text) ? "as the baseline" : `${now > before ? "+" : ""}${text}${name ? `\u00a0${name}` : ""}`;
  };
  const list = [
    { key: "camber", name: "Camber", value: shown(wheel.camber_rad, "angle"), more: `${lean}, ${side} wheel`,
      change: baseline && difference(wheel.camber_rad, then, "angle") },
    { key: "wear", name: "Shoulder wear", value: `${significant(wear.wear)}\u00a0\u00d7 upright`, more: wear.words ?? "",
      change: baseline && plain(wear.wear, wearThen) },
    { key: "mass", name: "Axle mass", value: shown(figures.flex.axle_mass_kg, "mass"), more: "tube or housing, spindles",
      change: baseline && difference(figures.flex.axle_mass_kg, baseline.figures.flex.axle_mass_kg, "mass") },
    { key: "check", name: "Worst check", pending: !checks, fails: checks?.holds === false,
      value: used === undefined ? "none" : `${fixed(100 * used, 0)}\u00a0% of limit`,
      more: checks?.failed ?? (checks?.worst ? `${checks.holds ? "" : "fails: "}${checks.worst.what}, ${checks.worst.place}` : "nothing was checked"),
      change: usedThen !== undefined && used !== undefined && plain(100 * used, 100 * usedThen, "%") },
    { key: "rating", name: "Rating", pending: !rating, fails: own && (own.load_n === null ? own.limiter !== null : own.load_n < rating.stated_load_n),
      value: own?.load_n ? shown(own.load_n, "force") : "none",
      more: rating?.failed ?? (own?.limiter ? `${own.limiter.what}, ${own.limiter.place}` : own?.reason ?? ""),
      change: own?.load_n && ownThen?.load_n && difference(own.load_n, ownThen.load_n, "force") },
  ];
  if (begun.prices) list.push(moneyCell(money));
  return list;
}

function moneyCell(money) {
  const flow = money?.cash_flow;
  const years = flow?.payback_years;
  return { key: "money", name: "Money", pending: !money, fails: flow && flow.net_present_value < 0,
    value: flow ? `${significant(flow.net_present_value)}\u00a0${money.currency}` : "none",
    more: money?.failed ?? (years === null || years === undefined ? "present value; does not pay back" : `present value; pays back in ${fixed(years, 1)} years`) };
}

