// The form of the page "Rates": what is wrong stands at its field, what is the
// sample's is marked, and nothing that was typed is lost.

import assert from "node:assert/strict";
import test from "node:test";
import { patience } from "../pace.mjs";
import { visit } from "./browser.mjs";
import { changed, draftOf, effectSettled, field, focusedPath, named, openRates, type } from "./ratesopen.mjs";

test("a fault stands at its field and at the top, what was typed stays, and a way leads there", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin);
    await type(page, "labour.metal.rate", "8x");
    const metal = field(page, "labour.metal.rate");
    assert.match(await metal.locator(".error").textContent(), /Expected .*8x/);
    const input = metal.locator("input");
    assert.equal(await input.inputValue(), "8x");
    assert.equal(await input.getAttribute("aria-invalid"), "true");
    const described = (await input.getAttribute("aria-describedby")).split(" ");
    assert.ok(
      await metal
        .locator(".error")
        .evaluate((e, ids) => ids.some((id) => document.getElementById(id)?.contains(e)), described),
      "the fault is tied to its field",
    );
    assert.match(await page.locator("#draft-line").textContent(), /cannot be used yet/);
    assert.match(await page.locator('[data-section="labour"]').textContent(), /1 to look at/);
    await page.evaluate(() => {
      location.hash = "tax";
    });
    await field(page, "tax.percent").waitFor();
    await page.locator("#look-at a").first().click();
    assert.equal(await focusedPath(page), "labour.metal.rate");
    await type(page, "labour.metal.rate", "85.00");
    assert.equal(await field(page, "labour.metal.rate").locator("input").getAttribute("aria-invalid"), null);
    await page.getByRole("button", { name: "Undo the last change: Metalwork" }).click();
    assert.equal(await field(page, "labour.metal.rate").locator("input").inputValue(), "8x");
  }));

test("of three figures the wrong one is marked; all three empty is what the rates have for it", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin, "time");
    const hours = field(page, "time.hours_a_week").locator("input");
    await type(page, "time.hours_a_week", "19 or so", 1);
    assert.deepEqual(await hours.evaluateAll((all) => all.map((i) => i.getAttribute("aria-invalid"))), [
      null,
      "true",
      null,
    ]);
    assert.match(await page.locator("#look-at").textContent(), /Hours a week.*19 or so/);
    await type(page, "time.hours_a_week", "19", 1);
    assert.match(
      await field(page, "time.hours_a_week").locator(".error").textContent(),
      /none below the one before/,
    );
    await type(page, "time.hours_a_week", "25", 1);
    for (const n of [0, 1, 2]) await type(page, "time.waits_weeks", "", n);
    assert.match(await page.locator("#look-at h2").textContent(), /Nothing/);
    assert.equal("waits_weeks" in (await draftOf(page)).time, false);
  }));

test("money stays as it was typed, and what the page does not ask stays as it was", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin);
    await type(page, "labour.metal.rate", "90.10");
    await type(page, "labour.metal.pace", "1.25");
    const draft = await draftOf(page);
    assert.equal(draft.labour.metal.rate, "90.10");
    assert.equal(draft.labour.metal.pace, 1.25);
    assert.equal(draft.labour.metal.source, "the shop's own figure");
    assert.match(draft.labour.prep.source, /sample/);
    assert.equal(draft.own_figures, null);
    assert.match(draft.note, /invented shop/);
  }));

test("a dearer hour moves three sample cars, and the lines that it moves are named", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin);
    await effectSettled(page);
    assert.match(await page.locator(".effect-car p").first().textContent(), /the same as on your site/);
    await type(page, "labour.metal.rate", "105");
    await page.waitForFunction(
      () => /Metalwork: \$/.test(document.querySelector(".effect-line").textContent),
      null,
      { timeout: patience(240_000) },
    );
    await effectSettled(page);
    assert.equal(await page.locator(".effect-car").count(), 3);
    assert.match(
      await page.locator(".effect-car p").first().textContent(),
      /on your site, \$.* with these rates/,
    );
    assert.equal(await page.locator(".effect-car").first().locator("svg").count(), 2);
    assert.match(await page.locator("#draft-line").textContent(), /not on the site yet/);
    await type(page, "labour.metal.rate", "1x");
    await page.waitForSelector(".effect[data-state=stale]");
    assert.match(await page.locator(".effect-line").textContent(), /Not worked out/);
  }));

