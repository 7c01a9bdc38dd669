// Another body: the customer's question under the range, and the section of the rates form.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";
import { patience } from "../pace.mjs";
import { firstRange, sentence, visit } from "./browser.mjs";
import { changed, draftOf, field, named, openRates, type } from "./ratesopen.mjs";

/** Serves the sample's rates with another two-door at invented prices. */
async function offering(page, dir) {
  const rates = JSON.parse(readFileSync(`${dir}/rates.json`, "utf8"));
  rates.another_body = {
    bodies: [{ body: "two_door_unitary", price: [4000, 9000, 20000], to_be_had: 0.6 }],
  };
  await page.route("**/rates.json", (route) =>
    route.fulfill({ body: JSON.stringify(rates), contentType: "application/json" }),
  );
}

test("a shop with another body asks under the range whether it must be this one, and the answer counts", () =>
  visit({}, async (page, { origin, dir }) => {
    await offering(page, dir);
    await firstRange(page, origin);
    const asked = page.locator(".another-body");
    await asked.waitFor();
    const text = await asked.textContent();
    assert.match(text, /Must it be this very body\?/);
    assert.match(text, /another sound body for clearly less than repairing this one/);
    assert.match(text, /before you pay for stripping this one/);
    assert.match(await asked.locator("[data-caution=stamped_body]").textContent(), /legal identity/);
    const pressed = () =>
      asked.locator("button").evaluateAll((all) => all.map((b) => b.getAttribute("aria-pressed")));
    assert.deepEqual(await pressed(), ["false", "false", "false"]);
    const before = await sentence(page);
    await asked.getByRole("button", { name: "Another is all right" }).click();
    await asked.locator("[data-another=another_is_all_right][aria-pressed=true]").waitFor();
    await page.waitForSelector(".range[data-state=settled]", { timeout: patience(240_000) });
    assert.deepEqual(await pressed(), ["false", "true", "false"]);
    assert.notEqual(await sentence(page), before);
    assert.match(await asked.textContent(), /all right with you/);
    assert.match(await page.locator(".moved").textContent(), /Another is all right.* changed the range/);
    assert.match(await page.locator(".basis").textContent(), /This body or another\s*Another is all right/);
    await page.getByRole("button", { name: /Change: This body or another/ }).click();
    await page.getByRole("button", { name: "This one only" }).click();
    await asked.locator("[data-another=this_one_only][aria-pressed=true]").waitFor();
    await page.waitForSelector(".range[data-state=settled]", { timeout: patience(240_000) });
    assert.deepEqual(await pressed(), ["true", "false", "false"]);
    assert.equal(await sentence(page), before);
  }));

test("a shop without another body never speaks of one", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    assert.equal(await page.locator(".another-body").count(), 0);
    assert.doesNotMatch(await page.locator("body").innerText(), /another (sound )?body/i);
  }));

test("the rates form takes a body with its price and chance, says what is missing, and forgets it", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin, "another");
    await page.locator("#offer-body").selectOption("pickup");
    await changed(page, () => named(page, "Offer this body").click());
    assert.match(await page.locator("#look-at").textContent(), /Another body/);
    for (const [n, text] of ["3000", "8000", "16000"].entries())
      await type(page, "another_body.bodies[0].price", text, n);
    await type(page, "another_body.bodies[0].to_be_had", "1.5");
    assert.match(
      await field(page, "another_body.bodies[0].to_be_had").locator(".error").textContent(),
      /0 to 1/,
    );
    await type(page, "another_body.bodies[0].to_be_had", "0.5");
    assert.match(await page.locator("#look-at h2").textContent(), /Nothing/);
    assert.deepEqual((await draftOf(page)).another_body.bodies, [
      { body: "pickup", price: [3000, 8000, 16000], to_be_had: 0.5, source: "the shop's own figure" },
    ]);
    assert.equal(await page.locator("#offer-body option[value=pickup]").count(), 0);
    await changed(page, () => page.getByRole("button", { name: /^Remove / }).click());
    assert.equal("another_body" in (await draftOf(page)), false);
  }));
