// A teacher's changes to the question and to steps' wordings.
import { byId, make } from "./page.mjs";

/**
 * @typedef {import("./page.mjs").Rubric} Rubric
 * @typedef {{title?: string, hint?: string, present?: string[], vague?: string[]}} StepEdit
 * @typedef {{question?: string, hypothesis?: string, values?: string[], steps?: Record<string, StepEdit>}} Edits
 */

const question = byId("question", HTMLTextAreaElement);
const values = byId("values", HTMLTextAreaElement);
const hypothesis = byId("hypothesis", HTMLTextAreaElement);
const step = byId("step", HTMLSelectElement);
const title = byId("step-title", HTMLInputElement);
const hint = byId("step-hint", HTMLInputElement);
const present = byId("step-present", HTMLTextAreaElement);
const vague = byId("step-vague", HTMLTextAreaElement);

/** @param {string} text */
const linesOf = (text) => text.split("\n").map((line) => line.trim()).filter(Boolean);

export class Editing {
  /** @param {() => void} changed */
  constructor(changed) {
    /** @type {Rubric|null} */
    this.rubric = null;
    /** @type {Map<string, StepEdit>} */
    this.steps = new Map();
    for (const box of [question, values, hypothesis]) box.addEventListener("input", changed);
    for (const box of [title, hint, present, vague]) {
      box.addEventListener("input", () => {
        this.keepStep();
        changed();
      });
    }
    step.addEventListener("change", () => this.showStep());
  }

  /** Begins with the rubric as it stands. @param {Rubric} rubric */
  begin(rubric) {
    this.rubric = rubric;
    this.steps.clear();
    question.value = rubric.question;
    values.value = rubric.given.values.join("\n");
    values.disabled = rubric.given.values.length === 0;
    hypothesis.value = rubric.given.hypothesis;
    step.replaceChildren(...rubric.steps.map(({ id, title: name }, index) => make("option", { value: id }, `${index + 1}. ${name}`)));
    this.showStep();
  }

  get chosen() {
    return this.rubric?.steps.find(({ id }) => id === step.value);
  }

  showStep() {
    const edit = this.steps.get(step.value) ?? {};
    title.value = edit.title ?? this.chosen?.title ?? "";
    hint.value = edit.hint ?? this.chosen?.hint ?? "";
    present.value = (edit.present ?? []).join("\n");
    vague.value = (edit.vague ?? []).join("\n");
  }

  keepStep() {
    /** @type {StepEdit} */
    const edit = {};
    if (title.value.trim() && title.value !== this.chosen?.title) edit.title = title.value;
    if (hint.value.trim() && hint.value !== this.chosen?.hint) edit.hint = hint.value;
    if (linesOf(present.value).length > 0) edit.present = linesOf(present.value);
    if (linesOf(vague.value).length > 0) edit.vague = linesOf(vague.value);
    if (Object.keys(edit).length > 0) this.steps.set(step.value, edit);
    else this.steps.delete(step.value);
  }

  /** What differs from the rubric; null if nothing does. @returns {Edits|null} */
  edits() {
    if (!this.rubric) return null;
    /** @type {Edits} */
    const out = {};
    const { given } = this.rubric;
    if (question.value.trim() && question.value !== this.rubric.question) out.question = question.value;
    if (hypothesis.value !== given.hypothesis) out.hypothesis = hypothesis.value;
    const listed = linesOf(values.value);
    if (!values.disabled && listed.join("\n") !== given.values.join("\n")) out.values = listed;
    if (this.steps.size > 0) out.steps = Object.fromEntries(this.steps);
    return Object.keys(out).length > 0 ? out : null;
  }
}
