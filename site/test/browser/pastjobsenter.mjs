// Past jobs: a file, jobs by hand, a table, car files, other files, and keeping.

import assert from "node:assert/strict";
import test from "node:test";
import { visit } from "./browser.mjs";
import {
  entry,
  file,
  headline,
  job,
  kept,
  mixed,
  named,
  onDisk,
  oneCar,
  openJobs,
  openPage,
  savedJobs,
  saves,
  scored,
  ten,
} from "./pastjobsfiles.mjs";

test("a file of jobs: said in words, a mark for each job in its box, and every job in the table", () =>
  visit({}, async (page, { origin }) => {
    await openJobs(page, origin, ten);
    assert.match(
      await headline(page),
      /^10 jobs\. 2 came out above the first range, 1 below it and 7 inside it\. We said that about 2 would come out outside\./,
    );
    // The ends are the tenths of a lognormal distribution. 15,000 lies 0.218 standard
    // deviations above its middle; the table of the normal distribution in Abramowitz
    // and Stegun, table 26.1, has 0.586 below that, which is slot 7 of the ten.
    const marks = await page
      .locator(".one-box")
      .evaluateAll((all) => all.map((b) => b.querySelectorAll("svg").length));
    assert.deepEqual(marks, [1, 0, 0, 0, 0, 0, 0, 7, 0, 0, 0, 2]);
    assert.match(await page.locator(".one-box").first().textContent(), /below its own range: 1 job/);
    assert.equal(await page.locator(".jobs-table tbody tr").count(), 10);
    assert.match(
      await page.locator('[data-job="b"]').innerText(),
      /\$10,000 to \$20,000[\s\S]*as it was said[\s\S]*\$21,000\.50[\s\S]*above/,
    );
    assert.match(await page.locator(".statistics").textContent(), /7 of 10, 70%/);
    assert.equal(await page.evaluate(() => localStorage.length), 0, "nothing is kept unless it is asked for");
  }));

test("a job by hand: what is wrong stands at its entry, amounts stay as typed, and it can be changed, taken back and removed", () =>
  visit({}, async (page, { origin }) => {
    await openPage(page, origin);
    await page.locator("[data-key=begin]").click();
    await page.locator("[data-key=enter]").click();
    await page.getByRole("button", { name: "Put it with the jobs" }).click();
    assert.equal(
      await page.locator(".job-form .error:visible").count(),
      3,
      "name, day and sum are asked for at once",
    );
    await entry(page, "name").fill("2026-17");
    await entry(page, "finished").fill("2026-06-20");
    await entry(page, "came_to").fill("71,250");
    await entry(page, "said.low").fill("52000");
    await entry(page, "said.high").fill("97000.5");
    await entry(page, "hours.metal").fill("320.5");
    await entry(page, "more_because.rust_found").fill("6400");
    await page.keyboard.press("Enter");
    const problem = page.locator('.entry:has([data-path="came_to"]) .error');
    await problem.waitFor();
    assert.match(await problem.textContent(), /plain amount such as 1240\.50/);
    assert.equal(await page.evaluate(() => document.activeElement.dataset.path), "came_to");
    await entry(page, "came_to").fill("71250");
    await page.keyboard.press("Enter");
    await page.waitForSelector('[data-job="2026-17"]');
    assert.equal(await page.locator(".last-said").textContent(), "Job 2026-17 is with the jobs.");
    const now = await savedJobs(page);
    assert.deepEqual(now.jobs, [
      {
        name: "2026-17",
        finished: "2026-06-20",
        came_to: "71250",
        said: { low: "52000", high: "97000.5" },
        hours: { metal: 320.5 },
        more_because: { rust_found: "6400" },
      },
    ]);
    await scored(page);
    assert.match(await headline(page), /1 job scored\. That is too few to say anything/);
    await page.locator("[data-key=edit-0]").click();
    await entry(page, "came_to").fill("80000");
    await page.getByRole("button", { name: "Take the change" }).click();
    await page.waitForSelector('[data-job="2026-17"]:has-text("80,000")');
    await named(page, "Take back the change of job 2026-17").click();
    await page.waitForSelector('[data-job="2026-17"]:has-text("71,250")');
    await page.locator("[data-key=edit-0]").click();
    await named(page, "Remove this job").click();
    await page.waitForSelector('[data-job="2026-17"]', { state: "detached" });
    await named(page, "Take back removing job 2026-17").click();
    await page.waitForSelector('[data-job="2026-17"]');
    assert.deepEqual((await savedJobs(page)).jobs, now.jobs);
    // A form that is open while its job is taken back does not write over another.
    await page.locator("[data-key=edit-0]").click();
    await named(page, "Take back entering job 2026-17").click();
    await page.waitForSelector('[data-job="2026-17"]', { state: "detached" });
    await entry(page, "came_to").fill("1");
    await page.getByRole("button", { name: "Take the change" }).click();
    assert.match(await page.locator(".form-problems").innerText(), /has changed or gone/);
    assert.deepEqual((await savedJobs(page)).jobs, []);
  }));

