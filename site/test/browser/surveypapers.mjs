// The letter for the customer and the changes to agree: what stands on them, that
// their figures are those of the prompt, and that they print.
//
// Checked against things outside the project: the sheet sizes of ISO 216 (A4, 210
// by 297 mm) and ANSI Y14.1 (Letter, 216 by 279 mm), and WCAG 2.2 by axe-core.

import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import test from "node:test";
import { fileURLToPath } from "node:url";
import { patience } from "../pace.mjs";
import { axeSource, visit } from "./browser.mjs";
import { sheetsOf } from "./sheets.mjs";
import { openFile, step } from "./surveycar.mjs";

const root = resolve(dirname(fileURLToPath(import.meta.url)), "..", "..", "..");
const RATES = process.env.SITE_RATES ?? join(root, "engine", "rates", "data", "sample.json");
const sampleFile = (name) => join(root, "site", "pages", "samples", `${name}.json`);
const sample = (name) => JSON.parse(readFileSync(sampleFile(name), "utf8"));
/** The surveyed sample with few damaged parts, so that a sheet is short. */
const FEW = ["outer_sill.left", "inner_sill.right", "nose_valance.whole", "rear_rail.left"];
const few = () => {
  const car = sample("two-door-surveyed");
  return { ...car, survey: car.survey.filter((r) => FEW.includes(r.on)) };
};

async function paper(page, address, state = "whole") {
  await page.evaluate((a) => {
    location.hash = a;
  }, address);
  await page.waitForSelector(`.papers[data-state=${state}] .paper-sheet`, { timeout: patience(300_000) });
  return page.locator(".paper-sheet");
}

/** What the prompt says of the same car. */
function prompt(name) {
  const done = spawnSync(
    "go",
    ["run", "./engine/cmd/underpaint", "range", sampleFile(name), "--rates", RATES],
    { cwd: root, encoding: "utf8" },
  );
  assert.equal(done.status, 0, done.stderr);
  return done.stdout;
}

/** Prints, and looks at the sheets: their number, black ink, nothing wider than
 *  the box, no last sheet with hardly anything on it. */
async function printed(page, most) {
  await page.emulateMedia({ media: "print" });
  for (const format of ["A4", "Letter"]) {
    const { sheets, last } = sheetsOf(await page.pdf({ format }), 14);
    console.log(
      `# ${await page.locator(".paper-sheet").getAttribute("data-paper")} on ${format}: ${sheets} sheets, the last one written ${Math.round(last * 100)} % down`,
    );
    assert.ok(sheets >= 1 && sheets <= most, `${sheets} sheets`);
    assert.ok(last > 0.2 && last < 1.02, `the last sheet is written ${last} down`);
  }
  // 182 mm at 96 CSS pixels to the inch (CSS Values and Units 4, 6.2).
  await page.setViewportSize({ width: Math.floor((182 / 25.4) * 96), height: 900 });
  const wide = await page
    .locator(".paper-sheet, .paper-sheet *:visible")
    .evaluateAll((all) =>
      all
        .filter((n) => n.getBoundingClientRect().right > innerWidth + 1 && !n.closest(".visually-hidden"))
        .map((n) => n.className || n.tagName),
    );
  assert.deepEqual(wide, [], "wider than the box");
  const inks = await page
    .locator("main *:visible")
    .evaluateAll((all) => [...new Set(all.map((n) => getComputedStyle(n).color))]);
  assert.deepEqual(inks, ["rgb(0, 0, 0)"]);
  assert.equal(await page.locator("button:visible, input:visible, nav:visible, select:visible").count(), 0);
  const split = await page
    .locator(".paper-sheet tr, .paper-sheet .change")
    .evaluateAll((all) => [...new Set(all.map((n) => getComputedStyle(n).breakInside))]);
  assert.deepEqual(
    split.filter((s) => s !== "avoid"),
    [],
  );
  await page.emulateMedia({ media: "screen" });
  await page.setViewportSize({ width: 1280, height: 900 });
}

