// How many acts of a hand the two shortest jobs take: presses and keys as the
// browser itself counts them. The counts to compare with were worked out from the
// layout before it was built: 10 for a two-door's first range (here one more, to stand
// in the field of the year), 7 to 11 for a changed rate. The full survey is counted in surveylist.mjs.

import assert from "node:assert/strict";
import test from "node:test";
import { press, settled, visit } from "./browser.mjs";
import { effectSettled, field, openRates } from "./ratesopen.mjs";

/** Counts what a person does from here on: presses, and keys but for the modifiers. */
async function count(page) {
  await page.evaluate(() => {
    globalThis.acts = 0;
    for (const kind of ["click", "keydown"])
      addEventListener(
        kind,
        (event) => {
          // Enter and Space on a button are told twice, as a key and as a click.
          if (
            event.isTrusted &&
            !(kind === "click" && event.detail === 0) &&
            !["Control", "Meta", "Shift"].includes(event.key)
          )
            globalThis.acts++;
        },
        { capture: true },
      );
  });
  return () => page.evaluate(() => globalThis.acts);
}

for (const [first, most] of [
  [["two_door", "shell"], 11],
  [["four_door_saloon"], 10],
]) {
  test(`acts to a first range, ${first[0]}: at most ${most}, four of them the year`, () =>
    visit({}, async (page, { origin }) => {
      await page.goto(`${origin}/`);
      await page.locator('[data-answer="two_door"]').waitFor();
      const acts = await count(page);
      for (const answer of first) await press(page, answer);
      await page.getByLabel("Year").click();
      await page.keyboard.type("1967");
      await page.keyboard.press("Enter");
      for (const answer of ["mild", "driven_all_year", "show"]) await press(page, answer);
      await settled(page);
      const done = await acts();
      console.log(`# acts to a first range, ${first[0]}: ${done}`);
      assert.ok(done <= most && done >= 9, `${done} acts`);
    }));
}

test("acts for another price of an hour, as far as the file for the website", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin);
    const acts = await count(page);
    const box = field(page, "labour.metal.rate").locator("input");
    await box.click();
    await page.keyboard.press("Control+a");
    await page.keyboard.type("95");
    await page.keyboard.press("Tab");
    await effectSettled(page);
    await page.getByText("How to put it there").click();
    const [file] = await Promise.all([
      page.waitForEvent("download"),
      page.locator("[data-key=save-rates]").click(),
    ]);
    assert.equal(file.suggestedFilename(), "rates.json");
    const done = await acts();
    console.log(`# acts for a changed rate: ${done}`);
    assert.ok(done >= 5 && done <= 11, `${done} acts`);
  }));
