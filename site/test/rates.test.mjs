// The shop's page "Rates" in a real browser: what is wrong at its field, what it
// does to sample cars, prices from a spreadsheet, putting it on the website, two
// tabs, broken files.

import test, { after } from "node:test";
import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { axeSource, closeAll, visit } from "./browser.mjs";

after(closeAll);

const named = (page, name) => page.getByRole("button", { name, exact: true });
const field = (page, path) => page.locator(`[data-path="${path}"]`);
const settled = (page) => page.waitForSelector(".effect[data-state=settled]", { timeout: 60000 });

async function openRates(page, origin, section = "") {
  await page.goto(`${origin}/rates/${section && `#${section}`}`);
  await page.waitForSelector("#look-at h2");
  await page.waitForSelector("body[data-checked]");
}

/** Types into the field of a path and leaves it; waits for the check. */
async function type(page, path, text) {
  const before = await page.evaluate(() => document.body.dataset.checked);
  const box = field(page, path).locator("input, textarea").first();
  await box.fill(text);
  await box.press("Tab");
  await page.waitForFunction((b) => document.body.dataset.checked !== b, before);
}

function temporary(name, text) {
  const path = join(mkdtempSync(join(tmpdir(), "rates-")), name);
  writeFileSync(path, text);
  return path;
}

async function download(page, act) {
  const [one] = await Promise.all([page.waitForEvent("download"), act()]);
  return { name: one.suggestedFilename(), text: readFileSync(await one.path(), "utf8") };
}

test("a fault stands at its field and at the top, what was typed stays, and a way leads there", () => visit({}, async (page, { origin }) => {
  await openRates(page, origin);
  await type(page, "labour.metal.rate", "8x");
  await type(page, "labour.body.pace", "12");
  assert.match(await field(page, "labour.metal.rate").locator(".error").textContent(), /Expected .*8x/);
  assert.equal(await field(page, "labour.metal.rate").locator("input").inputValue(), "8x");
  assert.equal(await field(page, "labour.metal.rate").locator("input").getAttribute("aria-invalid"), "true");
  assert.match(await page.locator("#draft-line").textContent(), /cannot be used yet/);
  await page.evaluate(() => { location.hash = "tax"; });
  await page.locator("#look-at a").first().click();
  assert.equal(await page.evaluate(() => document.activeElement.closest("[data-path]").dataset.path), "labour.metal.rate");
  await type(page, "labour.metal.rate", "85.00");
  assert.match(await page.locator("#look-at").textContent(), /pace: expected a number from 0.3 to 3/i);
  await named(page, "Undo the last change").click();
  assert.equal(await field(page, "labour.metal.rate").locator("input").inputValue(), "8x");
}));

test("a dearer hour moves three sample cars, and the lines that it moves are named", () => visit({}, async (page, { origin }) => {
  await openRates(page, origin);
  await settled(page);
  const before = await page.locator(".effect-car p").first().textContent();
  assert.match(before, /as on the site/);
  await type(page, "labour.metal.rate", "105");
  await page.waitForFunction(() => /Metalwork: \$/.test(document.querySelector(".effect-line").textContent), null, { timeout: 60000 });
  await settled(page);
  assert.equal(await page.locator(".effect-car").count(), 3);
  assert.match(await page.locator(".effect-car p").first().textContent(), /on the site, \$.* here/);
  assert.match(await page.locator("#draft-line").textContent(), /not on the site yet/);
}));

test("figures of the sample are marked once the shop is a real one, and lose the mark when changed", () => visit({}, async (page, { origin }) => {
  await openRates(page, origin);
  assert.equal(await page.locator(".sample-mark:visible").count(), 0);
  const before = await page.evaluate(() => document.body.dataset.checked);
  await page.getByLabel("This shop is invented").uncheck();
  await page.waitForFunction((b) => document.body.dataset.checked !== b, before);
  const marks = await page.locator(".sample-mark:visible").count();
  assert.ok(marks >= 5, `${marks} marks`);
  assert.match(await page.locator("#look-at").textContent(), /still exactly those of the invented sample/);
  await type(page, "labour.paint.rate", "91.50");
  assert.equal(await page.locator(".sample-mark:visible").count(), marks - 1);
}));

test("prices from a spreadsheet: good rows apart from refused ones, and the decimal mark asked for", () => visit({}, async (page, { origin }) => {
  await openRates(page, origin, "parts");
  const entries = await page.locator("details.entry").count();
  await page.getByLabel("Paste the table").fill("part;way;low;likely;high\nhood_skin;full;1.234;1.500;2.000\nengine;full;1;2;3\n");
  await named(page, "Look at it").click();
  await page.locator(".found .band").waitFor();
  await page.getByRole("button", { name: /point marks decimals/ }).click();
  await page.waitForFunction(() => /1 good row, 1 refused/.test(document.querySelector(".found").textContent));
  assert.match(await page.locator(".refusals").textContent(), /row 3.*engine/);
  await named(page, "Take the 1 good row").click();
  assert.equal(await page.locator("details.entry").count(), entries + 1);
  const file = await download(page, () => named(page, "Cells cut by semicolons, decimals with a comma").click());
  assert.match(file.text, /hood;full;"?1,2340?"?;/);
}));

test("put on the website: every warning looked at, then one file with its check code", () => visit({}, async (page, { origin }) => {
  await openRates(page, origin, "tax");
  const before = await page.evaluate(() => document.body.dataset.checked);
  await field(page, "tax.published").locator("select").selectOption("with_tax");
  await page.waitForFunction((b) => document.body.dataset.checked !== b, before);
  await page.getByText("How to put it there").click();
  assert.equal(await page.locator('[data-key="save-rates"]').count(), 0, "a warning stands, so no file is offered");
  await page.locator(".put-steps input[type=checkbox]").first().check();
  const file = await download(page, () => page.locator('[data-key="save-rates"]').click());
  assert.equal(file.name, "rates.json");
  assert.equal(JSON.parse(file.text).tax.published, "with_tax");
  const code = await page.locator(".put-steps .code").textContent();
  assert.match(code, /^[0-9a-f]{5} [0-9a-f]{5}$/);
  assert.match(await page.locator("#draft-line").textContent(), new RegExp(code));
  assert.doesNotMatch(await page.locator(".publish").textContent(), /succe|is now on|are now on/i);
  // The file that was saved is taken again, with the same code.
  await page.reload();
  await page.waitForSelector("body[data-checked]");
  await page.locator("#rates-file").setInputFiles(temporary("rates.json", file.text));
  await page.waitForFunction((c) => document.getElementById("draft-line").textContent.includes(c), code);
}));

test("a broken file is refused with its reason, and the draft stays", () => visit({}, async (page, { origin }) => {
  await openRates(page, origin);
  await type(page, "labour.fit.rate", "77");
  await page.locator("#rates-file").setInputFiles(temporary("rates.json", '{"format":"underpaint rates 2"}'));
  await page.locator('[data-band="arrival"]').waitFor();
  assert.match(await page.locator('[data-band="arrival"]').textContent(), /draft stays as it was.*another version/s);
  await page.locator("#rates-file").setInputFiles(temporary("rates.json", '{"format":"underpaint rates 1","shop":{"na'));
  await page.waitForFunction(() => /end of the file|closing/.test(document.querySelector('[data-band="arrival"]').textContent));
  assert.equal(await field(page, "labour.fit.rate").locator("input").inputValue(), "77");
}));

test("broken rates on the site: said, with the reason, and the sample to begin from", () => visit({ allow: /rates.json|404/ }, async (page, { origin }) => {
  await page.route("**/rates.json", (route) => route.fulfill({ contentType: "application/json", body: '{"format":"underpaint rates 1","labour":' }));
  await page.goto(`${origin}/rates/`);
  await page.locator('[data-band="site"]').waitFor();
  assert.match(await page.locator('[data-band="site"]').textContent(), /could not be read, so customers see no figure/);
  await page.waitForSelector("#look-at h2");
}));

test("two tabs on one draft: the second says which is newer, and nothing is merged", () => visit({}, async (page, { origin, context }) => {
  await openRates(page, origin);
  assert.equal(await page.evaluate(() => localStorage.length), 0, "nothing is kept before it is asked for");
  await named(page, "Keep on this device").click();
  await type(page, "labour.metal.rate", "90");
  const other = await context.newPage();
  await openRates(other, origin);
  await other.locator('[data-band="found"]').waitFor();
  await named(other, "Go on with it").click();
  await other.waitForFunction(() => document.querySelector('[data-path="labour.metal.rate"] input').value === "90");
  await type(other, "labour.metal.rate", "95");
  await page.locator('[data-band="tabs"]').waitFor();
  assert.match(await page.locator('[data-band="tabs"]').textContent(), /Another tab has changed the draft/);
  assert.equal(await field(page, "labour.metal.rate").locator("input").inputValue(), "90");
  await named(page, "Go on with the newer one").click();
  await page.waitForFunction(() => document.querySelector('[data-path="labour.metal.rate"] input').value === "95");
  await named(page, "Erase from this device").click();
  assert.equal(await page.evaluate(() => localStorage.length), 0);
}));

test("every section at 320 px without sideways scroll, and no fault that a program can find", () => visit({ viewport: { width: 320, height: 700 } }, async (page, { origin }) => {
  await openRates(page, origin);
  await page.evaluate(axeSource);
  for (const scheme of ["light", "dark"]) {
    await page.emulateMedia({ colorScheme: scheme });
    for (const id of await page.locator("[data-section]").evaluateAll((all) => all.map((a) => a.dataset.section))) {
      await page.evaluate((x) => { location.hash = x; }, id);
      await page.waitForFunction((x) => document.querySelector(`[data-section="${x}"]`).hasAttribute("aria-current"), id);
      await page.locator("details").evaluateAll((all) => all.forEach((d) => { d.open = true; }));
      await page.waitForTimeout(50);
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth) <= 320, `${id} is too wide`);
      const found = await page.evaluate(() => axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] }));
      assert.deepEqual(found.violations.map((v) => `${v.id}: ${v.nodes[0].html.slice(0, 160)}`), [], `${id}, ${scheme}`);
    }
  }
}));
