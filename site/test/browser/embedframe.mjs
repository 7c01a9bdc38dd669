// The customer's page in a frame of another site: its height, what passes between
// the two pages, links, storage, paper, and the page that tells a shop how.

import assert from "node:assert/strict";
import test from "node:test";
import { sleep, until } from "../pace.mjs";
import { axeSource, visit } from "./browser.mjs";
import { embedded, rangeInFrame } from "./embedhost.mjs";

const inner = (frame) =>
  frame.evaluate(() => ({
    height: Math.ceil(document.documentElement.getBoundingClientRect().height),
    scrolls: document.documentElement.scrollHeight > document.documentElement.clientHeight,
    wide: document.documentElement.scrollWidth - document.documentElement.clientWidth,
  }));
const outer = (page) => page.locator("#cost-range").evaluate((n) => n.clientHeight);

/** Waits until the frame has the height of what is in it. */
async function fits(page, frame) {
  const same = await until(async () => (await outer(page)) === (await inner(frame)).height, 5000);
  if (!same)
    assert.fail(`the frame is ${await outer(page)} high, its content ${(await inner(frame)).height}`);
}

/** axe-core, with the rules for WCAG 2.2 A and AA and its best practice. */
async function axe(page, where) {
  await page.evaluate(axeSource);
  const found = await page.evaluate(() =>
    globalThis.axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      rules: { region: { enabled: false } },
    }),
  );
  assert.deepEqual(
    found.violations.map((v) => `${where}: ${v.id}: ${v.nodes.map((n) => n.target).join(" ; ")}`),
    [],
  );
  assert.ok(found.passes.length > 5, `${where}: axe checked something`);
}

for (const width of [360, 1280]) {
  test(`in a frame of another site, ${width} pixels: the frame takes the height of every screen`, () =>
    embedded({ viewport: { width, height: 800 } }, async (page, frame, { messages }) => {
      await fits(page, frame);
      await frame.locator('[data-answer="four_door_saloon"]').click();
      await frame.getByLabel("Year").waitFor();
      await fits(page, frame);
      await page.evaluate(() => history.back());
      await frame.locator('[data-answer="four_door_saloon"]').waitFor();
      await rangeInFrame(frame);
      await fits(page, frame);
      // Not by the mouse: a browser draws no frame that has left the window, and the mouse
      // waits for what it points at to stand still.
      for (const fold of await frame.locator("summary:visible").all()) await fold.evaluate((n) => n.click());
      await fits(page, frame);
      const now = await inner(frame);
      assert.equal(now.scrolls, false, "nothing to scroll inside the frame");
      assert.ok(now.wide <= 0, `${now.wide} pixels too wide`);
      await axe(frame, "range in a frame");
      const told = await messages();
      assert.ok(new Set(told.map((m) => m.height)).size >= 4, "the height followed the screens");
      for (const message of told) {
        assert.deepEqual(Object.keys(message), ["underpaint", "height"]);
        assert.equal(message.underpaint, "height");
        assert.ok(Number.isInteger(message.height) && message.height > 0);
      }
    }));
}

test("the shop's code takes a height from the frame only, and only a sound one", () =>
  embedded(
    {
      more: (tool) => `<iframe id="other" src="${tool}/about.html" title="other"></iframe>`,
    },
    async (page, frame, { messages }) => {
      await fits(page, frame);
      const before = await outer(page);
      const count = (await messages()).length;
      const bad = [NaN, Infinity, -Infinity, -5, 0, 1e9, "700", null, [700], { valueOf: 1 }];
      await frame.evaluate((heights) => {
        for (const height of [...heights, NaN, Infinity])
          parent.postMessage({ underpaint: "height", height }, "*");
        for (const other of [null, "height", 700, { height: 700 }, { underpaint: "width", height: 700 }])
          parent.postMessage(other, "*");
      }, bad);
      const other = await (await page.$("#other")).contentFrame();
      await other.waitForLoadState();
      await other.evaluate(() => parent.postMessage({ underpaint: "height", height: 700 }, "*"));
      await page.evaluate(() => window.postMessage({ underpaint: "height", height: 700 }, "*"));
      await page.waitForFunction((n) => globalThis.received.length >= n, count + 19);
      assert.equal(await outer(page), before);
      await frame.evaluate(() => parent.postMessage({ underpaint: "height", height: 700 }, "*"));
      await page.waitForFunction(() => document.getElementById("cost-range").clientHeight === 700);
      // Another page in the same frame is not believed.
      const held = (await messages()).length;
      await page.locator("#cost-range").evaluate((n) => {
        n.srcdoc = "<script>parent.postMessage({ underpaint: 'height', height: 900 }, '*')</" + "script>";
      });
      await page.waitForFunction((n) => globalThis.received.length > n, held);
      assert.equal(await outer(page), 700);
    },
  ));

test("the page listens to no message, and outside a frame it sends none", () =>
  embedded({}, async (page, frame, { context, tool }) => {
    assert.deepEqual(
      await frame.evaluate(() => [
        globalThis.listened.includes("message"),
        globalThis.listened.length > 0,
        window.onmessage,
      ]),
      [false, true, null],
    );
    const before = await frame.locator("body").innerText();
    await page.evaluate(() => {
      const { contentWindow } = document.getElementById("cost-range");
      for (const text of [
        "take over",
        { kind: "start" },
        { underpaint: "height", height: 1 },
        { step: "range" },
        { underpaint: "car", car: {} },
      ])
        contentWindow.postMessage(text, "*");
    });
    await sleep(300);
    assert.equal(await frame.locator("body").innerText(), before);
    const alone = await context.newPage();
    await alone.addInitScript(() => {
      globalThis.own = [];
      window.addEventListener("message", (e) => globalThis.own.push(e.data));
    });
    await alone.goto(`${tool}/`);
    await alone.waitForFunction(() => document.getElementById("check-code").textContent);
    assert.deepEqual(
      await alone.evaluate(() => [
        globalThis.own,
        document.documentElement.dataset.framed,
        document.getElementById("framed-note"),
        document.querySelectorAll("[target]").length,
      ]),
      [[], undefined, null, 0],
    );
  }));

