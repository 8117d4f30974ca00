// The question with its table.
import { make } from "./page.mjs";

/** @param {HTMLElement} place @param {import("./page.mjs").Rubric} rubric */
export function showQuestion(place, rubric) {
  place.replaceChildren(make("div", { class: "aside" }, make("p", {}, rubric.question), ...table(rubric.given)));
}

/** @param {import("./page.mjs").Given} given @returns {HTMLElement[]} */
function table(given) {
  const columns = [];
  if (given.values.length > 1) columns.push({ quantity: given.quantity, values: given.values });
  columns.push(...given.columns.filter((column) => column.quantity !== given.quantity));
  if (columns.length === 0) return [];
  const rows = columns.map(({ quantity, values }) => make("tr", {}, make("th", { scope: "row" }, quantity.charAt(0).toUpperCase() + quantity.slice(1)), ...values.map((value) => make("td", {}, value))));
  return [make("div", { class: "scroll", role: "region", tabindex: "0", "aria-label": "The question’s table" }, make("table", { class: "given" }, make("caption", {}, "The question’s table"), make("tbody", {}, ...rows)))];
}
