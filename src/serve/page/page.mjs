// What all pages share: elements, requests, places in UTF-8 text.

/**
 * @typedef {{code: string, severity: string, file?: string, text: string, todo: string, line?: number, column?: number}} Finding
 * @typedef {{id: string, title: string, facet: string, core: boolean, hint: string, lacks: string, presentMeans: string, vagueMeans: string}} Step
 * @typedef {{quantity: string, values: string[]}} Column
 * @typedef {{quantity: string, values: string[], columns: Column[], apparatus: string[], hypothesis: string}} Given
 * @typedef {{id: string, title: string, question: string, points: boolean, given: Given, cautions: string[], steps: Step[]}} Rubric
 * @typedef {{start: number, end: number, text: string}} Evidence
 * @typedef {{id: string, facet: string, status: "present"|"vague"|"missing", evidence: Evidence[], note?: string}} StepFound
 * @typedef {{start: number, end: number, text: string, verdict: string, slips: string[], remarks: string[], correct?: string, advice?: string}} Sum
 * @typedef {{steps: StepFound[], order: {first: string, then: string, both: boolean, kept: boolean}[], next: string[], calculations: Sum[]}} Review
 */

/** A fault that the server, or the way to it, has told. */
export class Trouble extends Error {
  /** @param {string} sentence @param {Finding[]} findings */
  constructor(sentence, findings = []) {
    super(sentence);
    this.findings = findings;
  }
}

/**
 * The element with this id.
 * @template {HTMLElement} T
 * @param {string} id @param {new () => T} kind
 * @returns {T}
 */
export function byId(id, kind) {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`no #${id}`);
  return found;
}

/**
 * A new element. Children that are strings become text, never markup.
 * @param {string} name
 * @param {Record<string, string>} attributes
 * @param {(Node|string)[]} children
 */
export function make(name, attributes = {}, ...children) {
  const out = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) out.setAttribute(key, value);
  out.append(...children);
  return out;
}

/** @param {Response} response */
async function outcome(response) {
  const text = await response.text();
  if (response.ok) return JSON.parse(text);
  let sentence = text.trim();
  let findings = [];
  try {
    ({ error: sentence, findings = [] } = JSON.parse(text));
  } catch {
    // a plain sentence
  }
  throw new Trouble(sentence || `The answer was ${response.status}.`, findings);
}

/** @param {string} path @param {RequestInit} [how] @returns {Promise<any>} */
export async function ask(path, how) {
  let response;
  try {
    response = await fetch(path, how);
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") throw error;
    throw new Trouble("Retort does not answer. Is it still running in its window?");
  }
  return outcome(response);
}

/** @param {string} path @param {unknown} body @param {AbortSignal} [signal] */
export function send(path, body, signal) {
  return ask(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body), signal });
}

/** @param {Finding} finding */
export function findingText(finding) {
  const place = finding.line ? `Line ${finding.line}: ` : "";
  const file = finding.file ? `${finding.file}: ` : "";
  return `${file}${place}${finding.text}${finding.todo ? `. To do: ${finding.todo}` : ""}`;
}

/** Shows a fault in `where`, or takes it away. @param {HTMLElement} where @param {unknown} error */
export function showTrouble(where, error) {
  where.replaceChildren();
  if (!error) return;
  if (!(error instanceof Error)) throw error;
  where.append(make("p", {}, error.message));
  const findings = error instanceof Trouble ? error.findings : [];
  for (const finding of findings.slice(0, 20)) where.append(make("p", {}, findingText(finding)));
}

/** Lone surrogates cannot be sent as UTF-8. @param {string} text */
export function sendable(text) {
  return text.replace(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/gu, "\uFFFD");
}

/**
 * For places in bytes of UTF-8, the places in `text`.
 * @param {string} text @param {number[]} bytes
 * @returns {Map<number, number>}
 */
export function placesOf(text, bytes) {
  const wanted = [...new Set(bytes)].sort((a, b) => a - b);
  const out = new Map();
  let byte = 0;
  let unit = 0;
  for (const place of wanted) {
    while (byte < place && unit < text.length) {
      const code = text.codePointAt(unit) ?? 0;
      byte += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
      unit += code < 0x10000 ? 1 : 2;
    }
    out.set(place, unit);
  }
  return out;
}

/** Offers `content` as a file. @param {string} name @param {string} type @param {string} content */
export function saveFile(name, type, content) {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = make("a", { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/**
 * Calls `then` once there has been a pause.
 * @param {number} milliseconds @param {() => void} then
 */
export function afterPause(milliseconds, then) {
  let timer = 0;
  return () => {
    clearTimeout(timer);
    timer = window.setTimeout(then, milliseconds);
  };
}

/** All rubrics, by title. @returns {Promise<{id: string, title: string, points: boolean}[]>} */
export async function allRubrics() {
  const { rubrics } = await ask("/api/rubrics");
  return rubrics.sort((/** @type {{title: string}} */ a, /** @type {{title: string}} */ b) => a.title.localeCompare(b.title));
}

/** Fills a select with all investigations. @param {HTMLSelectElement} select @param {string} [none] */
export async function listRubrics(select, none) {
  const rubrics = await allRubrics();
  select.replaceChildren();
  if (none) select.append(make("option", { value: "" }, none));
  const options = (/** @type {boolean} */ short) => rubrics.filter((rubric) => rubric.points === short)
    .map(({ id, title }) => make("option", { value: id }, title));
  select.append(...options(false));
  // a short question has no results table
  if (!none) select.append(make("optgroup", { label: "Short questions that follow" }, ...options(true)));
}
