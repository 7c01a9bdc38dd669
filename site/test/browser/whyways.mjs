// The ways into and through "Why so wide": keys alone, the address, the car in
// hand, and what goes wrong.

import assert from "node:assert/strict";
import test from "node:test";
import { encode } from "../../pages/shared/carurl.ts";
import { patience, sleep } from "../pace.mjs";
import { visit } from "./browser.mjs";
import { goTo, line, openCarFile, openWhy, PAGES, plain, suppose } from "./whyopen.mjs";

const where = (page) => page.evaluate(() => document.body.dataset.page);
const focus = (page) =>
  page.evaluate(() => document.activeElement.dataset.key ?? document.activeElement.tagName);
const shared = (car) =>
  encode({
    format: "underpaint link 1",
    entered: "2026-06-04",
    rates_of: "2026-06-03",
    check_code: "00000 00000",
    car,
  });

test("why so wide by keys alone: Space imagines cars, the arrows turn pages, Back of the browser too; nothing moves by itself", () =>
  visit({ reducedMotion: "reduce" }, async (page, { origin }) => {
    await openWhy(page, origin);
    assert.equal(await focus(page), "next-car");
    for (const n of [1, 2, 3]) {
      await page.keyboard.press("Space");
      assert.equal(await page.locator(".twenty .dot").count(), n);
    }
    assert.equal(
      await page.locator(".dropping").evaluate((n) => getComputedStyle(n).animationName),
      "none",
      "no motion where none is wanted",
    );
    for (const id of PAGES.slice(1)) {
      await page.keyboard.press("ArrowRight");
      await page.waitForSelector(`body[data-page=${id}]`);
      assert.equal(await focus(page), "H1");
      assert.equal(await page.title(), `${await page.locator("h1").textContent()} | Why so wide`);
    }
    await page.keyboard.press("ArrowRight");
    assert.equal(await where(page), "end", "the last page is the last");
    await page.keyboard.press("ArrowLeft");
    await page.waitForSelector("body[data-page=wide]");
    await page.keyboard.press("Space");
    await page.waitForSelector("body[data-page=end]");
    await page.goBack();
    await page.waitForSelector("body[data-page=wide]");
    await goTo(page, "suppose");
    await page.locator(".suppose select").focus();
    const before = await page.locator(".suppose select").inputValue();
    await page.keyboard.press("ArrowRight");
    assert.equal(await where(page), "suppose", "a list keeps its keys");
    assert.notEqual(await page.locator(".suppose select").inputValue(), before);
    await page.keyboard.press("Tab");
    assert.equal(await page.evaluate(() => document.activeElement.dataset.suppose), "sound");
    await page.keyboard.press("Space");
    assert.equal(await where(page), "suppose", "a button keeps its keys");
    await page.waitForSelector(".suppose-result .dots", { timeout: patience(240_000) });
    await sleep(1500);
    assert.equal(await where(page), "suppose");
  }));

