// The teacher's page: drafts in, the class report out.
import { afterPause, ask, byId, findingText, listRubrics, make, saveFile, send, sendable, showTrouble } from "./page.mjs";
import { chosenFiles, droppedFiles, readDrafts } from "./files.mjs";
import { nearList, stepsWith, sumList, tally, thereList } from "./found.mjs";
import { Editing } from "./editing.mjs";

/**
 * @typedef {import("./files.mjs").Draft} Draft
 * @typedef {{draft: string, step: string, title: string, was: string, is: string}} Change
 */

const rubricChoice = byId("rubric", HTMLSelectElement);
const trouble = byId("trouble", HTMLElement);
const count = byId("count", HTMLElement);
const report = byId("report", HTMLIFrameElement);
const pupil = byId("pupil", HTMLSelectElement);
const drop = byId("drop", HTMLElement);
const kMostShown = 60;  // changes listed one by one

/** @type {{now: Draft[], before: Draft[]}} */
const drafts = { now: [], before: [] };
/** @type {import("./page.mjs").Rubric} */
let rubric;
let address = "";   // of the report shown
let round = 0;      // counts what was asked for, so that a late answer is passed over

/** @param {string} as */
function wanted(as) {
  const checked = (/** @type {string} */ id) => byId(id, HTMLInputElement).checked;
  const body = { rubric: rubric.id, as, drafts: drafts.now, withRange: checked("range"), perSheet: checked("two") ? 2 : 1 };
  const edits = editing.edits();
  return { ...body, ...(edits ? { edits } : {}), ...(drafts.before.length > 0 ? { before: drafts.before } : {}) };
}

/** @param {string} as @returns {Promise<string>} the report's text */
async function written(as) {
  const response = await fetch("/api/class", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(wanted(as)) });
  if (response.ok) return response.text();
  throw new Error((await response.json()).error);
}

function showCount() {
  const words = (/** @type {number} */ number) => (number === 1 ? "1 draft" : `${number} drafts`);
  const first = drafts.before.length > 0 ? `, and ${words(drafts.before.length)} to compare with` : "";
  count.textContent = drafts.now.length + drafts.before.length > 0 ? `${words(drafts.now.length)}${first}.` : "";
}

async function showPupil() {
  const place = byId("draft", HTMLElement);
  const draft = drafts.now[Number(pupil.value)];
  if (!draft) return place.replaceChildren();
  const edits = editing.edits();
  const found = await send("/api/check", { rubric: rubric.id, text: sendable(draft.text), ...(edits ? { edits } : {}) });
  const parts = [make("p", { class: "tally" }, tally(rubric, found)), make("blockquote", { class: "quote" }, draft.text || "(nothing written)")];
  const part = (/** @type {string} */ title, /** @type {HTMLElement} */ list) => {
    if (list.hasChildNodes()) parts.push(make("h3", {}, title), list);
  };
  part("Mentioned, but not clear enough yet", nearList(rubric, found));
  part("There, in the pupil’s own words", thereList(rubric, found));
  part("Not found", make("ul", { class: "found ask" }, ...stepsWith(rubric, found, "missing").map(({ step, number }) => make("li", {}, `${number}. ${step.title}`))));
  part("Sums", sumList(found.calculations));
  return place.replaceChildren(...parts);
}

/** What the changes to the rubric do over the class. @param {{changes: Change[], findings: import("./page.mjs").Finding[]}} answer */
function showChanges({ changes, findings }) {
  const place = byId("changes", HTMLElement);
  const pupils = new Set(changes.map(({ draft }) => draft)).size;
  const words = changes.length === 0 ? "Over this class, these changes make no difference."
    : `${changes.length} verdict${changes.length === 1 ? "" : "s"} would change, for ${pupils} pupil${pupils === 1 ? "" : "s"}.`;
  const list = make("ul", {}, ...changes.slice(0, kMostShown).map(({ draft, title, was, is }) => make("li", {}, `${draft}: “${title}” was ${was}, is now ${is}.`)));
  if (changes.length > kMostShown) list.append(make("li", {}, `… and ${changes.length - kMostShown} more.`));
  place.replaceChildren(make("h3", {}, "What changes"), make("p", {}, words), list, ...findings.map((finding) => make("p", {}, findingText(finding))));
}

