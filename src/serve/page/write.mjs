// The pupil's page: write, see what is found, check the draft.
import { afterPause, ask, byId, make, saveFile, send, sendable, showTrouble } from "./page.mjs";
import { marksOf, movedMarks, showMarks } from "./marks.mjs";
import { nearList, orderWords, stepsWith, sumList, tally, thereList } from "./found.mjs";
import { showQuestion } from "./question.mjs";

/**
 * @typedef {import("./page.mjs").Review} Review
 * @typedef {import("./page.mjs").Rubric} Rubric
 */

const kLongest = 60_000;  // letters; a draft has about two thousand
const about = new URLSearchParams(location.search).get("about") ?? "";
const draft = byId("draft", HTMLTextAreaElement);
const under = byId("under", HTMLElement);
const live = byId("live", HTMLElement);
const whole = byId("whole", HTMLElement);
const trouble = byId("trouble", HTMLElement);
const kept = `retort draft ${about}`;

/** @type {Rubric} */
let rubric;
/** @type {AbortController|null} */
let asking = null;
let hints = 0;          // how many of the steps still to find have been asked about
let named = false;      // whether they have been named
/** @type {{text: string, marks: import("./marks.mjs").Mark[]}} */
let shown = { text: "", marks: [] };

/** Storage may be turned off in a browser; the page works without. @param {() => string|null|void} use */
function inStorage(use) {
  try {
    return use() ?? "";
  } catch {
    return "";
  }
}

function fit() {
  draft.style.height = "auto";
  draft.style.height = `${draft.scrollHeight + 4}px`;
}

/** @returns {Promise<{text: string, review: Review}|null>} */
async function review() {
  const text = sendable(draft.value);
  asking?.abort();
  if (text.length > kLongest) {
    showTrouble(trouble, new Error(`This is longer than ${kLongest} letters. Take out what is not the answer.`));
    return null;
  }
  asking = new AbortController();
  try {
    const found = await send("/api/check", { rubric: rubric.id, text }, asking.signal);
    showTrouble(trouble, null);
    return { text, review: found };
  } catch (error) {
    if (!(error instanceof DOMException)) showTrouble(trouble, error);
    return null;
  }
}

/** The steps still to find: how many, then questions, then names, as asked. @param {Review} found */
function openSteps(found) {
  const open = stepsWith(rubric, found, "missing");
  const out = make("div");
  if (open.length === 0) return out;
  out.append(make("h2", {}, `Still to find: ${open.length}`));
  const first = new Map(found.next.map((id, index) => [id, index]));
  open.sort((a, b) => (first.get(a.step.id) ?? 99) - (first.get(b.step.id) ?? 99) || a.number - b.number);
  const told = named ? open.length : Math.min(hints, open.length);
  if (told > 0) {
    const list = make("ul", { class: "found ask" });
    for (const { step, number } of open.slice(0, told)) {
      const item = make("li");
      if (named) item.append(make("p", {}, make("strong", {}, `${number}. ${step.title}`)));
      item.append(make("p", {}, step.hint));
      list.append(item);
    }
    out.append(list);
  }
  const row = make("div", { class: "row" });
  const button = (/** @type {string} */ words, /** @type {() => void} */ then) => {
    const made = make("button", { type: "button" }, words);
    made.addEventListener("click", () => {
      then();
      showLive(found);
      live.querySelector("button")?.focus();
    });
    row.append(made);
  };
  if (told < open.length) button(told === 0 ? "Give me a hint" : "Another hint", () => { hints = told + 1; });
  if (!named) button("Show them all", () => { named = true; });
  out.append(row);
  return out;
}

/** @param {Review} found */
function showLive(found) {
  live.replaceChildren();
  const near = nearList(rubric, found);
  if (near.childElementCount > 0) live.append(make("h2", {}, "Needs more"), near);
  const order = orderWords(rubric, found);
  if (order.length > 0) live.append(make("h2", {}, "Order"), make("ul", { class: "found near" }, ...order.map((words) => make("li", {}, words))));
  if (found.calculations.length > 0) live.append(make("h2", {}, "Sums"), sumList(found.calculations));
  const there = thereList(rubric, found);
  if (there.childElementCount > 0) live.append(make("h2", {}, "There"), there);
  live.append(openSteps(found));
}