test("links leave the frame in a new tab, say so, and the answers stay", () =>
  embedded({}, async (_page, frame, { context, tool }) => {
    await frame.locator('[data-answer="four_door_saloon"]').click();
    const links = await frame
      .locator("a[href]")
      .evaluateAll((all) => all.map((a) => [a.protocol, a.target, a.rel, a.textContent]));
    assert.ok(links.length >= 5);
    for (const [protocol, target, rel, text] of links) {
      const leaves = /^https?:$/.test(protocol);
      assert.equal(target, leaves ? "_blank" : "", text);
      if (leaves) {
        assert.equal(rel, "noopener", text);
        assert.match(text, /\(opens in a new tab\)$/);
      }
    }
    assert.match(await frame.locator("#framed-note").innerText(), /open in a new tab; your answers stay/);
    const [tab] = await Promise.all([
      context.waitForEvent("page"),
      frame.getByRole("link", { name: /About the figures/ }).click(),
    ]);
    await tab.waitForLoadState();
    assert.equal(tab.url(), `${tool}/about.html`);
    assert.equal(await tab.evaluate(() => window.opener), null);
    assert.match(await frame.locator("h1:visible").textContent(), /What year/);
  }));

test("the next question is in view, also where the frame stands far down the page", () =>
  embedded({ viewport: { width: 360, height: 640 } }, async (page, frame) => {
    await fits(page, frame);
    const last = frame.locator(".answer").last();
    await last.scrollIntoViewIfNeeded();
    await frame.locator('[data-answer="four_door_saloon"]').click();
    await frame.getByLabel("Year").waitFor();
    await fits(page, frame);
    const box = await frame.locator("h1:visible").boundingBox();
    assert.ok(box.y >= 0 && box.y + box.height <= 640, `the heading lies at ${box.y}`);
  }));

test("in a frame of the same site: kept and found again in it; nothing is taken in for use without a connection", () =>
  embedded({ sameSite: true, serviceWorkers: "allow" }, async (_page, frame, { context, tool }) => {
    await rangeInFrame(frame);
    await frame.getByRole("button", { name: "Keep on this device" }).click();
    await frame.waitForFunction(() =>
      /Kept on this device/.test(document.querySelector(".keep-said").textContent),
    );
    const workers = (where) =>
      where.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length);
    assert.equal(await workers(frame), 0);
    const alone = await context.newPage();
    await alone.goto(`${tool}/`);
    await alone.getByRole("button", { name: "Open it" }).waitFor();
    await alone.waitForFunction(async () => (await navigator.serviceWorker.getRegistrations()).length > 0);
  }));

// The browser of these tests refuses storage of every kind to frames of other
// sites, as others do by their own choice or their owner's.
test("storage that the browser refuses to the frame breaks nothing", () =>
  embedded({}, async (_page, frame) => {
    assert.equal(
      await frame.evaluate(() => {
        try {
          return localStorage.length;
        } catch (e) {
          return e.name;
        }
      }),
      "SecurityError",
    );
    assert.equal(await frame.locator(".band").count(), 0, "nothing is said of a car that was never kept");
    await rangeInFrame(frame);
    assert.ok(await frame.locator(".sentence").isVisible());
    await frame.getByRole("button", { name: "Keep on this device" }).click();
    await frame.waitForFunction(() =>
      /Could not keep this on the device/.test(document.querySelector(".keep-said").textContent),
    );
    assert.ok(await frame.getByRole("button", { name: "Save a file" }).first().isVisible());
  }));

test("nothing essential is left out in a frame, and Print prints the frame, unfolded", () =>
  embedded({}, async (page, frame) => {
    await rangeInFrame(frame);
    const shown = await frame.locator("body").innerText();
    for (const must of [
      "not an estimate, not a quotation and not a ceiling",
      "1 would cost more",
      "Rates of",
      "valid until",
      "Rates check code",
      "Not in the range",
      "How sure is this",
    ])
      assert.ok(shown.includes(must), must);
    assert.ok(await frame.locator("#shop-name").isVisible());
    assert.ok((await frame.locator(".caution").count()) > 3);
    const prepared = await frame.evaluate(() => {
      let seen = null;
      window.print = () => {
        dispatchEvent(new Event("beforeprint"));
        seen = [...document.querySelectorAll("details[data-paper]")].map((d) => d.open);
        dispatchEvent(new Event("afterprint"));
      };
      [...document.querySelectorAll("button")].find((b) => b.textContent === "Print").click();
      return seen;
    });
    assert.ok(prepared?.length > 2 && prepared.every(Boolean), String(prepared));
    await page.emulateMedia({ media: "print" });
    assert.ok(await frame.locator(".paper").first().isVisible());
    assert.equal(await frame.locator("button:visible").count(), 0);
    const text = await frame.locator("main").innerText();
    for (const must of ["not an estimate, not a quotation", "Rates check code", "#v1."])
      assert.ok(text.includes(must), must);
  }));

test("the page for the shop and the other plain ones: no fault that a program can find, nothing too wide", () =>
  visit({ viewport: { width: 320, height: 640 } }, async (page, { origin }) => {
    for (const name of ["embed", "about", "privacy", "words", "accessibility"]) {
      await page.goto(`${origin}/${name}.html`);
      await axe(page, name);
      const over = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      assert.ok(over <= 0, `${name}: ${over} pixels too wide`);
    }
  }));