test("a table: row, column, found and expected; the decimal mark is asked; only good rows are taken; and out again", () =>
  visit({}, async (page, { origin }) => {
    await openJobs(page, origin, file([job("k", "15000")]));
    await page.locator("[data-key=bring]").click();
    await page
      .getByLabel("Paste the table")
      .fill(
        'job;finished;said low;said high;came to\nk;2026-01-31;10;20;15\nl;31.1.2026;10;20;15\nm;2026-01-31;"1,234";"2,345";"2,000"\n',
      );
    await named(page, "Look through it").click();
    await page.waitForSelector(".preview [data-key=point]");
    assert.match(
      await page.locator(".preview").innerText(),
      /Row 3, column finished: found "?31\.1\.2026"?; expected a date such as 2026-06-20/,
    );
    assert.equal(
      await page.locator("[data-key=take]").count(),
      0,
      "nothing can be taken while the question is open",
    );
    await named(page, "A point: 1,234 means 1234").click();
    await page.waitForSelector("[data-key=take]");
    assert.match(await page.locator(".preview h3").textContent(), /1 good row, 2 rows refused/);
    assert.match(
      await page.locator(".preview").innerText(),
      /Job k: found a name that one of your jobs has already/,
    );
    await named(page, "Take the good row").click();
    await page.waitForSelector('[data-job="m"]');
    assert.deepEqual(
      (await savedJobs(page)).jobs.map((j) => [j.name, j.came_to]),
      [
        ["k", "15000"],
        ["m", "2000.00"],
      ],
    );
    await page.getByLabel("The table has").selectOption(";");
    const table = await saves(page, "csv");
    assert.equal(table.name, "past-jobs.csv");
    // RFC 4180: a record to a line, lines end with CRLF.
    const lines = table.text.split("\r\n");
    assert.match(lines[0], /^(\uFEFF)?job;finished;said low;said high;came to;/);
    assert.match(lines[2], /^m;2026-01-31;"?1234,00"?;"?2345,00"?;"?2000,00"?;/);
  }));

test("car files: each becomes a job to complete, priced with the present rates, which then stand in the file", () =>
  visit({}, async (page, { origin }) => {
    await openPage(page, origin);
    await page.locator("[data-key=begin]").click();
    await page.locator("[data-key=bring]").click();
    await page
      .locator(".bring input[type=file][multiple]")
      .setInputFiles([onDisk("one.json", oneCar), onDisk("two.json", oneCar), onDisk("torn.json", "{")]);
    await page.getByRole("heading", { name: "Complete the job of one.json" }).waitFor();
    assert.match(
      await page.locator('[data-band="arrival"]').innerText(),
      /torn\.json: This is not a car file/,
    );
    assert.match(await page.locator(".car-is").innerText(), /parts recorded in the survey/);
    await entry(page, "name").fill("one");
    await entry(page, "finished").fill("2026-06-20");
    await entry(page, "came_to").fill("99000");
    const code = (await page.locator("#check-code").textContent()).replace("Rates check code ", "");
    // Older rates are opened from their file, and are refused with the place of the fault.
    const older = page.locator(".job-form input[type=file]").nth(1);
    await older.setInputFiles(onDisk("older.json", { ...mixed.rates[0], rates_of: "soon" }));
    await page.waitForSelector('.part-said:has-text("rates_of")');
    await older.setInputFiles(onDisk("older.json", { ...mixed.rates[0], rates_of: "2024-06-03" }));
    await page.waitForSelector('.part-said:has-text("Rates of June 3, 2024")');
    assert.notEqual(await page.getByLabel("Priced with the rates").inputValue(), code);
    await page.getByLabel("Priced with the rates").selectOption(code);
    await page.getByRole("button", { name: "Put it with the jobs" }).click();
    await page.getByRole("heading", { name: "Complete the job of two.json" }).waitFor();
    await named(page, "Leave it").click();
    assert.match(
      await page.locator(".waiting-cars").innerText(),
      /1 car waits to be completed[\s\S]*two\.json/,
    );
    await page.getByRole("button", { name: "Leave out two.json" }).click();
    await scored(page);
    const now = await savedJobs(page);
    assert.equal(now.rates.length, 1);
    assert.equal(now.jobs[0].rates, code);
    assert.match(
      await page.locator('[data-job="one"]').innerText(),
      /\$[\d,]+ to \$[\d,]+/,
      "worked out again from the car at those rates",
    );
    assert.equal(await page.locator(".not-scored").count(), 0);
  }));

