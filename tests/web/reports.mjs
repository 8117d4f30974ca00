// The HTML reports, each one file, in Chromium: no script, no request, nothing that axe-core finds, at every width and in print.
// Usage: node reports.mjs FOLDER-WITH-PAGES [FOLDER-FOR-PICTURES]
import { readdirSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { Checks, axe, fits, kScreens, startBrowser, watchedPage } from "./browser.mjs";

const [folder, pictures] = process.argv.slice(2);
const checks = new Checks();
const browser = await startBrowser();
const files = readdirSync(folder).filter((name) => name.endsWith(".html"));
checks.that(files.length >= 6, `there are pages to look at (${files.length})`);
for (const name of files) {
  const address = pathToFileURL(resolve(folder, name)).href;
  for (const screen of kScreens) {
    const page = await watchedPage(browser, screen, checks, address);
    await page.goto(address);
    const where = `${name}, ${screen.name}`;
    const { live, policy } = await page.evaluate(() => ({
      live: [...document.querySelectorAll("*")].filter((e) => ["SCRIPT", "LINK", "IMG", "IFRAME", "OBJECT", "FORM", "BASE"].includes(e.tagName) || [...e.attributes].some((a) => a.name.startsWith("on") || a.name === "style")).length,
      policy: document.querySelector("meta[http-equiv=Content-Security-Policy]")?.getAttribute("content") ?? "",
    }));
    checks.that(live === 0, `${where}: ${live} elements that could do something`);
    checks.that(policy.startsWith("default-src 'none'; style-src 'sha256-") && !policy.includes("unsafe"), `${where}: the policy is ${policy}`);
    await axe(page, checks, where);
    await fits(page, checks, where);
    checks.that((await page.evaluate(() => getComputedStyle(document.querySelector("main")).maxWidth)) !== "none", `${where}: the style sheet is in force`);
    await page.keyboard.press("Tab");
    checks.that((await page.evaluate(() => document.activeElement?.textContent)) === "Skip to the content", `${where}: the keyboard begins with the skip link`);
    if (pictures) await page.screenshot({ path: `${pictures}/${name}-${screen.name.replaceAll(" ", "-")}.png`, fullPage: true });
    await page.context().close();
  }
  const page = await watchedPage(browser, kScreens[2], checks, address);
  await page.goto(address);
  const slips = await page.locator("article.slip:not(.half)").count();
  const pdf = await page.pdf({ preferCSSPageSize: true });
  const sheets = (pdf.toString("latin1").match(/\/Type\s*\/Page\b/gu) ?? []).length;
  checks.that(sheets >= Math.max(1, slips), `${name}: ${sheets} sheets for ${slips} slips`);
  await page.context().close();
}
await browser.close();
checks.end();
