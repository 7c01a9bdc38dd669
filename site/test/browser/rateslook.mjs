// The page "Rates" on a narrow screen, in light and dark, with nothing that a
// program can find against WCAG 2.2 A and AA.

import assert from "node:assert/strict";
import test from "node:test";
import { sleep } from "../pace.mjs";
import { axeSource, visit } from "./browser.mjs";
import { changed, effectSettled, openRates } from "./ratesopen.mjs";

const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
/** Rules that hang on colour: all that can differ between light and dark. */
const COLOURS = ["color-contrast", "link-in-text-block"];

test("every section at 320 px without sideways scroll, and no fault that a program can find", () =>
  visit({ viewport: { width: 320, height: 700 } }, async (page, { origin }) => {
    await openRates(page, origin);
    await page.evaluate(axeSource);
    // Faults, slips and marks are looked at too.
    await changed(page, () => page.getByLabel("This shop is invented").uncheck());
    const ids = await page.locator("[data-section]").evaluateAll((all) => all.map((a) => a.dataset.section));
    assert.equal(ids.length, 15);
    for (const id of ids) {
      await page.evaluate((x) => {
        location.hash = x;
      }, id);
      await page.waitForFunction(
        (x) => document.querySelector(`[data-section="${x}"]`).hasAttribute("aria-current"),
        id,
      );
      if (id === "done") await changed(page, () => page.getByRole("button", { name: /Set our own/ }).click());
      // Three entries of each list stand for the others, which are made alike.
      await page.locator("details").evaluateAll((all) => {
        let entries = 0;
        for (const d of all) d.open = !d.classList.contains("entry") || entries++ < 3;
      });
      await sleep(50);
      assert.ok(
        (await page.evaluate(() => document.documentElement.scrollWidth)) <= 320,
        `${id} is too wide`,
      );
      for (const [scheme, only] of [
        ["light", { type: "tag", values: RULES }],
        ["dark", { type: "rule", values: COLOURS }],
      ]) {
        await page.emulateMedia({ colorScheme: scheme });
        const found = await page.evaluate((runOnly) => axe.run(document, { runOnly }), only);
        assert.deepEqual(
          found.violations.map((v) => `${v.id}: ${v.nodes[0].html.slice(0, 160)}`),
          [],
          `${id}, ${scheme}`,
        );
      }
    }
  }));

test("on a narrow screen what it does is folded under the form, with one line that says it", () =>
  visit({ viewport: { width: 360, height: 740 } }, async (page, { origin }) => {
    await openRates(page, origin);
    await effectSettled(page);
    assert.equal(await page.locator(".effect-car:visible").count(), 0);
    assert.match(
      await page.locator(".effect-first").textContent(),
      /^Two-door, dry state: In 8 cars out of 10: \$/,
    );
    const below = await page.evaluate(
      () =>
        document.querySelector(".effect-head").getBoundingClientRect().top >=
        document.querySelector(".rates-form").getBoundingClientRect().bottom,
    );
    assert.ok(below);
    // WCAG 2.2, 2.5.8: targets of 24 by 24 CSS pixels at least.
    const small = await page
      .locator("button:visible, input:visible, select:visible, summary:visible, .steps a")
      .evaluateAll((all) =>
        all
          .filter((n) => {
            const r = (n.closest("label") ?? n).getBoundingClientRect();
            return r.width < 24 || r.height < 24;
          })
          .map((n) => n.outerHTML.slice(0, 80)),
      );
    assert.deepEqual(small, []);
  }));
