// The page "Rates" and what goes in and out of it: tables of part prices, files,
// the website, the draft kept on the device.

import assert from "node:assert/strict";
import test from "node:test";
import { visit } from "./browser.mjs";
import {
  changed,
  download,
  effectSettled,
  field,
  focusedPath,
  named,
  openRates,
  temporary,
  type,
} from "./ratesopen.mjs";

test("prices from a spreadsheet: good rows apart from refused ones, and the decimal mark asked for", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin, "parts");
    const entries = await page.locator("details.entry").count();
    await page
      .getByLabel("Paste the table")
      .fill("part;way;low;likely;high\nhood_skin;full;1.234;1.500;2.000\nengine;full;1;2;3\n");
    await named(page, "Look at it").click();
    await page.locator(".found .band").waitFor();
    await page.getByRole("button", { name: /point marks decimals/ }).click();
    await page.waitForFunction(() =>
      /1 good row, 1 refused/.test(document.querySelector(".found").textContent),
    );
    assert.match(await page.locator(".refusals").textContent(), /row 3.*engine/);
    assert.match(await page.locator(".good-rows tbody").textContent(), /full panel.*every body1\.2341\.52/i);
    assert.equal(
      await page.locator("details.entry").count(),
      entries,
      "nothing is taken before it is pressed",
    );
    await changed(page, () => named(page, "Take the 1 good row").click());
    assert.equal(await page.locator("details.entry").count(), entries + 1);
    assert.equal(await focusedPath(page), `parts.prices[${entries}]`);
    const file = await download(page, () =>
      named(page, "Cells cut by semicolons, decimals with a comma").click(),
    );
    assert.match(file.text, /hood;full;"?1,2340?"?;/);
  }));

test("one part by hand: for one body, asked for its price or how it is had, and not twice", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin, "parts");
    const n = await page.locator("details.entry").count();
    await page.getByLabel("Part", { exact: true }).selectOption("outer_sill");
    await page.getByLabel("What to do", { exact: true }).selectOption("section");
    await page.getByLabel("Body", { exact: true }).selectOption("two_door_unitary");
    await changed(page, () => named(page, "Add it").click());
    assert.match(
      await field(page, `parts.prices[${n}]`).locator(":scope > .error").textContent(),
      /a price, or how the part is had/,
    );
    assert.equal(await focusedPath(page), `parts.prices[${n}].price`);
    await changed(page, () =>
      field(page, `parts.prices[${n}].had`).locator("select").selectOption("section_only"),
    );
    assert.match(await page.locator("#look-at h2").textContent(), /Nothing/);
    assert.match(
      await field(page, `parts.prices[${n}]`).locator("summary").first().textContent(),
      /Outer rocker: .*Two-door/,
    );
    await page.getByLabel("Part", { exact: true }).selectOption("outer_sill");
    await page.getByLabel("What to do", { exact: true }).selectOption("section");
    await page.getByLabel("Body", { exact: true }).selectOption("two_door_unitary");
    await named(page, "Add it").click();
    assert.match(await page.locator(".add-box .error").textContent(), /in the list already/);
    assert.equal(await page.locator("details.entry").count(), n + 1);
  }));

test("put on the website: every warning looked at, then one file with its check code", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin, "tax");
    await changed(page, () => field(page, "tax.published").locator("select").selectOption("with_tax"));
    await page.getByText("How to put it there").click();
    assert.equal(
      await page.locator('[data-key="save-rates"]').count(),
      0,
      "a warning stands, so no file is offered",
    );
    const tick = page.locator(".put-steps input[type=checkbox]").first();
    await tick.focus();
    await page.keyboard.press("Space");
    assert.ok(await tick.evaluate((t) => t === document.activeElement), "the focus stays on what was ticked");
    const file = await download(page, () => page.locator('[data-key="save-rates"]').click());
    assert.equal(file.name, "rates.json");
    assert.equal(JSON.parse(file.text).tax.published, "with_tax");
    assert.ok(file.text.endsWith("}\n"));
    const code = await page.locator(".put-steps .code").textContent();
    assert.match(code, /^[0-9a-f]{5} [0-9a-f]{5}$/);
    assert.match(await page.locator("#draft-line").textContent(), new RegExp(`${code}, not on the site yet`));
    assert.doesNotMatch(await page.locator(".publish").textContent(), /succe|is now on|are now on/i);
    // The file that was saved is taken again, with the same code.
    await page.reload();
    await page.waitForSelector("body[data-checked]");
    await page.locator("#rates-file").setInputFiles(temporary("rates.json", file.text));
    await page.waitForFunction((c) => document.getElementById("draft-line").textContent.includes(c), code);
    await named(page, "Back to the site's rates").click();
    await page.waitForFunction(
      (c) =>
        !document.getElementById("draft-line").textContent.includes(c) &&
        !/not on the site/.test(document.getElementById("draft-line").textContent),
      code,
    );
  }));

