// The layer of marks under the draft.
import { make, placesOf } from "./page.mjs";

/**
 * @typedef {import("./page.mjs").Review} Review
 * @typedef {{from: number, to: number, kind: "there"|"near"|"sum", tag: string}} Mark
 */

/** What of the draft to mark, in order, not overlapping. @param {string} text @param {Review} review @returns {Mark[]} */
export function marksOf(text, review) {
  /** @type {{start: number, end: number, kind: Mark["kind"], tag: string}[]} */
  const raw = [];
  for (const sum of review.calculations) {
    if (sum.verdict === "wrong") raw.push({ start: sum.start, end: sum.end, kind: "sum", tag: "sum" });
  }
  review.steps.forEach((step, index) => {
    if (step.status === "missing") return;
    const kind = step.status === "present" ? "there" : "near";
    const tag = `${index + 1}${kind === "near" ? "?" : ""}`;
    for (const { start, end } of step.evidence) raw.push({ start, end, kind, tag });
  });
  const places = placesOf(text, raw.flatMap(({ start, end }) => [start, end]));
  const at = (/** @type {number} */ byte) => places.get(byte) ?? text.length;
  const whole = raw.map(({ start, end, kind, tag }) => ({ from: at(start), to: at(end), kind, tag }));
  return cut(whole);
}

/** Cuts overlapping marks into pieces: what is to be looked at goes first: a sum, then a step that is near. @param {Mark[]} marks */
function cut(marks) {
  const rank = { sum: 0, near: 1, there: 2 };
  const borders = [...new Set(marks.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  /** @type {Mark[]} */
  const out = [];
  for (let i = 0; i + 1 < borders.length; ++i) {
    const [from, to] = [borders[i], borders[i + 1]];
    const over = marks.filter((mark) => mark.from <= from && mark.to >= to);
    if (over.length === 0) continue;
    over.sort((a, b) => rank[a.kind] - rank[b.kind]);
    const starting = over.filter((mark) => mark.from === from).map((mark) => mark.tag);
    out.push({ from, to, kind: over[0].kind, tag: starting.join(" ") });
  }
  return out;
}

/**
 * The marks of `before` that still hold in `after`: those outside of what was changed, at their new places.
 * @param {Mark[]} marks @param {string} before @param {string} after
 */
export function movedMarks(marks, before, after) {
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) ++head;
  let tail = 0;
  while (tail < most - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) ++tail;
  const by = after.length - before.length;
  return marks
    .filter(({ from, to }) => to <= head || from >= before.length - tail)
    .map((mark) => (mark.to <= head ? mark : { ...mark, from: mark.from + by, to: mark.to + by }));
}

/** @param {HTMLElement} under @param {string} text @param {Mark[]} marks */
export function showMarks(under, text, marks) {
  const parts = [];
  let done = 0;
  for (const mark of marks) {
    parts.push(text.slice(done, mark.from));
    const element = make("mark", mark.kind === "there" ? {} : { class: mark.kind });
    if (mark.tag) element.append(make("span", { class: "tag" }, mark.tag));
    element.append(text.slice(mark.from, mark.to));
    parts.push(element);
    done = mark.to;
  }
  // A last line end takes a line in the textarea, so it must take one here.
  under.replaceChildren(...parts, `${text.slice(done)}\n`);
}
