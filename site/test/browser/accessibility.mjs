// Open to everyone: each page in its main state, at four times the size, with wide
// text, in forced colours, without motion, by Tab in the order in which it is read,
// and as a program that reads it aloud finds it. What automated rules find is looked
// for in states that no other test sees. Widths and dark colours: see the tests of
// each page.

import assert from "node:assert/strict";
import test from "node:test";
import { patience, sleep } from "../pace.mjs";
import { axeSource, firstRange, pagesOf, visit } from "./browser.mjs";
import { openJobs, ten } from "./pastjobsfiles.mjs";
import { effectSettled, openRates, type } from "./ratesopen.mjs";
import { openCar, twoDoor } from "./surveycar.mjs";
import { openWhy } from "./whyopen.mjs";

const PAGES = {
  "": {
    open: (page, origin) => firstRange(page, origin),
    says: [
      /heading "The cost range for a car like yours" \[level=1\]/,
      /region "The range":/,
      /listitem: 8 would cost between \$/,
      /img "Each dot stands for one car in twenty: 2 below the range, 16 inside it, 2 above\."/,
      /group: The same in a table/,
      /region "Keep it":/,
      /button "Keep on this device"/,
    ],
  },
  "survey/": {
    open: (page, origin) => openCar(page, origin, twoDoor),
    says: [
      /navigation "Steps"/,
      /link "Survey 0 of 91"|link .*Survey/,
      /grid/,
      /gridcell ".*(not recorded|[Nn]ot yet|nothing).*"|gridcell/,
      /button "Keep on this device"/,
    ],
  },
  "rates/": {
    open: async (page, origin) => {
      await openRates(page, origin);
      await type(page, "labour.metal.rate", "8x");
    },
    says: [
      /heading "Rates" \[level=1\]/,
      /textbox "[^"]*" \[invalid\]|textbox/,
      /navigation "Steps"|list/,
      /heading "1 thing to look at" \[level=2\]/,
      /button "Save a file"/,
    ],
  },
  "past-jobs/": {
    open: (page, origin) => openJobs(page, origin, ten),
    says: [
      /heading .*\[level=1\]/,
      /table/,
      /columnheader/,
      /button "Keep on this device"/,
      /checkbox|button/,
    ],
  },
  "why/": {
    open: (page, origin) => openWhy(page, origin),
    says: [/heading .*\[level=1\]/, /button "Open a car file"/, /navigation/, /button/],
  },
};

async function axe(page, where, rules = {}) {
  if (!(await page.evaluate(() => Boolean(globalThis.axe)))) await page.evaluate(axeSource);
  const found = await page.evaluate(
    (more) =>
      globalThis.axe.run(document, {
        runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
        rules: { region: { enabled: false }, ...more },
      }),
    rules,
  );
  assert.deepEqual(
    found.violations.map(
      (v) =>
        `${where}: ${v.id}: ${v.nodes
          .slice(0, 3)
          .map((n) => n.html.slice(0, 120))
          .join(" ; ")}`,
    ),
    [],
  );
  assert.ok(found.passes.length > 5, `${where}: axe checked something`);
}

const over = (page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** What is cut off: hidden text of something that shows less than it holds. */
const cut = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("main *, header *, footer *")]
      .filter((n) => {
        const s = getComputedStyle(n);
        if (
          n.closest(".visually-hidden, svg") ||
          s.clipPath !== "none" ||
          !n.checkVisibility() ||
          !n.textContent.trim()
        )
          return false;
        const hides = (v) => v === "hidden" || v === "clip";
        return (
          (hides(s.overflowX) && n.scrollWidth > n.clientWidth + 1) ||
          (hides(s.overflowY) && n.scrollHeight > n.clientHeight + 1)
        );
      })
      .map((n) => n.outerHTML.slice(0, 100)),
  );

/** Goes through the page by Tab; gives each stop's place in the document and on the
 *  screen, and whether it can be seen there. */
async function stops(page, most = 70) {
  await page.evaluate(() => {
    document.activeElement.blur();
    getSelection().removeAllRanges();
    scrollTo(0, 0);
    globalThis.passed = new Set();
  });
  const found = [];
  for (let n = 0; n < most; n++) {
    await page.keyboard.press("Tab");
    const stop = await page.evaluate(() => {
      const at = document.activeElement;
      if (at === document.body || globalThis.passed.has(at)) return null;
      globalThis.passed.add(at);
      const box = (at.matches(".visually-hidden") ? at.parentElement : at).getBoundingClientRect();
      const style = getComputedStyle(at);
      const order = [...document.querySelectorAll("*")].indexOf(at);
      return {
        order,
        top: Math.round(box.top + scrollY),
        inView: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
        ring: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
        what: at.outerHTML.slice(0, 90),
      };
    });
    if (!stop) break;
    found.push(stop);
  }
  return found;
}