test("why so wide: a car by its link, not checked by the shop; a reload keeps it and its page; This car gets it", () =>
  visit({}, async (page, { origin }) => {
    const fragment = await shared({ ...plain, bodies: ["pickup"], standard: "not_sure", options: undefined });
    await openWhy(page, origin, fragment);
    assert.match(await line(page), /^From a link of June 4, 2026, not checked by the shop: Pickup/);
    assert.doesNotMatch(page.url(), /#v1/);
    await goTo(page, "end");
    assert.equal(await page.locator("[data-key=this-car]").getAttribute("href"), `../survey/${fragment}`);
    await page.reload();
    await page.waitForSelector("body[data-page=end]");
    assert.match(await line(page), /^From a link of June 4, 2026/);
    await page.emulateMedia({ media: "print" });
    assert.match(
      await page.locator("main").innerText(),
      /standard is not settled yet[\s\S]*Not worked out yet when this was printed/,
    );
  }));

test("why so wide: the car kept as This car comes first; recorded parts are not supposed, its stages are shown", () =>
  visit({}, async (page, { origin }) => {
    const car = {
      ...plain,
      stages: [{ stage: "survey", on: "2026-06-20" }],
      survey: [{ on: "outer_sill.left", stage: "survey", condition: "rusted_through" }],
    };
    await page.goto(`${origin}/privacy.html`);
    await page.evaluate(
      (c) =>
        localStorage.setItem(
          "underpaint this car 1",
          JSON.stringify({ car: c, when: "2026-06-20T14:05:31", stamp: "1" }),
        ),
      car,
    );
    await openWhy(page, origin);
    assert.match(await line(page), /^This car, as kept on this device \(June 20, 2026, 14:05/);
    await goTo(page, "suppose");
    assert.equal(await page.locator('.suppose option[value="outer_sill.left"]').count(), 0);
    assert.match(await page.locator(".suppose").innerText(), /already seen in bare metal are left out/);
    await suppose(page, "inner_sill.left", "rusted_through");
    await goTo(page, "stages");
    await page.waitForSelector(".stages .why-rows .dots", { timeout: patience(240_000) });
    assert.deepEqual(
      (await page.locator(".stages .why-rows h2").allTextContents()).map((t) => t.split(",")[0]),
      ["From your answers", "Strip and survey"],
    );
    await goTo(page, "end");
    assert.equal(await page.locator("h1").textContent(), "That is what stripping first was for");
    assert.equal(await page.locator(".next-stage:visible").count(), 0, "a stage that is done is not offered");
    assert.match(await page.locator("#screen .tells").textContent(), /^After the survey, the range is \$/);
    await page.emulateMedia({ media: "print" });
    assert.doesNotMatch(await page.locator("main").innerText(), /Nobody has seen the car/);
  }));

test("why so wide: a file that is no car changes nothing, one of two bodies asks which", () =>
  visit({}, async (page, { origin }) => {
    await openWhy(page, origin);
    await openCarFile(page, "{");
    await page.waitForSelector("[data-band=arrival]");
    assert.match(await page.locator("[data-band=arrival]").innerText(), /not a car file/);
    assert.match(await line(page), /^The sample car/);
    await openCarFile(page, { ...plain, made: { year: 1800 } });
    await page.waitForFunction(() =>
      /could not be opened/.test(document.querySelector("[data-band=arrival]")?.textContent),
    );
    assert.match(await line(page), /^The sample car/);
    await goTo(page, "end");
    await openCarFile(page, { ...plain, bodies: ["two_door_unitary", "hardtop_on_frame"] });
    await page.waitForFunction(() =>
      /Which shall it be/.test(document.querySelector("[data-band=arrival]")?.textContent),
    );
    await page.locator("[data-band=arrival] button").nth(1).click();
    await page.waitForSelector("body[data-page=twenty]");
    assert.match(await line(page), /^From a file, not checked by the shop: .*frame/);
    assert.equal(await page.locator("[data-band=arrival]").count(), 0);
  }));

test("why so wide: a link that is not whole shows no figure until a car is chosen", () =>
  visit({}, async (page, { origin }) => {
    await page.goto(`${origin}/why/${(await shared(plain)).slice(0, -12)}`);
    await page.waitForSelector("[data-band=arrival]");
    assert.match(await page.locator("[data-band=arrival]").innerText(), /not whole/);
    assert.equal(await page.locator(".dots").count(), 0);
    await page.getByRole("button", { name: "Use the sample car (invented)" }).click();
    await page.waitForSelector(".twenty .dots");
  }));

for (const [name, body, status] of [
  ["broken", '{"format": "underpaint rates 1", ', 200],
  ["missing", "", 404],
]) {
  test(`why so wide: rates that are ${name}: the sentence for it, and no figure`, () =>
    visit({ allow: /404/ }, async (page, { origin }) => {
      await page.route("**/rates.json", (route) =>
        route.fulfill({ status, body, contentType: "application/json" }),
      );
      await page.goto(`${origin}/why/`);
      await page.waitForSelector('[data-band="rates"]');
      assert.match(
        await page.locator('[data-band="rates"]').innerText(),
        /rates could not be read, so no figure is shown/,
      );
      assert.equal(await page.locator(".dots, .total, .bars").count(), 0);
      assert.doesNotMatch(await page.locator("main").innerText(), /\$\d/);
    }));
}

test("why so wide: an engine that dies is started again and the page goes on; without a connection it says so", () =>
  visit({ allow: /killed by the test/ }, async (page, { origin, context }) => {
    await openWhy(page, origin);
    await page.workers()[0].evaluate(() => {
      setTimeout(() => {
        throw new Error("killed by the test");
      });
    });
    await page.waitForSelector('[data-band="restarted"]', { timeout: patience(240_000) });
    await goTo(page, "odds");
    await page.waitForSelector(".two-ways .dots", { timeout: patience(240_000) });
    await context.setOffline(true);
    await page.waitForFunction(() => /No connection/.test(document.querySelector("#offline").textContent));
  }));
