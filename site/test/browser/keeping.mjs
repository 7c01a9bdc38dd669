// Keeping a car: on the device, in a link, in a file; and what is refused.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";
import { decode, encode } from "../../pages/shared/carurl.ts";
import { sleep } from "../pace.mjs";
import { firstRange, heading, newContext, press, sentence, settled, visit } from "./browser.mjs";

const stored = (page) => page.evaluate(() => localStorage.length);
const said = (page, pattern) =>
  page.waitForFunction((p) => new RegExp(p).test(document.querySelector(".keep-said").textContent), pattern);
const named = (page, name) => page.getByRole("button", { name, exact: true });

async function theLink(page) {
  await named(page, "Make a link").click();
  return page.getByLabel("The link").inputValue();
}

test("nothing is stored before it is asked for; kept, found again, erased", () =>
  visit({}, async (page, { origin, context }) => {
    await firstRange(page, origin);
    const before = await sentence(page);
    assert.equal(await stored(page), 0);
    assert.deepEqual(await context.cookies(), []);
    await named(page, "Keep on this device").click();
    await said(page, "Kept on this device");
    assert.equal(await stored(page), 1);
    const second = await context.newPage();
    await second.goto(`${origin}/`);
    await named(second, "Open it").click();
    await settled(second);
    assert.equal(await sentence(second), before);
    await named(second, "Erase from this device").click();
    await said(second, "Nothing is kept");
    assert.equal(await stored(second), 0);
  }));

test("later answers are kept too, and another tab is told", () =>
  visit({}, async (page, { origin, context }) => {
    await firstRange(page, origin);
    await named(page, "Keep on this device").click();
    const second = await context.newPage();
    await second.goto(`${origin}/`);
    await named(second, "Open it").click();
    await settled(second);
    await second.getByRole("button", { name: /Change: Standard/ }).click();
    await press(second, "driver");
    await page.waitForSelector('[data-band="tabs"]');
    await named(page, "Go on with the newer ones").click();
    // The range of the older answers stays settled until the newer ones are read.
    await page.locator(".basis", { hasText: "Driver standard" }).waitFor();
    await settled(page);
    assert.match(await page.locator(".basis").innerText(), /Driver standard/);
  }));

test("storage that is full is said, and a file offered", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.evaluate(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await named(page, "Keep on this device").click();
    await said(page, "Could not keep this on the device");
  }));

test("start again erases the answers, also behind Back", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    await named(page, "Start again and erase the answers").click();
    assert.equal(await heading(page), "Which is nearest to your car?");
    for (let i = 0; i < 3; i++) {
      await page.goBack();
      await sleep(100);
      assert.equal(await page.evaluate(() => JSON.stringify(history.state).includes("1967")), false);
      assert.equal(await heading(page), "Which is nearest to your car?");
    }
  }));

test("a link gives the same range, says who entered it, and leaves the address", () =>
  visit({}, async (page, { origin, browser }) => {
    await firstRange(page, origin);
    const before = await sentence(page);
    const link = await theLink(page);
    assert.ok(link.startsWith(`${origin}/#v1.`));
    assert.ok(link.length < 1500, `the link has ${link.length} characters`);
    const other = await newContext(browser, { serviceWorkers: "block" });
    const reader = await other.newPage();
    const asked = [];
    reader.on("request", (r) => asked.push(r.url()));
    await reader.goto(link);
    await settled(reader);
    assert.equal(await sentence(reader), before);
    assert.match(
      await reader.locator('[data-band="link"]').innerText(),
      /Someone else entered these answers on .*not checked by the shop/,
    );
    assert.equal(new URL(reader.url()).hash, "");
    assert.ok(
      asked.every((u) => !u.includes("v1.")),
      "the car never reaches the server",
    );
    await other.close();
  }));

test("a link at other rates shows both, each with its date", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    const carried = await decode(new URL(await theLink(page)).hash);
    const older = {
      ...carried,
      check_code: "00000 00000",
      rates_of: "2025-01-05",
      told: { low: "$1,000", high: "$2,000" },
    };
    await page.goto("about:blank");
    await page.goto(`${origin}/${await encode(older)}`);
    await settled(page);
    assert.match(
      await page.locator('[data-band="link"]').innerText(),
      /rates of January 5, 2025 8 cars in 10 came between \$1,000 and \$2,000/,
    );
  }));

