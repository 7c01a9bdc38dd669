// Nothing that was kept is lost: tabs that are killed, a browser that is killed, what
// lies on the device in another form than it should, files that are none.

import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test from "node:test";
import { chromium } from "playwright-core";
import { patience, until } from "../pace.mjs";
import { FLAGS, firstRange, press, STARTS, usual, visit, world } from "./browser.mjs";
import { entry, file, job, openPage as openJobsPage } from "./pastjobsfiles.mjs";
import { openRates, type } from "./ratesopen.mjs";
import { openCar, stand, twoDoor } from "./surveycar.mjs";
import { openWhy } from "./whyopen.mjs";

const named = (page, name) => page.getByRole("button", { name, exact: true });
const lies = (page, key) => page.evaluate((k) => localStorage.getItem(k), key);

/** Adds a job to those in hand. */
async function addJob(page, name) {
  await page.locator("[data-key=enter]").click();
  await entry(page, "name").fill(name);
  await entry(page, "finished").fill("2026-06-20");
  await entry(page, "came_to").fill("15000");
  await entry(page, "said.low").fill("10000");
  await entry(page, "said.high").fill("20000");
  await page.keyboard.press("Enter");
  await page.waitForSelector(`[data-job="${name}"]`);
}

/** The pages that keep something: how it is begun, one more press, what lies there
 *  then, and how it is found again. press(page, n): the n-th, from 1. */
const KEEPERS = {
  "": {
    key: "underpaint kept car 1",
    open: (page, origin) => firstRange(page, origin),
    keep: (page) => named(page, "Keep on this device").click(),
    press: async (page, n) => {
      await page.getByRole("button", { name: /Change: Kept/ }).click();
      await press(page, ["garage", "open_shed_or_outside", "driven_all_year"][n % 3]);
    },
    held: (car) => car.life[0].kept,
    want: (n) => ["garage", "open_shed_or_outside", "driven_all_year"][n % 3],
    found: "kept-here",
  },
  "survey/": {
    key: "underpaint this car 1",
    open: (page, origin) => openCar(page, origin, twoDoor),
    keep: (page) => named(page, "Keep on this device").click(),
    press: async (page) => {
      await stand(page);
      await page.keyboard.press("s");
    },
    held: (car) => car.survey.length,
    want: (n) => n,
    found: "found",
  },
  "rates/": {
    key: "underpaint rates draft 1",
    open: (page, origin) => openRates(page, origin),
    keep: (page) => named(page, "Keep on this device").click(),
    press: (page, n) => type(page, "labour.metal.rate", `${80 + n}`),
    held: (rates) => rates.labour.metal.rate,
    want: (n) => `${80 + n}`,
    found: "found",
  },
  "past-jobs/": {
    key: "underpaint past jobs 1",
    open: async (page, origin) => {
      await openJobsPage(page, origin);
      await page.locator("[data-key=begin]").click();
      await page.waitForSelector("[data-key=enter]");
    },
    keep: (page) => page.locator("[data-key=keep]").click(),
    press: (page, n) => addJob(page, `j${n}`),
    held: (jobs) => jobs.jobs.length,
    want: (n) => n,
    found: "found",
  },
};

/** What lies there, as the page would find it. */
const heldBy = async (page, { key, held }) => {
  const text = await lies(page, key);
  return text === null ? null : held(JSON.parse(text).car);
};

for (const name of ["", "rates/", "past-jobs/"]) {
  test(`/${name}: a tab that is killed while it is used is found again up to the last press`, () =>
    visit({ allow: /./ }, async (page, { origin, context }) => {
      const k = KEEPERS[name];
      await k.open(page, origin);
      await k.keep(page);
      for (const n of [1, 2]) await k.press(page, n);
      const crashed = page.waitForEvent("crash");
      page.goto("chrome://crash").catch(() => {});
      await crashed;
      const again = await context.newPage();
      await again.goto(`${origin}/${name}`);
      await again.locator(`[data-band="${k.found}"]`).waitFor({ timeout: patience(240_000) });
      assert.equal(await heldBy(again, k), k.want(2));
    }));
}

/** A browser of its own with its own profile; kill() ends all its processes, as a
 *  dying battery does. */
