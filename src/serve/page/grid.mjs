// A table of boxes to type in.
import { make } from "./page.mjs";

const kMostRows = 200;
const kMostColumns = 20;

/** Cells of pasted text: tabs or commas between them. @param {string} text @returns {string[][]} */
export function cellsOf(text) {
  const lines = text.replace(/\r\n?/gu, "\n").replace(/\n+$/u, "").split("\n");
  const tabs = lines.some((line) => line.includes("\t"));
  const between = tabs ? "\t" : lines.length > 1 && lines.every((line) => line.includes(";")) ? ";" : lines.length > 1 ? "," : "\t";
  return lines.map((line) => line.split(between).map((cell) => cell.trim().replace(/^"(.*)"$/u, "$1")));
}

/** Cells as a CSV file (RFC 4180). @param {string[][]} cells */
export function csvOf(cells) {
  return `${cells.map((row) => row.map((cell) => (/[",\n;\t]/u.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(",")).join("\r\n")}\r\n`;
}

export class Grid {
  /** @param {HTMLTableElement} table @param {() => void} changed */
  constructor(table, changed) {
    this.table = table;
    this.changed = changed;
    this.body = table.createTBody();
    this.resize(6, 3);
    table.addEventListener("input", changed);
    table.addEventListener("paste", (event) => this.paste(event));
    table.addEventListener("keydown", (event) => this.key(event));
  }

  get rows() {
    return this.body.rows.length;
  }

  get columns() {
    return (this.body.rows[0]?.cells.length ?? 1) - 1;
  }

  /** @param {number} row @param {number} column */
  at(row, column) {
    const box = this.body.rows[row]?.cells[column + 1]?.firstElementChild;
    return box instanceof HTMLInputElement ? box : null;
  }

  /** At least so many rows and columns. @param {number} rows @param {number} columns */
  resize(rows, columns) {
    const wide = Math.min(Math.max(columns, this.columns), kMostColumns);
    while (this.rows < Math.min(rows, kMostRows)) {
      const row = this.body.insertRow();
      row.append(make("th", { scope: "row" }, this.rows === 1 ? "Headings" : `${this.rows - 1}`));
    }
    [...this.body.rows].forEach((row, index) => {
      while (row.cells.length - 1 < wide) {
        const name = index === 0 ? `Heading ${row.cells.length}` : `Row ${index}, column ${row.cells.length}`;
        row.append(make("td", {}, make("input", { type: "text", "aria-label": name, autocomplete: "off", inputmode: index === 0 ? "text" : "decimal" })));
      }
    });
  }

  /** @returns {string[][]} rows with something in them; empty cells at the end of rows and table left out */
  cells() {
    const all = [...this.body.rows].map((row) => [...row.querySelectorAll("input")].map((box) => box.value.trim()));
    const wide = Math.max(0, ...all.map((row) => row.reduce((most, cell, index) => (cell ? index + 1 : most), 0)));
    return all.map((row) => row.slice(0, wide)).filter((row) => row.some(Boolean));
  }

  /** @param {string[][]} cells @param {number} row @param {number} column */
  fill(cells, row = 0, column = 0) {
    this.resize(row + cells.length, column + Math.max(...cells.map((line) => line.length)));
    cells.forEach((line, r) => line.forEach((cell, c) => {
      const box = this.at(row + r, column + c);
      if (box) box.value = cell;
    }));
    this.changed();
  }

  empty() {
    for (const box of this.body.querySelectorAll("input")) box.value = "";
    this.changed();
  }

  /** @param {EventTarget|null} target @returns {[number, number]|null} */
  placeOf(target) {
    const cell = target instanceof HTMLInputElement ? target.closest("td") : null;
    const row = cell?.parentElement;
    return cell && row instanceof HTMLTableRowElement ? [row.sectionRowIndex, cell.cellIndex - 1] : null;
  }

  /** @param {ClipboardEvent} event */
  paste(event) {
    const at = this.placeOf(event.target);
    const text = event.clipboardData?.getData("text/plain") ?? "";
    const cells = cellsOf(text);
    if (at === null || (cells.length === 1 && cells[0].length === 1)) return;
    event.preventDefault();
    this.fill(cells, at[0], at[1]);
  }

  /** Return goes down, and makes a row at the end. @param {KeyboardEvent} event */
  key(event) {
    const at = this.placeOf(event.target);
    if (at === null || event.key !== "Enter") return;
    event.preventDefault();
    this.resize(at[0] + 2, 0);
    this.at(at[0] + 1, at[1])?.focus();
  }
}