const SPACING =
  "* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important } p { margin-bottom: 2em !important }";

for (const [name, { open, says }] of Object.entries(PAGES)) {
  test(`/${name}: at 400 %, with wide text, in forced colours, without motion, by Tab in reading order, and as it is read aloud`, () =>
    visit({ colorScheme: "light" }, async (page, { origin }) => {
      await open(page, origin);
      const aloud = await page.locator("body").ariaSnapshot();
      for (const must of says) assert.match(aloud, must, `read aloud:\n${aloud.slice(0, 3000)}`);
      assert.doesNotMatch(
        aloud,
        /- (button|link|textbox|checkbox|combobox)(:| \[|$)/m,
        "everything that is used has a name",
      );

      // 1280 by 1024 at 400 % is 320 by 256 (WCAG 2.2, 1.4.10).
      await page.setViewportSize({ width: 320, height: 256 });
      assert.ok((await over(page)) <= 0, `${await over(page)} pixels too wide at 400 %`);
      const seen = await stops(page);
      assert.ok(seen.length > 3, `${seen.length} stops`);
      for (const [n, stop] of seen.entries()) {
        assert.ok(stop.ring, `the focus can be seen: ${stop.what}`);
        assert.ok(stop.inView, `the focus is in view: ${stop.what}`);
        if (n === 0) continue;
        assert.ok(stop.order > seen[n - 1].order, `Tab goes back in the document: ${stop.what}`);
        assert.ok(
          stop.top >= seen[n - 1].top - 60,
          `Tab goes up the screen, from ${seen[n - 1].what} to ${stop.what}`,
        );
      }
      assert.equal(
        await page.locator("[tabindex]").evaluateAll((all) => all.filter((n) => n.tabIndex > 0).length),
        0,
      );

      await page.setViewportSize({ width: 360, height: 740 });
      await page.evaluate((text) => {
        const sheet = new CSSStyleSheet();
        sheet.replaceSync(text);
        document.adoptedStyleSheets = [sheet];
      }, SPACING);
      assert.ok((await over(page)) <= 0, "too wide with wide text (WCAG 2.2, 1.4.12)");
      assert.deepEqual(await cut(page), [], "cut off with wide text");
      await page.evaluate(() => {
        document.adoptedStyleSheets = [];
      });

      await page.setViewportSize({ width: 1280, height: 900 });
      await page.emulateMedia({ forcedColors: "active", reducedMotion: "reduce" });
      // The colours are then the device's; axe-core reckons with those of the sheet.
      await axe(page, `/${name} in forced colours`, { "color-contrast": { enabled: false } });
      // What is used must have an edge there: backgrounds are all alike.
      const flat = await page
        .locator(
          "main button:visible, main input:visible:not([type=file]):not([type=checkbox]):not([type=radio]), main select:visible",
        )
        .evaluateAll((all) =>
          all
            .filter((n) => {
              const s = getComputedStyle(n);
              return (
                s.borderTopStyle === "none" &&
                !/underline/.test(s.textDecorationLine) &&
                s.appearance === "none" &&
                !n.closest("table")
              );
            })
            .map((n) => n.outerHTML.slice(0, 90)),
        );
      assert.deepEqual(flat, [], "without an edge in forced colours");
      const moving = await page.evaluate(() => [
        ...document.getAnimations().map((a) => a.effect?.target?.outerHTML.slice(0, 80)),
        ...[...document.querySelectorAll("*")]
          .filter((n) => {
            const s = getComputedStyle(n);
            return (
              (s.animationName !== "none" ||
                s.transitionDuration.split(",").some((d) => parseFloat(d) > 0)) &&
              n.id !== "no-start"
            );
          })
          .map((n) => n.outerHTML.slice(0, 80)),
      ]);
      assert.deepEqual(moving, [], "moves although less motion is asked for");
      await page.emulateMedia({ forcedColors: "none", reducedMotion: "no-preference" });
      await sleep(600);
      assert.deepEqual(
        await page.evaluate(
          () =>
            document
              .getAnimations()
              .filter(
                (a) => a.playState === "running" && a.effect.getComputedTiming().iterations === Infinity,
              ).length,
        ),
        0,
        "moves by itself",
      );
    }));
}

test("every plain page: no fault that a program can find, light, dark and in forced colours; at 400 % and with wide text nothing is lost", () =>
  visit({}, async (page, { origin, dir }) => {
    for (const name of pagesOf(dir).filter((n) => n.endsWith(".html"))) {
      await page.setViewportSize({ width: 1280, height: 900 });
      await page.goto(`${origin}/${name}`);
      for (const media of [{ colorScheme: "light" }, { colorScheme: "dark" }, { forcedColors: "active" }]) {
        await page.emulateMedia(media);
        await axe(
          page,
          `${name} ${JSON.stringify(media)}`,
          media.forcedColors ? { "color-contrast": { enabled: false } } : {},
        );
      }
      await page.emulateMedia({ colorScheme: "light", forcedColors: "none" });
      await page.setViewportSize({ width: 320, height: 256 });
      assert.ok((await over(page)) <= 0, `${name}: too wide at 400 %`);
      await page.evaluate((text) => {
        const sheet = new CSSStyleSheet();
        sheet.replaceSync(text);
        document.adoptedStyleSheets = [sheet];
      }, SPACING);
      assert.ok((await over(page)) <= 0, `${name}: too wide with wide text`);
      assert.deepEqual(await cut(page), [], name);
      const pdf = await page.pdf({ format: "A4" });
      assert.ok(pdf.length > 3000, `${name} can be printed`);
    }
  }));

/** States that come seldom: something is found, refused, dead, or without connection. */
test("found, refused, without connection, stopped: no fault that a program can find, light and dark", () =>
  visit({ allow: /404|Failed|ERR_INTERNET/ }, async (page, { origin, context }) => {
    const both = async (where) => {
      for (const colorScheme of ["light", "dark"]) {
        await page.emulateMedia({ colorScheme });
        await axe(page, `${where}, ${colorScheme}`);
      }
    };
    await page.goto(`${origin}/about.html`);
    const shelves = {
      "underpaint kept car 1": twoDoor,
      "underpaint this car 1": twoDoor,
      "underpaint past jobs 1": ten,
    };
    await page.evaluate((all) => {
      for (const [key, car] of Object.entries(all))
        localStorage.setItem(key, JSON.stringify({ car, when: "2026-06-20T14:02:31", stamp: "x" }));
      localStorage.setItem("underpaint rates draft 1", "{");
    }, shelves);
    for (const [name, band] of [
      ["", "kept-here"],
      ["survey/", "found"],
      ["rates/", "found"],
      ["past-jobs/", "found"],
    ]) {
      await page.goto(`${origin}/${name}`);
      await page.locator(`[data-band="${band}"]`).waitFor({ timeout: patience(240_000) });
      await page.waitForFunction(() => document.getElementById("check-code").textContent);
      await page
        .locator("input[type=file]")
        .first()
        .setInputFiles({ name: "a.json", mimeType: "application/json", buffer: Buffer.from("7") });
      await page.locator('[data-band="arrival"]').waitFor();
      await context.setOffline(true);
      await page.waitForFunction(() => document.getElementById("offline").textContent);
      await both(`/${name}: found, refused, without connection`);
      await context.setOffline(false);
    }
    await page.route("**/*.wasm", (route) => route.fulfill({ status: 404, body: "" }));
    for (const name of ["", "survey/", "rates/", "past-jobs/", "why/"]) {
      await page.goto(`${origin}/${name}`);
      await page.locator('[data-band="dead"]').waitFor({ timeout: patience(240_000) });
      await both(`/${name}: stopped`);
    }
  }));

test("rates: what they do is spoken once after a change, when it has settled, and not before", () =>
  visit({}, async (page, { origin }) => {
    await page.addInitScript(() => {
      globalThis.spoken = [];
      addEventListener("DOMContentLoaded", () =>
        new MutationObserver(() => {
          const text = document.getElementById("status").textContent;
          if (text) globalThis.spoken.push([text, document.querySelector(".effect")?.dataset.state]);
        }).observe(document.getElementById("status"), { childList: true }),
      );
    });
    await openRates(page, origin);
    await effectSettled(page);
    assert.deepEqual(
      await page.evaluate(() => globalThis.spoken),
      [],
      "nothing was changed, nothing is spoken",
    );
    await type(page, "labour.metal.rate", "140");
    await page.waitForFunction(() => globalThis.spoken.length > 0, null, { timeout: patience(240_000) });
    const spoken = await page.evaluate(() => globalThis.spoken);
    assert.equal(spoken.length, 1, `${spoken}`);
    assert.match(spoken[0][0], /\$/);
    assert.equal(spoken[0][1], "settled");
  }));
