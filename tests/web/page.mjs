// The page that the program serves, used in Chromium as pupils and teachers use it.
// Usage: node page.mjs PROGRAM SOURCE_DIR [FOLDER-FOR-PICTURES]
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Checks, axe, fits, kScreens, startBrowser, watchedPage } from "./browser.mjs";

const [program, source, pictures] = process.argv.slice(2);
const checks = new Checks();
const demo = join(source, "corpus/demo/spring-extension");
const folder = mkdtempSync(join(tmpdir(), "retort-page-"));
const photo = join(folder, "photo.jpg");
writeFileSync(photo, Buffer.from([255, 216]));
const kDraft = "Hang the spring from a clamp stand. Measure the length of the spring with a ruler before you start. "
  + "Then add some more weights and measure it again. k = 5.2 / 0.13 = 4.0 N/m";

function startServer() {
  const began = Date.now();
  const server = spawn(program, ["serve", "--port", "0"], { stdio: ["ignore", "pipe", "inherit"] });
  return new Promise((resolve, reject) => {
    let said = "";
    server.on("exit", (code) => reject(new Error(`retort serve ended with ${code}`)));
    server.stdout.on("data", (piece) => {
      said += piece;
      const address = /http:\/\/127\.0\.0\.1:\d+\//u.exec(said);
      if (address) resolve({ server, address: address[0], milliseconds: Date.now() - began });
    });
  });
}

const { server, address, milliseconds } = await startServer();
checks.that(milliseconds < 1000, `the server started in ${milliseconds} ms`);
console.log(`server ready after ${milliseconds} ms`);
const browser = await startBrowser();
const desktop = kScreens[2];
const open = async (path, screen = desktop) => {
  const page = await watchedPage(browser, screen, checks, address);
  await page.goto(address + path, { waitUntil: "networkidle" });
  return page;
};
const picture = async (page, name, screen) => {
  if (pictures) await page.screenshot({ path: `${pictures}/page-${name}-${screen.name.replaceAll(" ", "-")}.png`, fullPage: true });
};
const saved = async (page, click) => {
  const [file] = await Promise.all([page.waitForEvent("download"), click()]);
  return { name: file.suggestedFilename(), text: readFileSync(await file.path(), "utf8") };
};
const shows = async (page, words, where) => {
  const there = await page.getByText(words).first().waitFor({ timeout: 5000 }).then(() => true, () => false);
  checks.that(there, `${where}: "${words}" is shown`);
};

/** A pupil chooses, reads, writes, pauses, is nudged, checks, saves, reloads, forgets. */
async function pupil() {
  const page = await open("");
  checks.that((await page.locator("#rubrics a").count()) >= 8, "the list of practicals");
  await page.getByRole("link", { name: /spring/iu }).first().click();
  await page.waitForURL(/write/u);
  await shows(page, "The question’s table", "question");
  await shows(page, /\d+ still to find/u, "an empty draft");
  checks.that((await page.locator("#live strong").count()) === 0, "no step's name is given away");
  await page.getByLabel("Your draft").fill(kDraft);
  await page.waitForFunction(() => document.querySelectorAll("#under mark").length > 2);
  const marked = await page.locator("#under mark").evaluateAll((all) => all.map((one) => ({ kind: one.className, words: one.lastChild?.textContent })));
  checks.that(/some more weights/u.test(marked.filter(({ kind }) => kind === "near").map(({ words }) => words).join("")), `the vague words are marked: ${JSON.stringify(marked)}`);
  checks.that(marked.some(({ kind, words }) => kind === "sum" && /5\.2 \/ 0\.13/u.test(words)), "the wrong sum is marked");
  const gap = await page.evaluate(() => {
    const draft = document.getElementById("draft");
    const under = document.getElementById("under");
    return Math.abs(draft.scrollHeight - under.scrollHeight);
  });
  checks.that(gap <= 2, `the layer of marks is as high as the draft (${gap} px apart)`);
  await shows(page, "Needs more", "live");
  await shows(page, "Not right: ", "live");
  const before = await page.locator("#live .ask li").count();
  await page.getByRole("button", { name: "Give me a hint" }).click();
  checks.that((await page.locator("#live .ask li").count()) === before + 1, "one hint when asked");
  checks.that((await page.locator("#live .ask strong").count()) === 0, "a hint is a question, not the step's name");
  await page.getByRole("button", { name: "Show them all" }).click();
  checks.that((await page.locator("#live .ask strong").count()) > 2, "all are named when asked");
  await page.getByRole("button", { name: "Check my draft" }).click();
  await shows(page, "What to do next", "review");
  checks.that((await page.evaluate(() => document.activeElement?.id)) === "whole-title", "the review has the focus");
  const file = await saved(page, () => page.getByRole("button", { name: "Save as a file" }).click());
  checks.that(file.text === kDraft && file.name === "spring-extension.txt", "the draft as a file");
  const pdf = await page.pdf();
  checks.that(pdf.length > 5000, "the review prints");
  await page.reload({ waitUntil: "networkidle" });
  checks.that((await page.getByLabel("Your draft").inputValue()) === kDraft, "the draft survives a reload");
  await page.getByRole("button", { name: "Forget this draft" }).click();
  await page.reload({ waitUntil: "networkidle" });
  checks.that((await page.getByLabel("Your draft").inputValue()) === "", "the draft is forgotten");
  checks.that((await page.evaluate(() => localStorage.length)) === 0, "nothing is left in the browser");
  await page.getByLabel("Your draft").fill("<img src=x onerror=alert(1)> \u{1F600} measure the length with a ruler");
  await page.waitForFunction(() => document.querySelectorAll("#under mark").length > 0);
  const words = await page.locator("#under mark").first().evaluate((mark) => mark.lastChild?.textContent);
  checks.that(/ruler|length/u.test(words), `marks stand at the right letters after an emoji: "${words}"`);
  checks.that((await page.locator("#under img").count()) === 0, "markup in a draft stays text");
  await page.context().close();
}