test("texts for a page of one's own: a link and a frame, at this address", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin);
    await page.getByText("The customer's page on a page of your own").click();
    assert.match(await page.locator("#embed-link").inputValue(), new RegExp(`^<a href="${origin}/">`));
    const frame = await page.locator("#embed-frame").inputValue();
    assert.match(frame, new RegExp(`<iframe[^>]* src="${origin}/`));
    assert.match(frame, /addEventListener\("message"/);
    assert.ok(await page.locator("#embed-frame").evaluate((t) => t.readOnly));
  }));

test("a broken file is refused with its reason and its line, and the draft stays", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin);
    await type(page, "labour.fit.rate", "77");
    const give = (text) => page.locator("#rates-file").setInputFiles(temporary("rates.json", text));
    await give('{"format":"underpaint rates 2"}');
    await page.locator('[data-band="arrival"]').waitFor();
    assert.match(
      await page.locator('[data-band="arrival"]').textContent(),
      /draft stays as it was.*newer version/s,
    );
    await give('{"format":"underpaint rates 1",\n"shop":{"na');
    await page.waitForFunction(
      () =>
        /end of the file|closing/.test(document.querySelector('[data-band="arrival"]').textContent) &&
        /line 2/.test(document.querySelector('[data-band="arrival"]').textContent),
    );
    assert.equal(await field(page, "labour.fit.rate").locator("input").inputValue(), "77");
  }));

test("a file with a fault in it can be mended here, once the draft in hand is given up", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin);
    await type(page, "labour.fit.rate", "77");
    const rates = await (await page.request.get(`${origin}/rates.json`)).json();
    rates.labour.paint.rate = "a lot";
    await page.locator("#rates-file").setInputFiles(temporary("mine.json", JSON.stringify(rates)));
    await named(page, "Open it and mend it here").click();
    await page.locator('[data-band="leave"]').waitFor();
    await changed(page, () => named(page, "Put them aside and go on").click());
    await page.waitForFunction(
      () => document.querySelector('[data-path="labour.paint.rate"] input').value === "a lot",
    );
    assert.match(await page.locator("#look-at").textContent(), /Paint: Expected/);
  }));

test("broken rates on the site: said, with the reason, and what can be opened instead", () =>
  visit({ allow: /rates.json|404/ }, async (page, { origin }) => {
    await page.route("**/rates.json", (route) =>
      route.fulfill({
        contentType: "application/json",
        body: '{"format":"underpaint rates 1",\n\n"labour":',
      }),
    );
    await page.goto(`${origin}/rates/`);
    const band = page.locator('[data-band="site"]');
    await band.waitFor();
    assert.match(await band.textContent(), /could not be read, so customers see no figure.*line 3/s);
    await page.waitForSelector("#look-at h2");
    await effectSettled(page);
    assert.match(
      await page.locator(".effect-line").textContent(),
      /cannot be used, so there is nothing to compare/,
    );
    await band.getByRole("button", { name: "Begin from the sample in pounds" }).click();
    await page.waitForFunction(() => document.querySelector('[data-path="currency"] select').value === "GBP");
  }));

test("rates past their date: said, with a way to the date", () =>
  visit({}, async (page, { origin }) => {
    await page.clock.setFixedTime(new Date("2027-06-02T12:00:00"));
    await openRates(page, origin);
    assert.match(await page.locator('[data-band="past"]').textContent(), /ran out on June 1, 2027/);
    await named(page, "Renew the date").click();
    assert.equal(await focusedPath(page), "valid_until");
  }));