async function update() {
  const done = await review();
  if (done === null) return;
  if (done.text === sendable(draft.value)) {
    shown = { text: draft.value, marks: marksOf(done.text, done.review) };
    showMarks(under, shown.text, shown.marks);
  }
  const words = tally(rubric, done.review);
  const place = byId("tally", HTMLElement);
  if (place.textContent !== words) place.textContent = words;
  showLive(done.review);
}

/** The whole review, for reading and printing. */
async function checkAll() {
  const done = await review();
  if (done === null) return;
  const { review: found, text } = done;
  whole.replaceChildren(make("h2", { id: "whole-title", tabindex: "-1" }, "Your draft, checked"), make("p", {}, tally(rubric, found)));
  whole.append(make("h3", {}, "Your draft"), make("blockquote", { class: "quote" }, text || "(nothing written yet)"));
  const part = (/** @type {string} */ title, /** @type {Node} */ list) => {
    if (list.hasChildNodes()) whole.append(make("h3", {}, title), list);
  };
  part("What to do next", nextList(found));
  part("Mentioned, but not clear enough yet", nearList(rubric, found));
  part("There, in your own words", thereList(rubric, found));
  const order = orderWords(rubric, found);
  part("Order", make("ul", { class: "found near" }, ...order.map((words) => make("li", {}, words))));
  part("Sums", sumList(found.calculations));
  if (rubric.cautions.length > 0) whole.append(cautions());
  const print = make("button", { type: "button" }, "Print this");
  print.addEventListener("click", () => window.print());
  whole.append(make("p", { class: "soft" }, "A program found this by looking for words. It can be mistaken, and it gives no marks: your teacher does."), make("div", { class: "row" }, print));
  whole.hidden = false;
  byId("whole-title", HTMLElement).focus();
}

/** @param {Review} found */
function nextList(found) {
  const list = make("ol");
  for (const id of found.next) {
    const step = rubric.steps.find((one) => one.id === id);
    if (step) list.append(make("li", {}, step.hint));
  }
  return list;
}

function cautions() {
  return make("div", { class: "aside" }, make("p", {}, make("strong", {}, "Before anyone does this practical")),
    make("ul", {}, ...rubric.cautions.map((words) => make("li", {}, words))),
    make("p", {}, "Your school’s own risk assessment and local rules come first."));
}

function forget() {
  inStorage(() => localStorage.removeItem(kept));
  draft.value = "";
  whole.hidden = true;
  hints = 0;
  named = false;
  fit();
  update();
  draft.focus();
}

const soon = afterPause(350, update);

function onInput() {
  inStorage(() => localStorage.setItem(kept, draft.value));
  shown = { text: draft.value, marks: movedMarks(shown.marks, shown.text, draft.value) };
  showMarks(under, shown.text, shown.marks);
  fit();
  soon();
}

try {
  rubric = await ask(`/api/rubric?id=${encodeURIComponent(about)}`);
  document.title = `${rubric.title}: Retort`;
  byId("title", HTMLElement).textContent = rubric.title;
  showQuestion(byId("question", HTMLElement), rubric);
  byId("desk", HTMLElement).hidden = false;
  draft.value = inStorage(() => localStorage.getItem(kept));
  draft.addEventListener("input", onInput);
  window.addEventListener("resize", fit);
  byId("check", HTMLButtonElement).addEventListener("click", checkAll);
  byId("save", HTMLButtonElement).addEventListener("click", () => saveFile(`${rubric.id}.txt`, "text/plain", draft.value));
  byId("forget", HTMLButtonElement).addEventListener("click", forget);
  fit();
  await update();
} catch (error) {
  showTrouble(trouble, error);
}