/** A teacher drops files, reads, opens a pupil, saves, edits. */
async function teacher() {
  const page = await open("class");
  await page.getByLabel("Practical").selectOption("spring-extension");
  const files = readdirSync(demo).map((name) => join(demo, name));
  await page.getByLabel("Choose files").setInputFiles([...files, photo]);
  const frame = page.frameLocator("#report");
  await frame.getByRole("heading", { level: 1 }).waitFor();
  checks.that((await frame.locator("table").count()) > 0, "the class report has its table");
  checks.that(await frame.locator("main").evaluate((main) => getComputedStyle(main).maxWidth !== "none"), "the report's style sheet is in force");
  await shows(page, /photo\.jpg/u, "what could not be read");
  checks.that((await page.locator("#pupil option").count()) === files.length, "every pupil can be opened");
  await page.getByLabel("Whose draft").selectOption({ index: 1 });
  await shows(page, /steps found/u, "one pupil");
  const csv = await saved(page, () => page.getByRole("button", { name: "Save a table (CSV)" }).click());
  checks.that(csv.name === "class.csv" && csv.text.includes("present") && csv.text.split("\n").length > files.length, "the CSV file");
  const html = await saved(page, () => page.getByRole("button", { name: "Save the report" }).click());
  checks.that(html.text.startsWith("<!doctype html>") && html.text.includes("default-src"), "the HTML file");
  const slips = await saved(page, () => page.getByRole("button", { name: "Save slips to print" }).click());
  checks.that(slips.text.includes("class=\"slip"), "the slips");
  await page.getByText("Change the question or a step’s wording").click();
  await page.getByLabel("Values in the question’s table, with units, one a line").fill("20 N\n40 N\n60 N");
  await shows(page, /verdicts? would change/u, "other values in the table");
  await page.getByLabel("Values in the question’s table, with units, one a line").fill("heavy");
  await page.locator("#edit-trouble p").first().waitFor();
  await page.getByRole("button", { name: "Undo all changes" }).click();
  await page.waitForFunction(() => document.getElementById("changes")?.childElementCount === 0);
  await page.getByLabel("Step", { exact: true }).selectOption("safety");
  await page.getByLabel("Further wordings that count as there, one a line").fill("clamp stand");
  await shows(page, /would change|make no difference/u, "another wording of a step");
  const rubric = await saved(page, () => page.getByRole("button", { name: "Save the rubric as a file" }).click());
  checks.that(JSON.parse(rubric.text).steps.some(({ id, present }) => id === "safety" && JSON.stringify(present).includes("clamp stand")), "the rubric as a file");
  await page.getByLabel("These are first drafts").check();
  await page.getByLabel("Choose files").setInputFiles(files.slice(0, 5));
  await shows(page, /5 drafts to compare with/u, "first drafts");
  await page.getByRole("button", { name: "Take all drafts out" }).click();
  checks.that(await page.locator("#work").isHidden(), "all drafts are out");
  await page.context().close();
}