test("two tabs on one draft: the second says which is newer, and nothing is merged", () =>
  visit({}, async (page, { origin, context }) => {
    await openRates(page, origin);
    assert.equal(await page.evaluate(() => localStorage.length), 0, "nothing is kept before it is asked for");
    await named(page, "Keep on this device").click();
    await type(page, "labour.metal.rate", "90");
    const other = await context.newPage();
    await openRates(other, origin);
    await other.locator('[data-band="found"]').waitFor();
    assert.match(
      await other.locator('[data-band="found"]').textContent(),
      /last changed.*Another tab may have it/s,
    );
    await named(other, "Go on with the draft").click();
    await other.waitForFunction(
      () => document.querySelector('[data-path="labour.metal.rate"] input').value === "90",
    );
    await type(other, "labour.metal.rate", "95");
    await page.locator('[data-band="tabs"]').waitFor();
    assert.match(await page.locator('[data-band="tabs"]').textContent(), /Another tab has changed the draft/);
    assert.equal(await field(page, "labour.metal.rate").locator("input").inputValue(), "90");
    await named(page, "Go on with the newer one").click();
    await page.waitForFunction(
      () => document.querySelector('[data-path="labour.metal.rate"] input').value === "95",
    );
    await named(page, "Erase from this device").click();
    assert.equal(await page.evaluate(() => localStorage.length), 0);
  }));

test("a kept draft that changed unheard is not written over", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin);
    await named(page, "Keep on this device").click();
    // A tab is not told of what it stores itself: to the page this is another tab's.
    const theirs = await page.evaluate(() => {
      const key = localStorage.key(0);
      const found = JSON.parse(localStorage.getItem(key));
      found.car.labour.metal.rate = "99";
      found.stamp = "another tab";
      localStorage.setItem(key, JSON.stringify(found));
      return localStorage.getItem(key);
    });
    await type(page, "labour.metal.rate", "91");
    await page.locator('[data-band="tabs"]').waitFor();
    assert.equal(await page.evaluate(() => localStorage.getItem(localStorage.key(0))), theirs);
    await named(page, "Keep this one instead").click();
    await page.waitForFunction(
      () => JSON.parse(localStorage.getItem(localStorage.key(0))).car.labour.metal.rate === "91",
    );
  }));

test("another kept draft is never written over without asking, and a full device is said", () =>
  visit({}, async (page, { origin }) => {
    const focused = () => page.evaluate(() => document.activeElement.textContent);
    const lies = () => page.evaluate(() => localStorage.getItem(localStorage.key(0)));
    await openRates(page, origin);
    await named(page, "Keep on this device").click();
    assert.equal(await focused(), "Erase from this device", "the button that was pressed is gone");
    await type(page, "labour.metal.rate", "90");
    const before = await lies();
    await openRates(page, origin);
    await named(page, "Leave it there").click();
    await named(page, "Keep on this device").click();
    assert.match(
      await page.locator(".keep-area").innerText(),
      /Another draft is kept on this device already/,
    );
    assert.equal(await focused(), "Put this one in its place");
    assert.equal(await lies(), before);
    await named(page, "Leave the other one").click();
    assert.equal(await page.locator(".keep-area").textContent(), "");
    assert.equal(await lies(), before);
    await named(page, "Keep on this device").click();
    await named(page, "Put this one in its place").click();
    assert.notEqual(JSON.parse(await lies()).car.labour.metal.rate, "90");
    await page.evaluate(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await type(page, "labour.metal.rate", "91");
    assert.match(await page.locator('[data-band="storage"]').innerText(), /storage is full or switched off/);
    assert.match(await page.locator(".keep-line").textContent(), /not kept on this device/);
  }));

test("a draft that cannot be read is said and can be saved or erased", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin);
    await named(page, "Keep on this device").click();
    await page.evaluate(() =>
      localStorage.setItem(localStorage.key(0), '{"car":{"labour":7},"when":"2026-06-01T10:00","stamp":"x"}'),
    );
    await page.reload();
    await page.locator('[data-band="found"]').waitFor();
    assert.match(await page.locator('[data-band="found"]').textContent(), /cannot be read/);
    const file = await download(page, () => named(page, "Save what is there as a file").click());
    assert.match(file.text, /"labour":7/);
    await named(page, "Erase it").click();
    assert.equal(await page.evaluate(() => localStorage.length), 0);
  }));

test("another page is left for only once it is said that changes would be lost", () =>
  visit({}, async (page, { origin }) => {
    await openRates(page, origin);
    await type(page, "labour.metal.rate", "90");
    await page.getByRole("link", { name: "Words", exact: true }).click();
    await page.locator('[data-band="leave"]').waitFor();
    assert.match(page.url(), /\/rates\//);
    await named(page, "Stay with this draft").click();
    await named(page, "Keep on this device").click();
    await page.getByRole("link", { name: "Words", exact: true }).click();
    await page.waitForURL(/words\.html/);
  }));
