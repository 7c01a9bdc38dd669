// Keeping "This car": each press, a tab that is killed, two tabs, a full device,
// link, reload, and without a connection.

import assert from "node:assert/strict";
import test from "node:test";
import { until } from "../pace.mjs";
import { newContext, visit } from "./browser.mjs";
import { cell, counted, goTo, largest, openCar, saved, stand, twoDoor } from "./surveycar.mjs";

const named = (page, name) => page.getByRole("button", { name, exact: true });
const keep = (page) => named(page, "Keep on this device").click();
const kept = (page) =>
  page.evaluate(() => JSON.parse(localStorage.getItem("underpaint this car 1") ?? "null"));

test("nothing is kept before it is asked for; then every press is, at once, with its time", () =>
  visit({}, async (page, { origin }) => {
    await openCar(page, origin, twoDoor);
    await stand(page);
    await page.keyboard.press("s");
    assert.equal(await page.evaluate(() => localStorage.length), 0);
    assert.match(await page.locator(".keep-short").textContent(), /Not kept/);
    await page.clock.setFixedTime(new Date("2026-06-20T14:02:31"));
    await keep(page);
    await stand(page);
    // Read in the same task as the press: nothing has been waited for.
    const after = await page.evaluate(() => {
      document.activeElement.dispatchEvent(
        new KeyboardEvent("keydown", { key: "r", bubbles: true, cancelable: true }),
      );
      return JSON.parse(localStorage.getItem("underpaint this car 1")).car.survey.length;
    });
    assert.equal(after, 2, "the press is kept before the handler returns");
    assert.match(await page.locator(".keep-short").textContent(), /Kept on this device 14:02:31/);
  }));

test("a killed tab: found again with its counts, and goes on to the last press", () =>
  visit({ allow: /./ }, async (page, { origin, context }) => {
    await openCar(page, origin, largest);
    await keep(page);
    await stand(page);
    for (let n = 0; n < 63; n++) await page.keyboard.press(n % 3 ? "s" : "l");
    const crashed = page.waitForEvent("crash");
    page.goto("chrome://crash").catch(() => {});
    await crashed;
    const again = await context.newPage();
    await again.goto(`${origin}/survey/`);
    await again.locator('[data-band="found"]', { hasText: "63 of 101" }).waitFor();
    assert.match(
      await again.locator('[data-band="found"]').innerText(),
      /Survey of \d\d:\d\d found on this device: Survey 63 of 101/,
    );
    await named(again, "Go on").click();
    await counted(again, "survey", "Survey 63 of 101");
    assert.equal((await saved(again)).survey.length, 63);
    await stand(again);
    await again.keyboard.press("g");
    assert.equal(
      (await kept(again)).car.survey.length,
      63,
      "the first part is one of the 63, and it is corrected",
    );
    await named(again, "Erase from this device").click();
    assert.equal(await again.evaluate(() => localStorage.length), 0);
    assert.equal(await again.evaluate(() => document.activeElement.dataset.key), "keep");
  }));

test("a reload loses nothing, though nothing is kept on the device", () =>
  visit({}, async (page, { origin }) => {
    await openCar(page, origin, twoDoor);
    await goTo(page, "sill", "outer_sill.left");
    for (const key of ["r", "h", "s"]) await page.keyboard.press(key);
    await page.reload();
    await page.waitForSelector(".grid .in-hand");
    await counted(page, "survey", "Survey 3 of 91");
    assert.equal((await saved(page)).survey.length, 3);
    assert.equal(await page.evaluate(() => localStorage.length), 0);
  }));