/** A results table, pasted. */
async function table() {
  const page = await open("table");
  await page.evaluate(() => {
    const data = new DataTransfer();
    data.setData("text/plain", "Force / N\tExtension / cm\tExtension / cm\n1\t2.0\t2.1\n2\t4.0\t4.1\n3\t6.1\t6.0\n4\t8.0\t8.1\n5\t10.1\t10.0\n");
    document.querySelector("#grid input")?.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }));
  });
  await shows(page, /proportional/u, "the verdict");
  checks.that(await page.locator("img.graph").evaluate((image) => image.complete && image.naturalWidth > 0), "the graph is shown");
  checks.that((await page.locator("#out tbody tr").count()) === 5, "means of all rows");
  await page.locator("#grid input").nth(3).fill("abc");
  await page.waitForTimeout(700);
  checks.that((await page.locator("#trouble p, #out li").count()) > 0, "a word among the numbers is told");
  const graph = await saved(page, async () => {
    await page.getByRole("button", { name: "Show an example" }).click();
    await shows(page, "What the results show", "example");
    await page.getByRole("button", { name: "Save the graph" }).click();
  });
  checks.that(graph.text.startsWith("<svg") || graph.text.startsWith("<?xml"), "the graph as a file");
  await page.context().close();
}

/** By keyboard alone: from the first page to a checked draft. */
async function keyboard() {
  const page = await open("");
  const tabTo = async (test, most = 60) => {
    for (let i = 0; i < most; ++i) {
      await page.keyboard.press("Tab");
      if (await page.evaluate(test)) return true;
    }
    return false;
  };
  checks.that(await tabTo(() => document.activeElement?.getAttribute("href")?.includes("about=spring-extension") ?? false), "Tab reaches a practical");
  await page.keyboard.press("Enter");
  await page.waitForURL(/write/u);
  await page.locator("#draft").waitFor();
  checks.that(await tabTo(() => document.activeElement?.id === "draft"), "Tab reaches the draft");
  await page.keyboard.type("Use a ruler to measure the length.");
  checks.that(await tabTo(() => document.activeElement?.id === "check"), "Tab leaves the draft for the button");
  const ring = await page.evaluate(() => getComputedStyle(document.activeElement).outlineStyle);
  checks.that(ring !== "none", "the focus can be seen");
  await page.keyboard.press("Enter");
  await shows(page, "Your draft, checked", "keyboard");
  await page.context().close();
}

/** Every page at every width, in the dark, with letters twice as large. */
async function looks() {
  for (const screen of kScreens) {
    for (const path of ["", "write?about=spring-extension", "table", "class"]) {
      const where = `/${path}, ${screen.name}`;
      const page = await open(path, screen);
      const name = path.split("?")[0] || "index";
      if (name === "write") {
        await page.getByLabel("Your draft").fill(kDraft);
        await page.waitForFunction(() => document.querySelectorAll("#under mark").length > 0);
        await page.getByRole("button", { name: "Check my draft" }).click();
        await page.getByText("Your draft, checked").waitFor();
      } else if (name === "table") {
        await page.getByRole("button", { name: "Show an example" }).click();
        await page.getByText("What the results show").waitFor();
      } else if (name === "class") {
        await page.getByLabel("Practical").selectOption("spring-extension");
        await page.getByLabel("Choose files").setInputFiles(readdirSync(demo).map((file) => join(demo, file)));
        await page.frameLocator("#report").getByRole("heading", { level: 1 }).waitFor();
        await page.getByText("Change the question or a step’s wording").click();
      }
      await axe(page, checks, where);
      await fits(page, checks, where);
      await picture(page, name, screen);
      if (pictures && name === "class") {
        await page.locator("#report").scrollIntoViewIfNeeded();
        await page.waitForTimeout(300);
        await page.screenshot({ path: `${pictures}/page-class-report-${screen.name.replaceAll(" ", "-")}.png` });
      }
      await page.evaluate(() => { document.documentElement.style.fontSize = "200%"; });
      await page.waitForTimeout(100);
      await fits(page, checks, `${where}, letters twice as large`);
      if (screen.name === "phone") await picture(page, `${name}-large`, screen);
      await page.context().close();
    }
  }
}

try {
  for (const story of [pupil, teacher, table, keyboard, looks]) {
    try {
      await story();
    } catch (error) {
      checks.that(false, `${story.name}: ${error.message}`);
    }
  }
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
  server.removeAllListeners("exit");
  server.kill("SIGTERM");
}
checks.end();