async function ownBrowser(profile) {
  const told = join(profile, "DevToolsActivePort");
  rmSync(told, { force: true });
  const child = spawn(
    process.env.CHROMIUM ?? "/usr/bin/chromium",
    [...FLAGS, "--remote-debugging-port=0", `--user-data-dir=${profile}`, "about:blank"],
    { stdio: "ignore", detached: true },
  );
  const ended = new Promise((done) => child.once("exit", done));
  await until(() => existsSync(told) && readFileSync(told, "utf8").includes("\n"), STARTS);
  const [port, path] = readFileSync(told, "utf8").split("\n");
  const browser = await chromium.connectOverCDP(`ws://127.0.0.1:${port}${path}`, {
    timeout: patience(STARTS),
  });
  const context = usual(browser.contexts()[0]);
  const page = await context.newPage();
  return {
    page,
    context,
    kill: async () => {
      try {
        process.kill(-child.pid, "SIGKILL");
      } catch {
        /* It is dead. */
      }
      await ended;
    },
  };
}

/** Takes a folder away. A process that is not quite dead may still put files in it. */
async function removed(folder) {
  let fault = null;
  const gone = await until(() => {
    try {
      rmSync(folder, { recursive: true, force: true });
      return true;
    } catch (error) {
      fault = error;
      return false;
    }
  }, 10_000);
  if (!gone) throw fault;
}

/** How far a shelf is written on the disk: strict transactions end only then. */
const onDisk = (page, key, count) =>
  page.evaluate(
    async ([k, n, most, pause]) => {
      const written = () =>
        new Promise((done) => {
          const asked = indexedDB.open("underpaint kept 1");
          asked.onsuccess = () => {
            const got = asked.result.transaction("shelves").objectStore("shelves").get(k);
            got.onsuccess = () => {
              asked.result.close();
              done(got.result?.count ?? 0);
            };
          };
        });
      for (const end = performance.now() + most; (await written()) < n; ) {
        if (performance.now() > end) throw new Error(`${k}: ${await written()} of ${n} are on the disk`);
        await new Promise((later) => setTimeout(later, pause));
      }
    },
    [key, count, patience(60_000), patience(200)],
  );

test("a browser that is killed: all but the last press of each page of the shop is there when it starts again", async () => {
  const { origin } = await world();
  const profile = mkdtempSync(join(tmpdir(), "profile-"));
  const presses = 6;
  const started = [];
  try {
    const first = await ownBrowser(profile);
    started.push(first);
    const names = ["survey/", "rates/", "past-jobs/"];
    const pages = [];
    for (const name of names) {
      const page = await first.context.newPage();
      await KEEPERS[name].open(page, origin);
      await KEEPERS[name].keep(page);
      pages.push(page);
    }
    for (const [i, name] of names.entries()) {
      await pages[i].bringToFront();
      for (let n = 1; n <= presses; n++) await KEEPERS[name].press(pages[i], n);
      await onDisk(pages[i], KEEPERS[name].key, presses); // the keeping itself was the first
    }
    await first.kill();
    const second = await ownBrowser(profile);
    started.push(second);
    for (const name of names) {
      await second.page.goto(`${origin}/${name}`);
      await second.page.locator('[data-band="found"]').waitFor();
      const n = await heldBy(second.page, KEEPERS[name]);
      assert.ok(n === KEEPERS[name].want(presses) || n === KEEPERS[name].want(presses - 1), `${name}: ${n}`);
    }
  } finally {
    for (const one of started) await one.kill();
    await removed(profile);
  }
});

const HOSTILE = {
  "no JSON": '{"car":',
  "an error page": "<!doctype html><title>404</title>",
  "nothing in it": '{"car":null,"when":"2026-06-01T10:00","stamp":"x"}',
  "a list": '{"car":[],"when":"2026-06-01T10:00","stamp":"x"}',
  "no day": '{"car":{},"when":"<img src=x onerror=alert(1)>","stamp":"x"}',
  "a day that there is not": '{"car":{},"when":"2026-99-99T10:00","stamp":"x"}',
  "a prototype":
    '{"__proto__":{"polluted":1},"car":{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},"format":"underpaint car 1"},"when":"2026-06-01T10:00","stamp":"x"}',
  "a newer version":
    '{"car":{"format":"underpaint car 9","bodies":["two_door_unitary"],"made":{"year":1967}},"when":"2126-06-01T10:00:00","stamp":"x","count":4}',
};
/** A press that is tried on what was found: it may be refused, nothing more. */
const GO_ON = ["Open it", "Go on", "Go on with the draft"];

