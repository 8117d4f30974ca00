// What the web tests share: Debian's Chromium, pages at several widths, axe-core, and a count of faults.
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { chromium } from "playwright-core";

const kAxe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

export const kScreens = [
  { name: "small phone", width: 320, height: 640, colorScheme: "light" },
  { name: "phone", width: 390, height: 844, colorScheme: "light" },
  { name: "desktop", width: 1280, height: 900, colorScheme: "light" },
  { name: "dark", width: 1280, height: 900, colorScheme: "dark" },
];

export function startBrowser() {
  const executablePath = ["/usr/bin/chromium", "/usr/bin/chromium-browser"].find((path) => existsSync(path));
  if (!executablePath) throw new Error("Chromium is not installed: run .ci/setup");
  return chromium.launch({ executablePath, args: ["--no-sandbox", "--disable-dev-shm-usage"] });
}

/** Counts checks, and keeps what failed. */
export class Checks {
  constructor() {
    this.done = 0;
    this.failed = [];
  }

  /** @param {boolean} good @param {string} what */
  that(good, what) {
    ++this.done;
    if (good) return;
    this.failed.push(what);
    console.log(`FAILED: ${what}`);
  }

  end() {
    console.log(`${this.done - this.failed.length} checks passed, ${this.failed.length} failed`);
    process.exit(this.failed.length === 0 && this.done > 0 ? 0 : 1);
  }
}

/** A page that tells of every message and request that it should not make. */
export async function watchedPage(browser, screen, checks, allowed) {
  // A refusal that the page shows to its user is told by the browser too.
  const refused = /the server responded with a status of 422/u;
  const context = await browser.newContext({ viewport: { width: screen.width, height: screen.height }, colorScheme: screen.colorScheme, bypassCSP: false });
  const page = await context.newPage();
  page.on("console", (message) => {
    if ((message.type() === "error" || message.type() === "warning") && !refused.test(message.text())) checks.that(false, `${page.url()} (${screen.name}) says: ${message.text()}`);
  });
  page.on("pageerror", (error) => checks.that(false, `${page.url()} (${screen.name}) throws: ${error.message}`));
  page.on("request", (request) => {
    if (!request.url().startsWith(allowed) && !request.url().startsWith("blob:") && !request.url().startsWith("data:")) checks.that(false, `${page.url()} asks for ${request.url()}`);
  });
  return page;
}

/** axe-core over the page as it stands; run beside the page's policy, which forbids scripts. */
export async function axe(page, checks, where) {
  const session = await page.context().newCDPSession(page);
  const { frameTree } = await session.send("Page.getFrameTree");
  const { executionContextId } = await session.send("Page.createIsolatedWorld", { frameId: frameTree.frame.id, worldName: "axe" });
  await session.send("Runtime.evaluate", { expression: kAxe, contextId: executionContextId });
  const { result, exceptionDetails } = await session.send("Runtime.evaluate", {
    expression: "axe.run().then((r) => JSON.stringify({ passes: r.passes.length, violations: r.violations.map((v) => v.id + ': ' + v.help + ' ' + v.nodes.slice(0, 3).map((n) => n.html.slice(0, 160)).join(' | ')) }))",
    contextId: executionContextId,
    awaitPromise: true,
  });
  if (exceptionDetails) throw new Error(`axe: ${exceptionDetails.text}`);
  const { passes, violations } = JSON.parse(result.value);
  checks.that(passes > 10, `${where}: axe-core looked at something (${passes} rules)`);
  checks.that(violations.length === 0, `${where}: axe-core finds ${violations.join("; ")}`);
}

/** Nothing sticks out sideways. */
export async function fits(page, checks, where) {
  const { content, window: room } = await page.evaluate(() => ({ content: document.documentElement.scrollWidth, window: document.documentElement.clientWidth }));
  checks.that(content <= room, `${where}: ${content} pixels wide in ${room}`);
}
