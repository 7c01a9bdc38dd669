// Past jobs: what the jobs teach, used in a rates file and taken out again; and
// the sums while they go on.

import assert from "node:assert/strict";
import test from "node:test";
import { patience, sleep } from "../pace.mjs";
import { visit } from "./browser.mjs";
import {
  file,
  headline,
  mixed,
  named,
  onDisk,
  openJobs,
  openPage,
  saves,
  scored,
  ten,
} from "./pastjobsfiles.mjs";

/** What a rates file says. */
const given = (text) => JSON.parse(text);
const siteCode = async (page) =>
  (await page.locator("#check-code").textContent()).replace("Rates check code ", "");

test("what jobs teach is offered, never ticked; used, it stands in a saved rates file; taken out, the rates are the old ones", () =>
  visit({}, async (page, { origin, context }) => {
    await openJobs(page, origin, mixed);
    assert.match(
      await page.locator("#learning").innerText(),
      /There are too few jobs with a car file to say whether learning helps/,
    );
    const ticks = page.locator("[data-tick]");
    assert.ok((await ticks.count()) > 5);
    assert.equal(await page.locator("[data-tick]:checked").count(), 0);
    assert.match(
      await page.locator(".taught-line").first().innerText(),
      /in use × 1\.00[\s\S]*offered × \d\.\d\d/,
    );
    await page.locator("[data-key=save-rates]").click();
    assert.match(await page.locator(".adopt-said").innerText(), /Nothing was saved: nothing is ticked/);
    const rust = page.locator('[data-tick^="rust."]').first();
    const learned = await rust.getAttribute("data-tick");
    await rust.check();
    await page.locator('[data-tick="record"]').check();
    await page.locator("[data-key=effect]").click();
    await page.waitForSelector('.effect-box [data-state="settled"]', { timeout: patience(300_000) });
    assert.equal(await page.locator(".effect-car").count(), 3);
    assert.match(
      await page.locator(".effect-sentence").first().textContent(),
      /on your site, .* with these rates\.|the same as on your site\./,
    );
    const used = await saves(page, "save-rates");
    assert.equal(used.name, "rates.json");
    await page.waitForSelector(".saved-code");
    const before = await siteCode(page);
    const code = await page.locator(".saved-code").textContent();
    assert.notEqual(code, before);
    assert.match(await page.locator(".adopt-said").innerText(), /not on the site yet/);
    const rates = JSON.parse(used.text);
    assert.notEqual(rates.own_figures.rust[0].factor, 1);
    assert.deepEqual(
      [rates.record.below, rates.record.inside, rates.record.above].reduce((a, b) => a + b),
      11,
    );
    const out = await saves(page, "take-out");
    await page.waitForFunction((c) => document.querySelector(".saved-code")?.textContent === c, before);
    assert.deepEqual(given(out.text), given(await (await page.request.get(`${origin}/rates.json`)).text()));
    assert.equal(await page.locator("[data-tick]:checked").count(), 0);
    // Once the file is on the site, the page shows the code that was said, and the
    // figure in use starts ticked.
    const later = await context.newPage();
    await later.route("**/rates.json", (route) =>
      route.fulfill({ body: used.text, contentType: "application/json" }),
    );
    await openJobs(later, origin, mixed);
    assert.equal(await siteCode(later), code);
    assert.deepEqual(
      await later.locator("[data-tick]:checked").evaluateAll((all) => all.map((n) => n.dataset.tick)),
      [learned, "record"],
    );
    const clean = await saves(later, "take-out");
    assert.deepEqual(given(clean.text), given(out.text), "taking out gives the figures of before");
    assert.notEqual(await later.locator(".saved-code").textContent(), code);
  }));

test("sums that stop are started again with the jobs in hand, and go on to the end", () =>
  visit({}, async (page, { origin }) => {
    await openPage(page, origin);
    await page
      .locator(".jobs-start input[type=file]")
      .setInputFiles(onDisk("jobs.json", file(mixed.jobs, { rates: mixed.rates })));
    await page.waitForFunction(() =>
      /\d of 11/.test(document.querySelector(".working p")?.textContent ?? ""),
    );
    await page.workers()[0].evaluate(() => postMessage({ kind: "dead", text: "ended on purpose" }));
    await page.locator('[data-band="restarted"]').waitFor();
    await scored(page);
    assert.match(await headline(page), /^11 jobs\./);
    assert.equal(await page.locator('[data-band="refused"]').count(), 0);
  }));

test("under ten jobs nothing can be published, and nothing is taught by figures alone", () =>
  visit({}, async (page, { origin }) => {
    await openJobs(page, origin, file(ten.jobs.slice(0, 9)));
    assert.equal(await page.locator("[data-tick]").count(), 0);
    assert.match(await page.locator("#learning").innerText(), /from 10 scored jobs on/);
  }));

test("a job without range or rates says why it is not scored", () =>
  visit({}, async (page, { origin }) => {
    const { rates, ...known } = mixed.jobs[0];
    await openJobs(page, origin, file([...ten.jobs, known], { rates: mixed.rates }));
    assert.match(
      await page.locator(".not-scored").innerText(),
      /it is not said at which rates the job was priced/,
    );
    assert.match(await headline(page), /^10 jobs\./);
  }));

test("the sample: invented and so marked; its progress is said, can be stopped, gone on with, and the page is usable meanwhile", () =>
  visit({}, async (page, { origin }) => {
    await openPage(page, origin);
    assert.match(await page.locator(".jobs-start").innerText(), /invented/);
    await page.locator("[data-key=sample]").click();
    await page.waitForSelector('[data-band="sample"]');
    await page.waitForFunction(() =>
      /[3-9] of 24/.test(document.querySelector(".working p")?.textContent ?? ""),
    );
    await page.locator("[data-key=enter]").click();
    await page.locator('.job-form [data-path="name"]').fill("while it works");
    await page.locator("[data-key=stop]").click();
    const at = await page.locator('[data-band="stopped"]').innerText();
    assert.match(at, /Stopped/);
    await sleep(300);
    assert.equal(await page.locator(".working").count(), 0);
    await page.locator("[data-key=go-on]").click();
    await scored(page);
    assert.match(
      await headline(page),
      /^24 jobs\. \d+ came out above the first range, \d+ below it and \d+ inside it\. We said that about 5 would come out outside\./,
    );
    const marks = await page
      .locator(".one-box")
      .evaluateAll((all) => all.map((b) => b.querySelectorAll("svg").length));
    assert.equal(
      marks.reduce((a, b) => a + b),
      24,
    );
    assert.equal(
      await page.locator('.job-form [data-path="name"]').inputValue(),
      "while it works",
      "what is being typed is left alone",
    );
    await named(page, "Put the sample away").click();
    await page.waitForSelector("[data-key=begin]");
  }));
