// Questions to the server, and what is told of those that it refuses.
import { made } from "./words.js";

const byId = id => document.getElementById(id);

/** The question of each kind that is out. */
const asking = new Map();

/** Asks, giving up an earlier question of the same kind; undefined where this one was given up. */
export async function ask(what, body) {
  asking.get(what)?.abort();
  const own = new AbortController();
  asking.set(what, own);
  try {
    const answer = await fetch(what, { method: "POST", signal: own.signal,
      headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });
    const document = await answer.json();
    return own.signal.aborted ? undefined : { ok: answer.ok, document };
  } catch (error) {
    if (own.signal.aborted) return undefined;
    return { ok: false, document: { problems: [{ message: `the server does not answer (${error.message}); is it still running?` }] } };
  }
}

/** Gives up a question. */
export const abandon = what => asking.get(what)?.abort();

/** A notice over the sheet, in place of an earlier one; none without words. */
export function notice(id, ...inside) {
  const old = byId(id);
  if (inside.length === 0) {
    old?.remove();
    return;
  }
  const own = made("div", { id, class: "notice" }, ...inside);
  if (old) old.replaceWith(own);
  else byId("notices").append(own);
}

/** A problem with its line and hint. */
export function problemText({ line, message, accepted, likely }) {
  const place = line ? `line ${line}: ` : "";
  const hint = likely ? `; did you mean \u201c${likely}\u201d?` : accepted ? `; accepted: ${accepted}` : "";
  return `${place}${message}${hint}`;
}

/** Problems of a file or of values; none takes the notice away. */
export function showProblems(problems, heading) {
  if (!problems) return notice("problems");
  const list = problems.map(own => made("li", {}, problemText(own)));
  notice("problems", made("strong", {}, heading), made("ul", {}, ...list));
}

