// What a review has found, as lists for people.
import { make } from "./page.mjs";

/**
 * @typedef {import("./page.mjs").Review} Review
 * @typedef {import("./page.mjs").Rubric} Rubric
 * @typedef {import("./page.mjs").StepFound} StepFound
 * @typedef {import("./page.mjs").Sum} Sum
 */

/** @param {StepFound} step */
function quotes(step) {
  const out = make("p");
  step.evidence.forEach(({ text }, index) => {
    if (index > 0) out.append(" … ");
    out.append(make("q", {}, text));
  });
  return out;
}

/** @param {Rubric} rubric @param {Review} review @param {"present"|"vague"|"missing"} status */
export function stepsWith(rubric, review, status) {
  return review.steps.map((found, index) => ({ found, step: rubric.steps[index], number: index + 1 })).filter(({ found }) => found.status === status);
}

/** @param {Rubric} rubric @param {Review} review */
export function tally(rubric, review) {
  const there = stepsWith(rubric, review, "present").length;
  const near = stepsWith(rubric, review, "vague").length;
  const open = stepsWith(rubric, review, "missing").length;
  const parts = [`${there} of ${rubric.steps.length} ${rubric.points ? "points" : "steps"} found`];
  if (near > 0) parts.push(`${near} need${near === 1 ? "s" : ""} more`);
  if (open > 0) parts.push(`${open} still to find`);
  return `${parts.join(", ")}.`;
}

/** @param {Rubric} rubric @param {Review} review */
export function thereList(rubric, review) {
  const list = make("ul", { class: "found" });
  for (const { found, step, number } of stepsWith(rubric, review, "present")) {
    list.append(make("li", {}, make("p", {}, make("strong", {}, `${number}. ${step.title}`)), quotes(found)));
  }
  return list;
}

/** @param {Rubric} rubric @param {Review} review */
export function nearList(rubric, review) {
  const list = make("ul", { class: "found near" });
  // Steps that something in the draft goes against are not there, but have a note.
  const cancelled = stepsWith(rubric, review, "missing").filter(({ found }) => found.note);
  for (const { found, step, number } of [...stepsWith(rubric, review, "vague"), ...cancelled]) {
    const item = make("li", {}, make("p", {}, make("strong", {}, `${number}? ${step.title}`)), quotes(found));
    if (found.note) item.append(make("p", {}, found.note));
    item.append(make("p", {}, step.hint));
    list.append(item);
  }
  return list;
}

const kVerdicts = new Map([["right", "Right"], ["wrong", "Not right"], ["unclear", "Cannot be checked"]]);

/** @param {Sum[]} sums */
export function sumList(sums) {
  const list = make("ul", { class: "found sums" });
  for (const sum of sums) {
    const item = make("li", sum.verdict === "wrong" ? { class: "bad" } : {}, make("p", {}, make("strong", {}, `${kVerdicts.get(sum.verdict)}: `), make("q", {}, sum.text)));
    if (sum.advice) item.append(make("p", {}, sum.advice));
    list.append(item);
  }
  return list;
}

/** Pairs that stand in the wrong order. @param {Rubric} rubric @param {Review} review @returns {string[]} */
export function orderWords(rubric, review) {
  const title = (/** @type {string} */ id) => rubric.steps.find((step) => step.id === id)?.title ?? id;
  return review.order.filter(({ both, kept }) => both && !kept).map(({ first, then }) => `You write “${title(then)}” before “${title(first)}”. Which must be done first?`);
}
