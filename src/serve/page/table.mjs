// The page of results tables.
import { afterPause, byId, findingText, listRubrics, make, saveFile, send, sendable, showTrouble } from "./page.mjs";
import { Grid, csvOf } from "./grid.mjs";

/**
 * @typedef {{x: {name: string, unit?: string}, y: {name: string, unit?: string}, rows: Row[], say: string[], remarks: import("./page.mjs").Finding[]}} Results
 * @typedef {{x: number, readings: {text: string, kept: boolean}[], mean_text?: string, range?: number, uncertainty_text?: string, percent_text?: string}} Row
 */

const kExample = [
  ["Load / N", "Length / cm", "Length / cm", "Length / cm"],
  ["0.0", "6.1", "6.0", "6.1"], ["2.0", "9.0", "9.2", "9.1"], ["4.0", "12.1", "12.0", "12.2"],
  ["6.0", "15.2", "15.0", "13.1"], ["8.0", "18.1", "18.0", "18.2"],
];
const out = byId("out", HTMLElement);
const trouble = byId("trouble", HTMLElement);
const rubric = byId("rubric", HTMLSelectElement);
/** @type {AbortController|null} */
let asking = null;
let picture = "";

/** @param {Results} results */
function meansTable(results) {
  const unit = results.y.unit ? ` / ${results.y.unit}` : "";
  const head = [results.x.name + (results.x.unit ? ` / ${results.x.unit}` : ""), `Mean ${results.y.name}${unit}`, "Readings used", "Left out (anomaly)"];
  const body = results.rows.map((row) => {
    const used = row.readings.filter((reading) => reading.kept).map((reading) => reading.text);
    const odd = row.readings.filter((reading) => !reading.kept).map((reading) => reading.text);
    return make("tr", {}, make("th", { scope: "row" }, `${row.x}`), make("td", { class: "num" }, row.mean_text ?? ""), make("td", {}, used.join(", ")), make("td", {}, odd.join(", ")));
  });
  return make("div", { class: "scroll", role: "region", tabindex: "0", "aria-label": "Means" },
    make("table", {}, make("caption", {}, "Means, without anomalies"), make("thead", {}, make("tr", {}, ...head.map((words) => make("th", { scope: "col" }, words)))), make("tbody", {}, ...body)));
}

/** @param {{title: string, results: Results, svg: string, findings: import("./page.mjs").Finding[]}} answer */
function show(answer) {
  URL.revokeObjectURL(picture);
  picture = URL.createObjectURL(new Blob([answer.svg], { type: "image/svg+xml" }));
  const { results } = answer;
  const remarks = [...answer.findings.map(findingText), ...results.remarks.map((remark) => findingText({ ...remark, todo: "" }))];
  const save = make("button", { type: "button" }, "Save the graph");
  save.addEventListener("click", () => saveFile("graph.svg", "image/svg+xml", answer.svg));
  out.replaceChildren(make("h2", {}, "What the results show"), make("ul", {}, ...results.say.map((words) => make("li", {}, words))), meansTable(results),
    make("h2", {}, answer.title), make("img", { class: "graph", src: picture, alt: `Graph: ${answer.title}. ${results.say.join(" ")}` }), make("div", { class: "row" }, save));
  if (remarks.length > 0) out.append(make("h2", {}, "About the table itself"), make("ul", {}, ...remarks.map((words) => make("li", {}, words))));
}

async function update() {
  const cells = grid.cells();
  asking?.abort();
  if (cells.length < 2 || cells.every((row) => row.length < 2)) {
    out.replaceChildren();
    showTrouble(trouble, null);
    return;
  }
  asking = new AbortController();
  try {
    show(await send("/api/results", { table: sendable(csvOf(cells)), rubric: rubric.value }, asking.signal));
    showTrouble(trouble, null);
  } catch (error) {
    if (error instanceof DOMException) return;
    out.replaceChildren();
    showTrouble(trouble, error);
  }
}

const grid = new Grid(byId("grid", HTMLTableElement), afterPause(400, update));
byId("form", HTMLFormElement).addEventListener("submit", (event) => event.preventDefault());
byId("more-rows", HTMLButtonElement).addEventListener("click", () => grid.resize(grid.rows + 1, 0));
byId("more-columns", HTMLButtonElement).addEventListener("click", () => grid.resize(0, grid.columns + 1));
byId("clear", HTMLButtonElement).addEventListener("click", () => grid.empty());
byId("example", HTMLButtonElement).addEventListener("click", () => grid.fill(kExample));
rubric.addEventListener("change", update);
try {
  await listRubrics(rubric, "none of these");
} catch (error) {
  showTrouble(trouble, error);
}