test("figures and words of the sample are marked once the shop is a real one, until they are changed", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin);
    assert.equal(await page.locator(".sample-mark:visible").count(), 0);
    await changed(page, () => page.getByLabel("This shop is invented").uncheck());
    const marks = await page.locator(".sample-mark:visible").count();
    assert.ok(marks >= 5, `${marks} marks`);
    assert.match(await page.locator("#look-at").textContent(), /still exactly those of the invented sample/);
    assert.match(await field(page, "shop.name").locator(".slip").textContent(), /still the sample's/);
    await type(page, "labour.paint.rate", "91.50");
    assert.equal(await page.locator(".sample-mark:visible").count(), marks - 1);
    await type(page, "shop.name", "Another shop");
    assert.equal(await field(page, "shop.name").locator(".slip:visible").count(), 0);
    assert.match(await page.locator("#look-at").textContent(), /terms still say that the shop is invented/);
  }));

test("what is promised about prices goes into the file whole, and out of it whole", () =>
  visit({}, async (page, { origin }) => {
    const PROMISE = "prices_over_time.promise";
    await openRates(page, origin, "hold");
    const sample = (await draftOf(page)).prices_over_time;
    const how = (kind) =>
      changed(page, () => field(page, PROMISE).locator("select").first().selectOption(kind));
    const promised = async () => (await draftOf(page)).prices_over_time.promise;

    await type(page, PROMISE, "18");
    await changed(page, () => page.getByLabel("Prices of materials").check());
    await changed(page, () => page.getByLabel("Counted from").selectOption("strip_authorized"));
    const { source, ...said } = await promised();
    assert.deepEqual(said, {
      how: "held_months",
      months: 18,
      from: "strip_authorized",
      on: ["labour", "materials"],
    });
    assert.match(source, /own choice/);
    await type(page, PROMISE, "61");
    assert.match(await field(page, PROMISE).locator(".error").textContent(), /1 to 60/);
    await how("held_until");
    assert.match(await page.locator("#look-at h2").textContent(), /Nothing/);
    assert.deepEqual((await promised()).on, ["labour", "materials"]);
    await type(page, PROMISE, "2026-06-01");
    assert.match(await field(page, PROMISE).locator(".error").textContent(), /not before rates_of/);
    await how("not_held");
    assert.deepEqual(Object.keys(await promised()), ["how", "source"]);
    await how("");
    assert.equal("prices_over_time" in (await draftOf(page)), false);
    assert.equal(
      await field(page, "prices_over_time.labour_percent_a_year").locator("input").first().inputValue(),
      "",
    );
    await how("held_for_the_whole_job");
    const again = (await draftOf(page)).prices_over_time;
    assert.deepEqual(again.promise.on, ["labour"]);
    assert.deepEqual(again.labour_percent_a_year, sample.labour_percent_a_year);
    assert.equal(again.source, sample.source);
    await type(page, "prices_over_time.parts_percent_a_year", "0");
    assert.match(
      await field(page, "prices_over_time.parts_percent_a_year").locator(".error").textContent(),
      /write 0.1/,
    );
  }));

test("what is usually a slip stands at its field, and at its section where no field is meant", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin, "tax");
    await changed(page, () => field(page, "tax.published").locator("select").selectOption("with_tax"));
    assert.match(
      await field(page, "tax.published").locator(".slip").textContent(),
      /Usually a slip: Tax both ways/,
    );
    await changed(page, () => field(page, "tax.on.labour").locator("select").selectOption("not_sure"));
    assert.match(await page.locator(".section-notes").textContent(), /Tax is not worked out/);
    assert.match(await page.locator('[data-section="tax"]').textContent(), /2 to look at/);
  }));

