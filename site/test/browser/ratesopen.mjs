// What the tests of the page "Rates" share.

import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { patience } from "../pace.mjs";

export const named = (page, name) => page.getByRole("button", { name, exact: true });
export const field = (page, path) => page.locator(`[data-path="${path}"]`);
export const effectSettled = (page) =>
  page.waitForSelector(".effect[data-state=settled]", { timeout: patience(240_000) });
export const focusedPath = (page) =>
  page.evaluate(() => document.activeElement.closest("[data-path]")?.dataset.path);

export async function openRates(page, origin, section = "") {
  await page.goto(`${origin}/rates/${section && `#${section}`}`);
  await page.waitForSelector("#look-at h2");
  await page.waitForSelector("body[data-checked]");
}

/** Does something to the draft and waits until the engine has checked it. */
export async function changed(page, act) {
  const before = await page.evaluate(() => document.body.dataset.checked);
  await act();
  await page.waitForFunction((b) => document.body.dataset.checked !== b, before);
}

/** Types into a field of a path and leaves it; waits for the check. */
export function type(page, path, text, n = 0) {
  return changed(page, async () => {
    const box = field(page, path).locator("input, textarea").nth(n);
    await box.fill(text);
    await box.press("Tab");
  });
}

export function temporary(name, text) {
  const path = join(mkdtempSync(join(tmpdir(), "rates-")), name);
  writeFileSync(path, text);
  return path;
}

export async function download(page, act) {
  const [one] = await Promise.all([page.waitForEvent("download"), act()]);
  return { name: one.suggestedFilename(), text: readFileSync(await one.path(), "utf8") };
}

/** The draft as it would be saved, faults and all. By the keyboard: what the page works out
 *  meanwhile may move the button under the mouse. */
export async function draftOf(page) {
  return JSON.parse((await download(page, () => named(page, "Save a file").press("Enter"))).text);
}
