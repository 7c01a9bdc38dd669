// The talk of "Why so wide" once through, as an estimator goes through it, in one
// visit, since the engine takes some of a minute to take a range apart. Every page
// is looked at for what it says, and then at 320 pixels, light and dark.

import assert from "node:assert/strict";
import test from "node:test";
import { axeSource, visit } from "./browser.mjs";
import { goTo, line, nextCar, openWhy, PAGES, ready, suppose } from "./whyopen.mjs";

const RULES = {
  type: "tag",
  values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
};
/** Rules that hang on colour or on width: all that can differ in the second look. */
const COLOURS = { type: "rule", values: ["color-contrast", "link-in-text-block", "target-size"] };

async function axe(page, where, runOnly) {
  const found = await page.evaluate(
    (only) =>
      globalThis.axe.run(document, {
        runOnly: only,
        ...(only.type === "tag" ? { rules: { region: { enabled: false } } } : {}),
      }),
    runOnly,
  );
  assert.deepEqual(
    found.violations.map(
      (v) =>
        `${where}: ${v.id}: ${v.nodes
          .slice(0, 3)
          .map((n) => n.html.slice(0, 120))
          .join(" ; ")}`,
    ),
    [],
  );
  assert.ok(found.passes.length > 0, `${where}: axe checked something`);
}

/** How a page looks: no fault in light or dark, narrow or wide, large targets. */
async function look(page, name) {
  for (const [colorScheme, width, rules] of [
    ["light", 820, RULES],
    ["dark", 320, COLOURS],
  ]) {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width, height: 1180 });
    await axe(page, `${name}, ${colorScheme}`, rules);
  }
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  assert.ok(over <= 0, `${name}: ${over} pixels too wide at 320`);
  const small = await page
    .locator("#screen button:visible, #screen select:visible, #screen summary:visible, #screen a:visible")
    .evaluateAll((all) =>
      all.filter((n) => n.getBoundingClientRect().height < 64).map((n) => n.textContent.slice(0, 40)),
    );
  assert.deepEqual(small, [], `${name}: lower than 64 pixels`);
  const ids = await page.evaluate(() => [...document.querySelectorAll("[id]")].map((n) => n.id));
  assert.deepEqual(
    ids.filter((id, i) => ids.indexOf(id) !== i),
    [],
    `${name}: an id twice`,
  );
  await page.setViewportSize({ width: 820, height: 1180 });
}

const tens = (text) =>
  text.startsWith("fewer") ? 0 : text.startsWith("more") ? 9.5 : Number.parseInt(text, 10);
const money = (text) => Number(text.replace(/\D/g, ""));