for (const name of Object.keys(KEEPERS)) {
  test(`/${name}: what lies on the device in another form is refused in words, never half read, never thrown away, and can be had as a file`, () =>
    visit({ allow: /Trusted|violates/ }, async (page, { origin, context }) => {
      const { key, found } = KEEPERS[name];
      await page.goto(`${origin}/about.html`);
      for (const [what, text] of Object.entries(HOSTILE)) {
        await page.evaluate(([k, t]) => localStorage.setItem(k, t), [key, text]);
        const tab = await context.newPage();
        await tab.goto(`${origin}/${name}`);
        const band = tab.locator(`[data-band="${found}"]`);
        await band.waitFor({ timeout: patience(240_000) });
        await tab.waitForFunction(() => document.getElementById("check-code").textContent);
        for (const way of GO_ON) {
          const button = band.getByRole("button", { name: way, exact: true });
          if ((await button.count()) === 0) continue;
          await button.click();
          await tab
            .locator(
              '[data-band="arrival"], [data-band="found"]:has-text("could not be read"), [data-band="kept-here"]',
            )
            .first()
            .waitFor();
        }
        if (name === "rates/")
          assert.match(
            await tab.locator("#draft-line").textContent(),
            /^Rates of June 3, 2026/,
            `${what}: below are the rates of the site`,
          );
        else
          assert.equal(
            await tab.locator(".sentence, .dots, #steps a, .jobs-table").count(),
            0,
            `${what}: nothing of it is shown`,
          );
        assert.equal(
          await tab.locator('[data-band="dead"], [data-band="broken"]').count(),
          0,
          `${what}: the page goes on`,
        );
        assert.equal(await lies(tab, key), text, `${what}: it lies there as it did`);
        const save = tab.getByRole("button", { name: /^Save (what is there as )?a file$/ }).first();
        const [download] = await Promise.all([tab.waitForEvent("download"), save.click()]);
        const had = readFileSync(await download.path(), "utf8");
        assert.ok(
          had === text || had === JSON.stringify(JSON.parse(text).car),
          `${what}: the file holds what lies there`,
        );
        assert.deepEqual(
          await tab.evaluate(() => [Object.keys(Object.prototype).length, {}.polluted ?? null]),
          [0, null],
          what,
        );
        await tab.close();
      }
    }));
}

/** Without its mark; with it, browsers read such a file as what it is. */
const utf16 = (text) => Buffer.from(text, "utf16le");
const good = JSON.stringify(twoDoor);
const FILES = {
  "0 bytes": "",
  "1 byte": "{",
  "a number": "7",
  "half a file": good.slice(0, good.length >> 1),
  "another kind": "PK\u0003\u0004 not JSON",
  "two bytes a letter": utf16(good),
  "nested too deep": `{"format":"underpaint car 1","life":${"[".repeat(100000)}${"]".repeat(100000)}}`,
  "a prototype": '{"__proto__":{"polluted":1},"format":"underpaint car 1"}',
};
/** One more byte than each page reads: files.js, openshop.js, past-jobs/jobfile.js. */
const MOST = { "rates/": 2097152, "past-jobs/": 33554432 };
/** Each page with something in it, and what must not change. */
const OPENED = {
  "": {
    open: (page, origin) => firstRange(page, origin),
    drop: true,
    same: (page) => page.locator(".sentence").first().innerText(),
  },
  "survey/": {
    open: (page, origin) => openCar(page, origin, twoDoor),
    drop: true,
    same: (page) => page.locator("#steps").innerText(),
  },
  "rates/": {
    open: (page, origin) => openRates(page, origin),
    same: (page) => page.locator("#draft-line").innerText(),
  },
  "past-jobs/": {
    open: async (page, origin) => {
      await KEEPERS["past-jobs/"].open(page, origin);
      await addJob(page, "one");
      await page.locator(".jobs-table", { hasText: "inside" }).waitFor();
    },
    drop: true,
    same: (page) => page.locator(".jobs-table").innerText(),
  },
  "why/": {
    open: async (page, origin) => {
      await openWhy(page, origin);
      await page.locator(".hand-line", { hasText: "standard" }).waitFor();
    },
    same: (page) => page.locator(".hand-line").innerText(),
  },
};

