// Who sees which caution: a customer only what customers may do or have to decide, the shop
// each once at the line of work that causes it.

import assert from "node:assert/strict";
import test from "node:test";
import { firstRange, visit } from "./browser.mjs";
import { openFile, step, twoDoor } from "./surveycar.mjs";

/** Hazards of the shop floor, none of which a customer meets or decides about. */
const SHOP_FLOOR =
  /dB\(A\)|[Tt]wo-pack|fuel tank|phosgene|cadmium|chromate|supplied air|epoxy|psi|extinguisher/i;
const CLOSING = /Product data sheets, local codes and trained or licensed people come first\.$/;
const surveyed = {
  ...twoDoor,
  made: { year: 1975 },
  stages: [{ stage: "survey", on: "2026-06-20" }],
  survey: [
    { on: "outer_sill.left", stage: "survey", condition: "rusted_through" },
    { on: "inner_sill.left", stage: "survey", condition: "heavy_pitting", also: ["packed"] },
  ],
};

const idsIn = (page, selector) =>
  page.locator(`${selector} [data-caution]`).evaluateAll((all) => all.map((n) => n.dataset.caution));
const once = (ids) => assert.deepEqual(ids.toSorted(), [...new Set(ids)].toSorted(), "each once");

/** Every list closes with the standing line, and is folded until somebody unfolds it. */
async function folded(page, selector) {
  for (const fold of await page.locator(selector).all()) {
    assert.equal(await fold.getAttribute("open"), null);
    assert.equal(await fold.locator(".caution").first().isVisible(), false);
    await fold.locator("summary").click();
    await fold.locator(".caution").first().waitFor();
    assert.match((await fold.innerText()).trim(), CLOSING);
  }
}

test("a customer meets no danger of the shop floor, and on paper only those of work known to be theirs", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    assert.deepEqual((await idsIn(page, "main")).toSorted(), [
      "asbestos",
      "belts",
      "lifting",
      "local",
      "not_seen",
      "numbers",
      "old_paint",
      "refrigerant",
      "rights",
      "springs",
      "strip_first",
      "structure",
    ]);
    for (const text of await page.locator("main .caution").allTextContents())
      assert.doesNotMatch(text, SHOP_FLOOR);
    await folded(page, ".own-work");
    assert.ok(await page.locator(".own-work [data-caution=springs]").isVisible());
    await page.emulateMedia({ media: "print" });
    assert.equal(await page.locator(".own-work").isVisible(), false);
  }));

test("the shop has the dangers of the strip folded beside it, each once at the step that causes it", () =>
  visit({}, async (page, { origin }) => {
    await openFile(page, origin, surveyed);
    await page.locator(".dangers-strip summary").click();
    await page.locator(".dangers-strip .caution").first().waitFor();
    const ids = await idsIn(page, ".dangers-strip");
    once(ids);
    for (const id of [
      "airbags",
      "asbestos",
      "lead",
      "warp",
      "stripper",
      "compressed_air",
      "phosphoric",
      "epoxy",
    ])
      assert.ok(ids.includes(id), id);
    const line = page.locator(".dangers-strip h3", { hasText: "Clear the media out of the boxes" });
    assert.equal(await line.count(), 1, "the first of three clearings");
    assert.match(await line.locator("+ .caution").textContent(), /30 psi/);
    assert.match((await page.locator(".dangers-strip").innerText()).trim(), CLOSING);
  }));

test("what to do has each danger once on the page: at the first part that causes it, the rest below", () =>
  visit({}, async (page, { origin }) => {
    await openFile(page, origin, surveyed);
    await step(page, "todo").click();
    await page.locator(".to-do .dangers-whole-car").waitFor();
    once(await idsIn(page, ".to-do"));
    const first = await idsIn(page, ".card:first-of-type");
    for (const id of ["fire_watch", "fuel", "noise"]) assert.ok(first.includes(id), id);
    assert.deepEqual(await idsIn(page, '.card[data-card="inner_sill.left"]'), ["foam"]);
    const rest = await idsIn(page, ".dangers-whole-car");
    for (const id of ["paint", "rags"]) assert.ok(rest.includes(id), id);
    await folded(page, ".to-do .dangers");
    await page.locator('[data-card="outer_sill.left"] [data-way=section]').click();
    await page.locator('[data-card="outer_sill.left"] [data-way=section][aria-pressed=true]').waitFor();
    assert.ok(await page.locator(".dangers-whole-car .caution").first().isVisible(), "stays unfolded");
  }));