test("a broken link, a newer link and a car that the engine refuses show no figure", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    const link = await theLink(page);
    const carried = await decode(new URL(link).hash);
    const wrong = await encode({ ...carried, car: { ...carried.car, standard: "gold", surprise: 1 } });
    const cases = [
      [link.slice(0, -12), /not whole/],
      [link.replace("#v1.", "#v9."), /newer version/],
      [`${origin}/${wrong}`, /could not be opened/],
    ];
    for (const [address, words] of cases) {
      await page.goto("about:blank");
      await page.goto(address);
      await page.waitForSelector('[data-band="arrival"]');
      assert.match(await page.locator('[data-band="arrival"]').innerText(), words);
      assert.equal(await page.locator(".sentence").count(), 0);
    }
  }));

test("hostile text in a link stays text", () =>
  visit({}, async (page, { origin }) => {
    const evil = "<img src=x onerror=alert(1)>";
    await page.goto(
      `${origin}/${await encode({ format: "underpaint link 1", entered: evil, rates_of: evil, check_code: evil, told: { low: evil, high: evil }, car: { format: evil, [evil]: evil } })}`,
    );
    await page.waitForSelector('[data-band="arrival"]');
    assert.equal(await page.locator("main img").count(), 0);
    assert.equal(await page.evaluate(() => Object.keys(Object.prototype).length), 0);
  }));

test("a saved file opens again, by button and by dropping it", () =>
  visit({}, async (page, { origin, context }) => {
    await firstRange(page, origin);
    const before = await sentence(page);
    const [download] = await Promise.all([page.waitForEvent("download"), named(page, "Save a file").click()]);
    const text = readFileSync(await download.path(), "utf8");
    assert.equal(JSON.parse(text).format, "underpaint car 1");
    const second = await context.newPage();
    await second.goto(`${origin}/`);
    await second.waitForFunction(() => document.getElementById("check-code").textContent !== "");
    await second
      .locator("input[type=file]")
      .setInputFiles({ name: "a.json", mimeType: "application/json", buffer: Buffer.from(text) });
    await settled(second);
    assert.equal(await sentence(second), before);
    const third = await context.newPage();
    await third.goto(`${origin}/`);
    await third.waitForFunction(() => document.getElementById("check-code").textContent !== "");
    const data = await third.evaluateHandle((t) => {
      const d = new DataTransfer();
      d.items.add(new File([t], "a.json"));
      return d;
    }, text);
    await third.dispatchEvent("body", "drop", { dataTransfer: data });
    await settled(third);
    assert.equal(await sentence(third), before);
  }));

test("a file that is none is refused in words, and nothing else changes", () =>
  visit({}, async (page, { origin }) => {
    await page.goto(`${origin}/`);
    await page.waitForFunction(() => document.getElementById("check-code").textContent !== "");
    const cases = [
      ["", /empty/],
      ["{", /not a car file/],
      ["[]", /could not be opened/],
      ["{}", /could not be opened/],
      ["x".repeat(300000), /too large/],
    ];
    for (const [text, words] of cases) {
      await page
        .locator("input[type=file]")
        .setInputFiles({ name: "a.json", mimeType: "application/json", buffer: Buffer.from(text) });
      await page.waitForFunction(
        (w) => new RegExp(w).test(document.querySelector('[data-band="arrival"]')?.textContent ?? ""),
        words.source,
      );
      assert.equal(await heading(page), "Which is nearest to your car?");
    }
  }));

test("the worked sample says that its car is invented", () =>
  visit({}, async (page, { origin }) => {
    await page.goto(`${origin}/`);
    await page.waitForFunction(() => document.getElementById("check-code").textContent !== "");
    await page.getByRole("button", { name: /See one worked out/ }).click();
    await settled(page);
    assert.match(await page.locator('[data-band="sample"]').innerText(), /invented/);
  }));