test("a material by the keyboard alone: added, filled, the fault named, removed; the focus is never lost", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin, "materials");
    const count = await page.locator("details.entry").count();
    await named(page, "the square meter").focus();
    await changed(page, () => page.keyboard.press("Enter"));
    const path = `materials[${count}]`;
    assert.equal(await focusedPath(page), `${path}.name`);
    await page.keyboard.press("Control+a");
    await page.keyboard.type("Sound deadening");
    await changed(page, () => page.keyboard.press("Tab"));
    assert.equal(await focusedPath(page), `${path}.price`);
    assert.match(
      await page.locator("#look-at").textContent(),
      /Materials, Sound deadening, price: Nothing is here yet; expected a plain amount/,
    );
    await page.keyboard.type("14.50");
    await changed(page, () => page.keyboard.press("Tab"));
    await type(page, `${path}.how.per_m2.quantity`, "0.4");
    assert.match(await page.locator("#look-at h2").textContent(), /Nothing/);
    assert.match(
      await field(page, path).locator("summary").first().textContent(),
      /Sound deadening: 14.50 USD a liter/,
    );
    await changed(page, () => field(page, `${path}.how`).locator("select").selectOption("per_car"));
    assert.equal(await focusedPath(page), `${path}.how`);
    await field(page, path)
      .getByRole("button", { name: /^Remove/ })
      .focus();
    await changed(page, () => page.keyboard.press("Enter"));
    assert.equal(await focusedPath(page), `materials[${count - 1}]`);
    assert.equal(await page.locator("details.entry").count(), count);
  }));

test("a ceiling goes with a step by the hour alone, and an own table of what is done is checked", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin, "stage");
    const sealer = page.locator("details.entry", { hasText: "by the hour" }).first();
    const path = await sealer.getAttribute("data-path");
    await sealer.locator("summary").first().click();
    await field(page, `${path}.no_more_than`).waitFor();
    await changed(page, () => field(page, `${path}.how`).locator("select").selectOption("fixed"));
    assert.equal(await field(page, `${path}.no_more_than`).count(), 0);
    assert.match(await page.locator("#look-at h2").textContent(), /Nothing/);
    await page.evaluate(() => {
      location.hash = "done";
    });
    await changed(page, () => page.getByRole("button", { name: /Set our own/ }).click());
    await page.locator("details.entry > summary").first().click();
    const row = "what_is_done.driver.outer.rusted_through";
    await type(page, row, "0.9", 0);
    assert.match(await field(page, row).locator(".error").textContent(), /add|1/);
    await changed(page, () => named(page, "Go back to the starting figures").click());
    assert.match(await page.locator("#look-at h2").textContent(), /Nothing/);
  }));

test("other words and another currency show at once", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin, "words");
    await changed(page, () => field(page, "words").locator("select").selectOption("uk"));
    assert.equal(await focusedPath(page), "words");
    assert.match(await page.locator('[data-section="labour"]').textContent(), /^Labour/);
    await changed(page, () => field(page, "currency").locator("select").selectOption("GBP"));
    await page.evaluate(() => {
      location.hash = "labour";
    });
    await field(page, "labour.body.rate").waitFor();
    assert.match(await field(page, "labour.body.rate").textContent(), /Filling and flatting.*GBP an hour/);
  }));

test("a shop sets its own doubt of its figures; a later stage above an earlier one is refused at its entry", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin);
    await page.evaluate(() => {
      location.hash = "trust";
    });
    await page.getByText("all your cars together 0.12, one car by itself 0.09").waitFor();
    await changed(page, () => named(page, "Set our own, beginning from the starting figures").press("Enter"));
    const shared = page.locator('details[data-path="doubt.shared"]');
    await shared.locator("summary").click();
    await type(page, "doubt.shared.survey", "0.2");
    assert.match(await field(page, "doubt.shared.survey").locator(".error").textContent(), /stage before/);
    await type(page, "doubt.shared.survey", "0.08");
    await page.waitForFunction(
      () => !document.querySelector('[data-path="doubt.shared"] [aria-invalid]'),
      null,
      {
        timeout: patience(20000),
      },
    );
    assert.equal((await draftOf(page)).doubt.shared.survey, 0.08);
    assert.equal((await draftOf(page)).doubt.source, "the shop's own figures");
    await changed(page, () => named(page, "Go back to the starting figures").press("Enter"));
    assert.equal("doubt" in (await draftOf(page)), false);
  }));
