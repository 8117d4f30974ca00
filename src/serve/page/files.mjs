// Files of drafts: chosen, dropped, read by the program.
import { Trouble, ask, findingText } from "./page.mjs";

/**
 * @typedef {{name: string, file: File}} Named
 * @typedef {{id: string, text: string}} Draft
 */

const kMostFiles = 2000;
const kLargestFile = 15 * 1024 * 1024;

/** Files of an input element, each with its place in the folder if one was chosen. @param {FileList|null} list @returns {Named[]} */
export function chosenFiles(list) {
  return [...(list ?? [])].map((file) => ({ name: file.webkitRelativePath || file.name, file }));
}

/** @param {FileSystemDirectoryReader} reader @returns {Promise<FileSystemEntry[]>} */
function someEntries(reader) {
  return new Promise((resolve, reject) => {
    reader.readEntries(resolve, reject);
  });
}

/** @param {FileSystemFileEntry} entry @returns {Promise<File>} */
function fileOf(entry) {
  return new Promise((resolve, reject) => {
    entry.file(resolve, reject);
  });
}

/** All files below `entry`. @param {FileSystemEntry} entry @param {string} above @param {Named[]} out */
async function walk(entry, above, out) {
  if (out.length >= kMostFiles || entry.name.startsWith(".")) return;
  if (entry instanceof FileSystemFileEntry) {
    out.push({ name: above + entry.name, file: await fileOf(entry) });
  } else if (entry instanceof FileSystemDirectoryEntry) {
    const reader = entry.createReader();
    // A reader gives a hundred entries at a time, and none at the end.
    for (let some = await someEntries(reader); some.length > 0; some = await someEntries(reader)) {
      for (const one of some) await walk(one, `${above}${entry.name}/`, out);
    }
  }
}

/** What was dropped; folders are opened. @param {DataTransfer|null} from @returns {Promise<Named[]>} */
export async function droppedFiles(from) {
  // The entries must be taken before the first pause: the list is emptied then.
  const entries = [...(from?.items ?? [])].map((item) => item.webkitGetAsEntry());
  const plain = chosenFiles(from?.files ?? null);
  if (entries.every((entry) => entry === null)) return plain;
  /** @type {Named[]} */
  const out = [];
  for (const entry of entries) {
    if (entry) await walk(entry, "", out);
  }
  return out;
}

/** The label of drafts in a file: without its folders unless two files share a name. @param {Named[]} files */
function shortNames(files) {
  const count = new Map();
  const last = (/** @type {string} */ name) => name.slice(name.lastIndexOf("/") + 1);
  for (const { name } of files) count.set(last(name), (count.get(last(name)) ?? 0) + 1);
  return files.map(({ name, file }) => ({ name: count.get(last(name)) === 1 ? last(name) : name.replaceAll("/", " "), file }));
}

/** @param {Named} named @param {Draft[]} drafts @param {string[]} unread */
async function readOne({ name, file }, drafts, unread) {
  if (file.size > kLargestFile) {
    unread.push(`${name}: this file is larger than 15 MB, which no draft is.`);
    return;
  }
  try {
    const read = await ask(`/api/file?name=${encodeURIComponent(name.slice(-200))}`, { method: "POST", headers: { "Content-Type": "application/octet-stream" }, body: file });
    drafts.push(...read.answers);
    unread.push(...read.findings.map(findingText));
  } catch (error) {
    // A folder that was dropped as a file cannot be read by the browser either.
    unread.push(error instanceof Trouble ? `${name}: ${error.message}` : `${name}: the browser cannot read this.`);
  }
}

/**
 * Reads all files; those that cannot be read are named with why, and the rest goes on.
 * @param {Named[]} files @param {(done: number, of: number) => void} progress
 */
export async function readDrafts(files, progress) {
  /** @type {Draft[]} */
  const drafts = [];
  /** @type {string[]} */
  const unread = [];
  const named = shortNames(files);
  for (const [index, one] of named.entries()) {
    progress(index, named.length);
    await readOne(one, drafts, unread);
  }
  return { drafts, unread };
}