test("two tabs on one car: the older one says which is newer, asks, and puts nothing together", () =>
  visit({}, async (page, { origin, context }) => {
    await openCar(page, origin, twoDoor);
    await keep(page);
    await stand(page);
    await page.keyboard.press("s");
    const second = await context.newPage();
    await second.goto(`${origin}/survey/`);
    await named(second, "Go on").click();
    await second.waitForSelector(".grid .in-hand");
    await stand(second);
    await second.keyboard.press("ArrowRight");
    await second.keyboard.press("g");
    await page.waitForSelector('[data-band="tabs"]');
    assert.match(await page.locator('[data-band="tabs"]').innerText(), /that one is the newer/);
    await stand(page);
    await page.keyboard.press("h");
    assert.deepEqual(
      (await kept(page)).car.survey.map((r) => r.condition),
      ["sound", "gone"],
      "the older tab writes nothing over it",
    );
    await named(page, "Go on with the newer one").click();
    // Both have two records, so only what they say shows which one is open.
    const open = () => saved(page).then((car) => car.survey.map((r) => r.condition).join());
    assert.ok(await until(async () => (await open()) === "sound,gone", 10_000), await open());
    await stand(page);
    await page.keyboard.press("l");
    await second.waitForSelector('[data-band="tabs"]');
    await named(second, "Go on with this one and keep it instead").click();
    assert.equal((await kept(second)).car.survey.length, 2);
  }));

test("a full device is said at once, and a file offered", () =>
  visit({}, async (page, { origin }) => {
    await openCar(page, origin, twoDoor);
    await keep(page);
    await page.evaluate(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await stand(page);
    await page.keyboard.press("s");
    assert.match(
      await page.locator('[data-band="storage"]').innerText(),
      /storage is full or switched off\). Save a file now/,
    );
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.locator('[data-band="storage"] button').click(),
    ]);
    assert.equal(download.suggestedFilename(), "this-car.json");
  }));

test("another kept car is never written over without asking", () =>
  visit({}, async (page, { origin }) => {
    await openCar(page, origin, twoDoor);
    await keep(page);
    await named(page, "Another car").click();
    await page.locator('[data-band="found"]').waitFor();
    await page.locator("[data-key=sample]").click();
    await page.waitForSelector(".grid .in-hand");
    await keep(page);
    assert.match(await page.locator(".keep-area").innerText(), /Another car is kept on this device already/);
    assert.equal((await kept(page)).car.made.year, 1967);
    const before = JSON.stringify(await kept(page));
    await named(page, "Leave the other one").click();
    assert.equal(JSON.stringify(await kept(page)), before);
  }));

test("a device that does not erase is said to keep it", () =>
  visit({}, async (page, { origin }) => {
    await openCar(page, origin, twoDoor);
    await keep(page);
    await page.evaluate(() => {
      Storage.prototype.removeItem = () => {};
    });
    await named(page, "Erase from this device").click();
    assert.match(await page.locator(".keep-said").textContent(), /would not erase it/);
  }));

test("a link holds the whole survey and opens it elsewhere", () =>
  visit({}, async (page, { origin, browser }) => {
    await openCar(page, origin, largest);
    await stand(page);
    for (let n = 0; n < 101; n++) await page.keyboard.press("slhprg"[n % 6]);
    const before = await saved(page);
    await named(page, "Make a link").click();
    const link = await page.getByLabel("The link").inputValue();
    console.log(`# link of a full survey: ${link.length} characters`);
    const other = await newContext(browser, { serviceWorkers: "block" });
    const reader = await other.newPage();
    await reader.goto(link);
    await reader.waitForSelector("#steps a");
    assert.deepEqual((await saved(reader)).survey, before.survey);
    assert.equal(new URL(reader.url()).hash.includes("v1."), false, "the car leaves the address");
    await other.close();
  }));

test("the second time it works without a connection, with and without the slash", () =>
  visit(
    { worker: "allow", allow: /ERR_INTERNET|Failed to load|Failed to fetch/ },
    async (page, { origin, context }) => {
      await openCar(page, origin, twoDoor);
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
      await context.setOffline(true);
      const second = await context.newPage();
      await second.goto(`${origin}/survey`);
      await second.locator("[data-key=sample]").click();
      await second.waitForSelector(".grid .in-hand");
      await stand(second);
      await second.keyboard.press("s");
      await counted(second, "survey", "Survey 1 of 91");
      await second.locator(".car-drawing .opened-out").first().waitFor();
      assert.equal(new URL(second.url()).pathname, "/survey/");
      assert.match(await cell(second, "fender_upper.left").textContent(), /Sound/);
    },
  ));