async function showEdits() {
  const place = byId("edit-trouble", HTMLElement);
  byId("changes", HTMLElement).replaceChildren();
  try {
    const edits = editing.edits();
    if (edits && drafts.now.length > 0) showChanges(await send("/api/class", wanted("changes")));
    else if (edits) await send("/api/rubric", { rubric: rubric.id, edits });
    showTrouble(place, null);
    return true;
  } catch (error) {
    showTrouble(place, error);
    return false;
  }
}

async function update() {
  const mine = ++round;
  showCount();
  byId("work", HTMLElement).hidden = drafts.now.length === 0;
  if (drafts.now.length === 0) return;
  try {
    const page = await written("html");
    if (mine !== round) return;
    URL.revokeObjectURL(address);
    address = URL.createObjectURL(new Blob([page], { type: "text/html" }));
    report.src = address;
    await showPupil();
    showTrouble(trouble, null);
  } catch (error) {
    if (mine === round) showTrouble(trouble, error);
  }
}

function listPupils() {
  pupil.replaceChildren(...drafts.now.map(({ id }, index) => make("option", { value: `${index}` }, id)));
}

/** @param {Promise<import("./files.mjs").Named[]>|import("./files.mjs").Named[]} coming */
async function take(coming) {
  const files = await coming;
  if (files.length === 0) return;
  const { drafts: read, unread } = await readDrafts(files, (done, of) => { count.textContent = `Reading file ${done + 1} of ${of} …`; });
  const asFirst = byId("as-first", HTMLInputElement).checked;
  drafts[asFirst ? "before" : "now"].push(...read.map(({ id, text }) => ({ id, text })));
  const list = make("ul", {}, ...unread.map((words) => make("li", {}, words)));
  byId("unread", HTMLElement).replaceChildren(...(unread.length > 0 ? [make("h2", {}, "To look at"), list] : []));
  listPupils();
  await update();
}

async function choose() {
  try {
    rubric = await ask(`/api/rubric?id=${encodeURIComponent(rubricChoice.value)}`);
    editing.begin(rubric);
    byId("changes", HTMLElement).replaceChildren();
    showTrouble(byId("edit-trouble", HTMLElement), null);
    await update();
  } catch (error) {
    showTrouble(trouble, error);
  }
}

/** @param {string} as @param {string} name @param {string} type */
async function save(as, name, type) {
  try {
    saveFile(name, type, await written(as));
  } catch (error) {
    showTrouble(trouble, error);
  }
}

async function saveRubric() {
  try {
    const edits = editing.edits();
    const { name, file } = await send("/api/rubric", { rubric: rubric.id, ...(edits ? { edits } : {}) });
    saveFile(name, "application/json", file);
  } catch (error) {
    showTrouble(byId("edit-trouble", HTMLElement), error);
  }
}

/** @param {string} id @param {() => void} then */
const onClick = (id, then) => byId(id, HTMLButtonElement).addEventListener("click", then);

function listen() {
  rubricChoice.addEventListener("change", choose);
  pupil.addEventListener("change", showPupil);
  for (const id of ["files", "folder"]) {
    const input = byId(id, HTMLInputElement);
    input.addEventListener("change", async () => {
      await take(chosenFiles(input.files));
      input.value = "";
    });
  }
  drop.addEventListener("dragover", (event) => {
    event.preventDefault();
    drop.classList.add("over");
  });
  drop.addEventListener("dragleave", () => drop.classList.remove("over"));
  drop.addEventListener("drop", (event) => {
    event.preventDefault();
    drop.classList.remove("over");
    take(droppedFiles(event.dataTransfer));
  });
  for (const id of ["range", "two"]) byId(id, HTMLInputElement).addEventListener("change", update);
  onClick("save-html", () => save("html", "class.html", "text/html"));
  onClick("save-csv", () => save("csv", "class.csv", "text/csv"));
  onClick("save-slips", () => save("slips", "slips.html", "text/html"));
  onClick("save-rubric", saveRubric);
  onClick("undo", choose);
  onClick("empty", () => {
    drafts.now = [];
    drafts.before = [];
    listPupils();
    byId("unread", HTMLElement).replaceChildren();
    byId("changes", HTMLElement).replaceChildren();
    update();
  });
}

const editing = new Editing(afterPause(500, async () => {
  if (await showEdits()) await update();
}));
try {
  await listRubrics(rubricChoice);
  listen();
  await choose();
} catch (error) {
  showTrouble(trouble, error);
}