const CHECKS = {
  async twenty(page) {
    assert.equal(
      await page.evaluate(() => document.activeElement.dataset.key),
      "next-car",
      "the first focus",
    );
    const seen = [];
    for (let n = 1; n <= 3; n++) {
      await nextCar(page);
      assert.equal(await page.locator(".twenty .dot").count(), n, "one dot more");
      seen.push(
        `${await page.locator(".total").textContent()} ${await page.locator(".found").textContent()}`,
      );
      const hatched = await page.locator('.twenty-picture .hatch[fill^="url"]').count();
      const places = Number(/^(\d+) parts? /.exec(await page.locator(".found").textContent())?.[1] ?? 0);
      assert.equal(hatched > 0, places > 0, "the drawing shows what the words say");
    }
    assert.equal(new Set(seen.map((t) => t.replace(/^Car \d+: /, ""))).size, 3, seen.join(" | "));
    await page.locator("[data-key=all]").click();
    assert.equal(await page.locator(".twenty .dot").count(), 20);
    const [, low, high] = /cheapest of the twenty: (\S+)\. The dearest: (\S+)\./.exec(
      await page.locator(".total").textContent(),
    );
    assert.ok(money(low) < money(high));
    assert.equal(
      await page.evaluate(() => document.activeElement.dataset.key),
      "next-car",
      "the focus is not lost",
    );
  },
  async odds(page) {
    assert.equal(await page.locator(".two-ways .dots").count(), 2);
    const span = (await page.locator(".two-ways figcaption").allTextContents())
      .map((t) => t.match(/[\d,]{4,}/g).map(money))
      .map(([a, b]) => b - a);
    assert.ok(span[0] < span[1], `its own luck is narrower: ${span}`);
    assert.match(await page.locator(".two-ways .tells").textContent(), /as wide as it really is/);
  },
  async suppose(page) {
    for (const [condition, sign] of [
      ["rusted_through", 1],
      ["sound", -1],
    ]) {
      await suppose(page, "outer_sill.left", condition);
      const rows = await page.locator(".neighbours tbody td").allTextContents();
      assert.ok(rows.length >= 2, "somebody keeps it company");
      for (let k = 0; k < rows.length; k += 2)
        assert.ok(
          sign * (tens(rows[k + 1]) - tens(rows[k])) > 0,
          `${condition}: ${rows[k]} to ${rows[k + 1]}`,
        );
      const [now, then] = await page.locator(".suppose-result figcaption").allTextContents();
      assert.notEqual(now, then, "the row moves");
      const moved = await page.locator('.suppose-picture .hatch[fill*="-dots"]').count();
      assert.ok(moved > 0, "the neighbours are marked on the drawing");
    }
    assert.equal(await page.locator('[data-suppose=sound][aria-pressed="true"]').count(), 1);
    await page.locator(".suppose-picture [data-item='hood.whole'] .skin").click();
    assert.equal(await page.locator(".suppose select").inputValue(), "hood.whole", "picked on the drawing");
    assert.equal(
      await page.locator(".suppose .dots").count(),
      0,
      "what was supposed of another part is gone",
    );
  },
  async stages(page) {
    // Found and measured in one go: the page may be drawn again in between.
    const bars = await page.evaluate(() =>
      [...document.querySelectorAll("#screen .bars li")].map((li) => [
        li.querySelector("p").textContent,
        li.querySelector(".bar-ink").getBoundingClientRect().width,
      ]),
    );
    const texts = bars.map(([text]) => text);
    assert.deepEqual(
      texts.map((t) => t.split(":")[0]),
      ["Now", "Walk-around", "Strip and survey", "Opening up"],
    );
    const widths = texts.map((t) => money(t));
    assert.ok(widths[2] < widths[1] && widths[1] < widths[0], `${widths}`);
    for (const [k, [text, drawn]] of bars.entries()) {
      const expected = widths[k] / widths[0];
      assert.ok(
        Math.abs(drawn / bars[0][1] - expected) < 0.02,
        `a bar as long as its words say: ${text}, ${drawn} pixels`,
      );
    }
  },
  async stays(page) {
    assert.deepEqual(await page.locator("#screen ul.stays strong").allTextContents(), [
      "Closed boxes. ",
      "How hard the work goes. ",
      "Prices. ",
    ]);
  },
  async wide(page) {
    const shares = (await page.locator(".widest .share").allTextContents()).map((t) =>
      Number.parseInt(t, 10),
    );
    const sum = shares.reduce((a, b) => a + b, 0);
    assert.ok(shares.length >= 3 && Math.abs(sum - 100) <= shares.length / 2, `${shares} add to ${sum}`);
    assert.match((await page.locator(".widest .bars p").allTextContents()).join(" "), /Everything else/);
    assert.deepEqual(
      shares.slice(0, -1),
      shares.slice(0, -1).toSorted((a, b) => b - a),
      "the largest first",
    );
    await page.locator(".worse-fold summary").click();
    assert.equal(await page.locator("#screen .worse > li").count(), 5);
    for (const text of await page.locator("#screen .worse > li").allTextContents())
      for (const must of [/out of 10|out of 20/, /\$\d/, /survey|opened|metal/]) assert.match(text, must);
  },
  async end(page) {
    assert.equal(await page.locator("h1").textContent(), "So that is why you strip first");
    assert.match(
      await page.locator("#screen .next-stage").innerText(),
      /Strip and survey: \$[\s\S]*If you stop there[\s\S]*fixed/,
    );
    for (const id of ["rights", "strip_first", "numbers"])
      assert.equal(await page.locator(`#screen [data-caution=${id}]`).count(), 1);
    assert.match(await page.locator(".print-note").textContent(), /^One or two sheets/);
    assert.equal(await page.locator("[data-key=this-car]").getAttribute("href"), "../survey/");
  },
};

async function paper(page) {
  for (const format of ["A4", "Letter"]) {
    const pages = (await page.pdf({ format })).toString("latin1").match(/\/Type\s*\/Page[^s]/g).length;
    assert.ok(pages <= 2, `${format}: ${pages} sheets`);
  }
  await page.emulateMedia({ media: "print" });
  const text = await page.locator("main").innerText();
  for (const must of [
    "Quillback Lane Bodyworks",
    "Rates of June 3, 2026",
    "not an estimate, not a quotation and not a ceiling",
    "this car is invented",
    "Same odds, two ways",
    "What each stage takes off",
    "What stays",
    "What makes it wide",
    "Everything else",
    "What could make it worse",
    "Rates check code",
    String(new Date().getFullYear()),
  ])
    assert.ok(text.includes(must), `on paper: ${must}`);
  for (const not of [/Twenty cars/, /Suppose/, /[Ss]ignature/, /Working out/, /Not worked out yet/])
    assert.doesNotMatch(text, not);
  assert.equal(await page.locator("button:visible, select:visible, nav:visible, a:visible").count(), 0);
  const inks = await page
    .locator("main *:visible")
    .evaluateAll((all) => [...new Set(all.map((n) => getComputedStyle(n).color))]);
  assert.deepEqual(inks, ["rgb(0, 0, 0)"]);
  await page.emulateMedia({ media: "screen" });
}

test("why so wide: the whole talk about the sample car, every page as it should be, and on paper", () =>
  visit({ viewport: { width: 820, height: 1180 } }, async (page, { origin }) => {
    await openWhy(page, origin);
    await page.evaluate(axeSource);
    assert.match(await line(page), /^The sample car, invented: Two-door/);
    for (const id of PAGES) {
      if (id !== "twenty") await goTo(page, id);
      await ready(page, id);
      await CHECKS[id](page);
      await look(page, id);
    }
    await paper(page);
  }));

test("from This car the talk is about the car in hand, kept or not", () =>
  visit({}, async (page, { origin }) => {
    await page.goto(`${origin}/survey/`);
    await page.locator("[data-key=sample]").click();
    await page.waitForSelector("#steps a");
    await page.locator('footer a[href="../why/"]').click();
    await page.waitForURL(/\/why\/#/);
    await page.waitForFunction(() =>
      /link|This car|entered/i.test(document.querySelector(".hand-line")?.textContent ?? ""),
    );
    assert.doesNotMatch(await page.locator(".hand-line").textContent(), /sample/i);
  }));