test("a broken file is refused with its place, and the jobs in hand stay in force; another file is put with them", () =>
  visit({}, async (page, { origin }) => {
    await openJobs(page, origin, ten);
    await page.locator("[data-key=bring]").click();
    const merge = page.locator(".bring input[type=file]").nth(2);
    await merge.setInputFiles(
      onDisk(
        "bad.json",
        file([job("x", "15000"), job("y", "15,000"), { ...job("z", "1"), finished: "soon" }]),
      ),
    );
    await page.waitForSelector('[data-band="arrival"] .faults');
    assert.match(
      await page.locator('[data-band="arrival"]').innerText(),
      /2 things are wrong, so nothing of it was taken\. The jobs in hand stay as they were\.[\s\S]*job y, came_to: [\s\S]*15,000[\s\S]*expected a plain amount[\s\S]*job z, finished/,
    );
    assert.equal((await savedJobs(page)).jobs.length, 10);
    await merge.setInputFiles(onDisk("torn.json", JSON.stringify(ten).slice(0, 200)));
    await page.waitForSelector('[data-band="arrival"]:has-text("not whole")');
    await merge.setInputFiles(onDisk("same.json", file([job("a", "15000")])));
    await page.waitForSelector('[data-band="arrival"]:has-text("a job in hand has it already")');
    assert.match(await headline(page), /^10 jobs\./);
    await merge.setInputFiles(onDisk("good.json", file([job("x", "15000")])));
    await page.waitForSelector('[data-job="x"]');
    await scored(page);
    assert.match(await headline(page), /^11 jobs\./, "the engine has the good ones in hand");
    assert.equal(await page.locator('[data-band="arrival"]').count(), 0);
  }));

test("kept on the device: found again, two tabs ask, a full device offers a file, and it can be erased", () =>
  visit({}, async (page, { origin, context }) => {
    await openJobs(page, origin, file([job("a", "15000")]));
    await page.locator("[data-key=keep]").click();
    const second = await context.newPage();
    await second.goto(`${origin}/past-jobs/`);
    await second.locator('[data-band="found"]', { hasText: "1 job" }).waitFor();
    await named(second, "Go on").click();
    await second.locator("[data-key=edit-0]").click();
    await entry(second, "came_to").fill("16000");
    await second.getByRole("button", { name: "Take the change" }).click();
    await page.locator('[data-band="tabs"]').waitFor();
    await page.bringToFront();
    await page.locator("[data-key=edit-0]").click();
    await entry(page, "came_to").fill("17000");
    await page.getByRole("button", { name: "Take the change" }).click();
    await page.waitForSelector('[data-job="a"]:has-text("17,000")');
    assert.equal((await kept(page)).car.jobs[0].came_to, "16000", "the older tab writes nothing over it");
    await named(page, "Go on with the newer ones").click();
    await page.waitForSelector('[data-job="a"]:has-text("16,000")');
    await page.reload();
    await page.waitForSelector('[data-job="a"]:has-text("16,000")');
    await page.evaluate(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await page.locator("[data-key=edit-0]").click();
    await named(page, "Remove this job").click();
    assert.match(
      await page.locator('[data-band="storage"]').innerText(),
      /storage is full or switched off\)\. Save a file now/,
    );
    await second.locator("[data-key=erase]").click();
    assert.equal(await second.evaluate(() => localStorage.length), 0);
    assert.equal(await second.evaluate(() => document.activeElement.dataset.key), "keep");
  }));