async function axe(page, where) {
  if (!(await page.evaluate(() => Boolean(globalThis.axe)))) await page.evaluate(axeSource);
  const found = await page.evaluate(() =>
    globalThis.axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      rules: { region: { enabled: false } },
    }),
  );
  assert.deepEqual(
    found.violations.map(
      (v) =>
        `${where}: ${v.id}: ${v.nodes
          .slice(0, 3)
          .map((n) => n.target)
          .join(" ; ")}`,
    ),
    [],
  );
  assert.ok(found.passes.length > 5, `${where}: axe checked something`);
}

test("the letter of a car that was told: figures of the prompt, in the order of weight, no line to sign", () =>
  visit({}, async (page, { origin }) => {
    await openFile(page, origin, sample("two-door"));
    await page.evaluate(() => {
      globalThis.heads = [];
      new MutationObserver(() => {
        if (document.querySelector(".paper-sheet .figure.is-rough"))
          globalThis.heads.push(document.querySelector(".paper-sheet .rough")?.textContent ?? "nothing");
      }).observe(document.body, { subtree: true, childList: true });
    });
    await step(page, "papers").click();
    const sheet = await paper(page, "papers");
    const heads = await page.evaluate(() => globalThis.heads);
    assert.deepEqual(
      [...new Set(heads)],
      ["Rough figure, still being worked out"],
      "a rough figure says so across the head",
    );
    assert.equal(await sheet.locator(".rough").count(), 0, "and no more once it has settled");
    const text = await sheet.innerText();
    const said = prompt("two-door");
    for (const line of await sheet.locator(".sentence li").allTextContents())
      assert.ok(said.includes(line), line);
    assert.equal(await sheet.locator(".sentence li").count(), 3);
    const price = await sheet.locator(".stage-price strong").textContent();
    assert.match(price, /^\$\d/);
    assert.ok(said.includes(`strip and survey, ${price}.`), price);
    assert.ok(said.includes(await sheet.locator(".figure .loud").last().textContent()), "the set-aside line");
    const code = /Rates check code (\S+ \S+)/.exec(await sheet.locator(".code").textContent())[1];
    assert.ok(said.includes(`rates check code ${code}`), code);
    assert.ok(said.includes(/([\d,]+) simulated cars · seed 1/.exec(text)[1]));
    const order = [
      "1 would cost less than",
      "not an estimate, not a quotation and not a ceiling",
      "What it rests on",
      "Not in the range",
      "The next stage",
      "What makes it wide",
      "What could make it worse",
      "The stages",
      "Your rights",
      "Rates check code",
    ];
    assert.deepEqual(
      order.map((h) => text.indexOf(h)).filter((at) => at < 0),
      [],
      "everything is there",
    );
    assert.deepEqual(
      order.map((h) => text.indexOf(h)),
      order.map((h) => text.indexOf(h)).toSorted((a, b) => a - b),
      "in this order",
    );
    assert.equal(await sheet.locator(".figure .dots circle").count(), 20);
    assert.doesNotMatch(text, /signature|sign here|signed by|_{4}/i);
    assert.equal(await sheet.locator(".blank").count(), 0);
    const sizes = await sheet
      .locator(".sentence li")
      .evaluateAll((all) => [...new Set(all.map((n) => getComputedStyle(n).fontSize))]);
    assert.equal(sizes.length, 1, "both ends in the same size");
    assert.equal(await sheet.locator(".stages tbody tr").count(), 5);
    const cautions = await sheet
      .locator("[data-caution]")
      .evaluateAll((all) => all.map((n) => n.dataset.caution));
    assert.deepEqual(cautions.toSorted(), [
      "asbestos",
      "belts",
      "lifting",
      "local",
      "not_seen",
      "numbers",
      "rights",
      "strip_first",
      "structure",
    ]);
    assert.match(text, /This shop is invented/);
    assert.match(text, /To open these answers again: http\S+#v1\./);
    assert.match(text, /Looked by the customer[\s\S]*Outer rocker, left/);
    await printed(page, 3);
    assert.equal(
      await page.locator(".paper-foot .scan-code").count(),
      1,
      "a code that leads back to these answers",
    );
  }));

test("the letter of a surveyed car: its figures, a row for each stage on one axis, and the days", () =>
  visit({}, async (page, { origin }) => {
    await openFile(page, origin, sample("two-door-surveyed"));
    const sheet = await paper(page, "papers");
    const said = prompt("two-door-surveyed");
    for (const line of await sheet.locator(".sentence li").allTextContents())
      assert.ok(said.includes(line), line);
    const text = await sheet.innerText();
    assert.ok(
      said.includes(/one stage with a price of its own; at these rates that is (\$[\d,]+)\./.exec(text)[1]),
    );
    assert.equal(await sheet.locator(".stage-row .dots").count(), 3, "told, walk-round, survey");
    assert.equal(new Set(await sheet.locator(".stage-row .ticks").allTextContents()).size, 1, "one axis");
    for (const must of [
      /begun on June 22, 2026/,
      /Survey 91 of 91/,
      /The shop went through them on June 4, 2026/,
      /11 closed boxes/,
      /a written estimate made from the survey comes first/,
      /a link does not fit here/,
    ])
      assert.match(text, must);
    assert.doesNotMatch(text, /signature|sign here|Nobody has seen/i);
    await printed(page, 4);
  }));

test("changes to agree: a block for each part, every allowed way, boxes, and what the totals are", () =>
  visit({}, async (page, { origin }) => {
    await openFile(page, origin, few());
    const sheet = await paper(page, "papers/changes");
    assert.deepEqual(
      (await sheet.locator(".change").evaluateAll((all) => all.map((n) => n.dataset.change))).toSorted(),
      FEW.toSorted(),
    );
    assert.match(await sheet.innerText(), /Nothing below is worked on until this sheet is back/);
    const rail = sheet.locator('[data-change="rear_rail.left"]');
    assert.equal(await rail.locator('[data-way="leave"]').count(), 0);
    assert.match(
      await rail.innerText(),
      /Structural metal that is heavily pitted or worse cannot stay as it is/,
    );
    assert.match(await rail.innerText(), /Seat belts, steering or suspension are fastened here/);
    assert.match(
      await sheet.locator('[data-change="nose_valance.whole"]').innerText(),
      /Found: Hole bridged with filler/,
    );
    for (const block of await sheet.locator(".change").all()) {
      const decide = await block.locator(".decide").innerText();
      for (const must of ["☐ yes", "☐ no", "☐ talk first", "How told", "When", "By whom", "Signature"])
        assert.ok(decide.includes(must), must);
      for (const way of await block.locator("tbody tr").allInnerTexts()) {
        assert.match(way, /^☐ /);
        assert.match(way, /about \$\d/);
        assert.match(way, /compared with what is usually done|No difference/, "the effect on the total");
      }
    }
    assert.match(await sheet.innerText(), /Small changes agreed beforehand/);
    const before = await sheet.locator('[data-total="Range before"]').innerText();
    await printed(page, 3);

    // The shop ticks one off, chooses a zone, and gives the sheet its number.
    await page.locator('[data-key="tick-outer_sill.left"]').click();
    await page.waitForFunction(() => document.querySelectorAll(".change").length === 3);
    assert.equal(
      await page.evaluate(() => document.activeElement.dataset.key),
      "tick-outer_sill.left",
      "the focus stays",
    );
    await page.getByLabel("Parts of which zone").selectOption("front");
    assert.deepEqual(
      await page.locator(".pick-list button").evaluateAll((all) => all.map((n) => n.dataset.key)),
      ["tick-nose_valance.whole"],
    );
    await page.getByLabel("Number of this sheet").fill("7");
    assert.equal(await sheet.locator(".title").textContent(), "Changes to agree, sheet 7");
    assert.equal(
      await sheet.locator(".change").count(),
      3,
      "a zone filters what can be ticked, not the sheet",
    );

    // A way that is chosen elsewhere is said here, with the total that it leads to.
    await step(page, "todo").click();
    await page.locator('[data-card="rear_rail.left"] [data-way="full"]').click();
    await page.waitForFunction(
      () =>
        document
          .querySelector('[data-card="rear_rail.left"] [data-way="full"]')
          .getAttribute("aria-pressed") === "true",
    );
    await paper(page, "papers/changes");
    assert.equal(
      await sheet.locator('[data-total="Range before"]').innerText(),
      before,
      "before anything was decided",
    );
    const after = await sheet.locator('[data-total="Range with what is decided so far"]').innerText();
    assert.match(after, /\$[\d,]+ to \$[\d,]+ \(8 cars in 10\)/);
    assert.match(await sheet.locator('[data-change="rear_rail.left"]').innerText(), /Chosen by the customer/);
  }));

test("entries that cannot be: no letter and no sheet, and the sentence that mends it", () =>
  visit({}, async (page, { origin }) => {
    await openFile(page, origin, { ...few(), stages: [{ stage: "walk_round", on: "2026-06-04" }] });
    await page.evaluate(() => {
      location.hash = "papers";
    });
    await page.waitForSelector(".papers[data-state=refused]", { timeout: patience(240_000) });
    assert.match(await page.locator(".paper-sheet").innerText(), /No letter is made until this is put right/);
    assert.equal(await page.locator('[data-key="print"]:visible').count(), 0);
    assert.doesNotMatch(await page.locator(".paper-sheet").innerText(), /\$\d/);
    await page.evaluate(() => {
      location.hash = "papers/changes";
    });
    await page.waitForFunction(() =>
      /No sheet is made/.test(document.querySelector(".paper-sheet").textContent),
    );
  }));

test("the papers at 320 pixels and wide, light and dark: readable by a program, nothing sideways, by the keyboard", () =>
  visit({ viewport: { width: 320, height: 640 } }, async (page, { origin }) => {
    await openFile(page, origin, few());
    for (const address of ["papers", "papers/changes", "paper"]) {
      if (address === "paper") await page.locator('.paper-links a[href="#paper"]').press("Enter");
      else await paper(page, address);
      await page.waitForSelector(`.paper-links a[aria-current][href="#${address}"]`);
      for (const width of [1280, 320]) {
        await page.setViewportSize({ width, height: 640 });
        for (const colorScheme of ["light", "dark"]) {
          await page.emulateMedia({ colorScheme });
          await axe(page, `${address} ${width} ${colorScheme}`);
        }
        const over = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        assert.ok(over <= 0, `${address}: ${over} pixels too wide at ${width}`);
      }
      const small = await page
        .locator("main button:visible, main select:visible, main input:visible, main nav a:visible")
        .evaluateAll((all) =>
          all
            .map((n) => [n.textContent || n.tagName, n.getBoundingClientRect()])
            .filter(([, r]) => r.height < 48 || r.width < 44)
            .map(([t]) => t),
        );
      assert.deepEqual(small, [], `${address}: targets`);
      assert.equal(await step(page, "papers").getAttribute("aria-current"), "page");
    }
    await page.locator('.paper-links a[href="#papers/changes"]').press("Enter");
    await page.waitForSelector(".papers[data-state=whole] .change", { timeout: patience(240_000) });
    await page.locator('[data-key="none"]').press("Enter");
    await page.waitForFunction(() => document.querySelectorAll(".change").length === 0);
    assert.equal(await page.evaluate(() => document.activeElement.dataset.key), "none");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Space");
    await page.waitForFunction(() => document.querySelectorAll(".change").length === 1);
    await page.evaluate(() => {
      globalThis.print = () => {
        globalThis.printedOnce = true;
      };
    });
    await page.waitForSelector(".papers[data-state=whole]");
    await page.locator('[data-key="print"]').press("Enter");
    assert.equal(await page.evaluate(() => globalThis.printedOnce), true);
  }));