for (const [name, { open, drop, same }] of Object.entries(OPENED)) {
  test(`/${name}: a file that is none is refused in words and nothing else changes`, () =>
    visit({}, async (page, { origin }) => {
      await open(page, origin);
      const before = await same(page);
      for (const [what, content] of Object.entries({ ...FILES, "too large": (MOST[name] ?? 262144) + 1 })) {
        await page.evaluate(() => document.querySelector('[data-band="arrival"]')?.remove());
        if (drop) {
          const data = await page.evaluateHandle(
            (given) => {
              const bytes =
                typeof given === "number"
                  ? new Uint8Array(given)
                  : Uint8Array.from(atob(given), (c) => c.charCodeAt(0));
              const dropped = new DataTransfer();
              dropped.items.add(new File([bytes], "a.json"));
              return dropped;
            },
            typeof content === "number" ? content : Buffer.from(content).toString("base64"),
          );
          await page.dispatchEvent("body", "drop", { dataTransfer: data });
        } else
          await page
            .locator("input[type=file]")
            .first()
            .setInputFiles({
              name: "a.json",
              mimeType: "application/json",
              buffer: typeof content === "number" ? Buffer.alloc(content, " ") : Buffer.from(content),
            });
        const band = page.locator('[data-band="arrival"]');
        await band.waitFor({ timeout: patience(240_000) }).catch(() => assert.fail(`${what}: not refused`));
        assert.ok((await band.innerText()).length > 15, `${what}: a sentence`);
        assert.equal(await same(page), before, `${what}: nothing else changes`);
        assert.equal(
          await page.locator('[data-band="dead"], [data-band="restarted"]').count(),
          0,
          `${what}: the sums go on`,
        );
        assert.equal(await page.evaluate(() => ({}).polluted ?? null), null);
      }
    }));
}

test("a clock that was set back or forward: what is kept is still offered, and lies there as it did", () =>
  visit({}, async (page, { origin, context }) => {
    await page.goto(`${origin}/about.html`);
    const kept = { "": twoDoor, "survey/": twoDoor, "past-jobs/": file([job("a", "15000")]) };
    for (const [name, car] of Object.entries(kept))
      await page.evaluate(
        ([k, t]) => localStorage.setItem(k, t),
        [KEEPERS[name].key, JSON.stringify({ car, when: "2026-06-20T14:02:31", stamp: "x" })],
      );
    for (const year of ["1999", "2099"]) {
      for (const name of Object.keys(kept)) {
        const tab = await context.newPage();
        await tab.clock.setFixedTime(new Date(`${year}-01-01T00:00:00`));
        await tab.goto(`${origin}/${name}`);
        await tab
          .locator(`[data-band="${KEEPERS[name].found}"]`, { hasText: "June 20, 2026" })
          .waitFor({ timeout: patience(240_000) });
        assert.deepEqual(
          JSON.parse(await lies(tab, KEEPERS[name].key)).car,
          kept[name],
          `${name} in ${year}`,
        );
        await tab.close();
      }
    }
  }));

test("the customer's page: a tab that slept in the history writes nothing over what another tab kept meanwhile", () =>
  visit({}, async (page, { origin }) => {
    const k = KEEPERS[""];
    await k.open(page, origin);
    await k.keep(page);
    // A tab is not told of what it stores itself: to the page this is another tab's.
    const theirs = await page.evaluate((key) => {
      const f = JSON.parse(localStorage.getItem(key));
      f.stamp = "another tab";
      f.car.made.year = 1971;
      localStorage.setItem(key, JSON.stringify(f));
      return localStorage.getItem(key);
    }, k.key);
    await k.press(page, 1);
    await page.locator('[data-band="tabs"]').waitFor();
    assert.equal(await lies(page, k.key), theirs);
    await named(page, "Go on with the newer ones").click();
    await page.locator(".basis", { hasText: "1971" }).waitFor();
  }));

test("leaving with something that is kept nowhere is asked about; once it is kept or saved it is not", () =>
  visit({}, async (page, { origin, context }) => {
    const leaves = async (tab) => {
      let asked = false;
      const heard = (dialog) => {
        asked = dialog.type() === "beforeunload";
        dialog.accept();
      };
      tab.on("dialog", heard);
      await tab.goto("about:blank");
      tab.off("dialog", heard);
      return asked;
    };
    for (const name of ["survey/", "rates/", "past-jobs/"]) {
      for (const keeps of [false, true]) {
        const tab = await context.newPage();
        await KEEPERS[name].open(tab, origin);
        await KEEPERS[name].press(tab, 1);
        if (keeps) await KEEPERS[name].keep(tab);
        assert.equal(await leaves(tab), !keeps, `${name}, ${keeps ? "kept" : "not kept"}`);
        await tab.close();
        await page.goto(`${origin}/about.html`);
        await page.evaluate(() => localStorage.clear());
      }
    }
  }));
