// What the page knows.

/** The two ends of an axle. */
export const SIDES = ["left", "right"];

/** What was begun with, its controls, the newest answers, and what is drawn. */
export const state = {
  begun: null, controls: null, figures: null, checks: null, rating: null, money: null, baseline: null, pointed: null,
  bump: null, frame: null, rest: null, seen: null, remedied: false,
};

/** What the page asks about. */
export const choice = () => ({ revision: state.begun.revision, values: state.controls.values, case: document.getElementById("load-case").value });

