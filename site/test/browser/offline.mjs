// Without a connection, and while the folder changes under it: every page.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";
import { patience } from "../pace.mjs";
import { heading, pagesOf, takenIn, visit } from "./browser.mjs";
import { openPage as openJobsPage } from "./pastjobsfiles.mjs";
import { effectSettled, openRates, type } from "./ratesopen.mjs";
import { line, nextCar, openWhy } from "./whyopen.mjs";

/** The worker for offline use has the whole build, and the whole engine with it. */
async function begin(page, origin) {
  await page.goto(`${origin}/rates/`);
  await takenIn(page);
  await page.reload();
  await page.waitForFunction(
    () => navigator.serviceWorker.controller && document.getElementById("check-code").textContent,
    null,
    { timeout: patience(240_000) },
  );
}

test("rates, past jobs, why so wide and every plain page: the second time they work without a connection", () =>
  visit(
    { worker: "allow", allow: /ERR_INTERNET|Failed to (load|fetch)/ },
    async (page, { origin, context, dir }) => {
      await begin(page, origin);
      await context.setOffline(true);
      await openRates(page, origin);
      await type(page, "labour.metal.rate", "90");
      await effectSettled(page);
      assert.match(await page.locator(".effect-first").textContent(), /In 8 cars out of 10: \$/);
      page.once("dialog", (dialog) => dialog.accept());
      await openJobsPage(page, origin);
      await page.locator("[data-key=begin]").click();
      await page.waitForSelector("[data-key=enter]");
      await openWhy(page, origin);
      await nextCar(page);
      assert.match(await page.locator(".total").textContent(), /\$\d/);
      assert.match(await line(page), /sample car/);
      assert.match(await page.locator("#offline").textContent(), /No connection/);
      for (const name of pagesOf(dir).filter((n) => n.endsWith(".html"))) {
        await page.goto(`${origin}/${name}`);
        assert.ok((await heading(page)).length > 3, name);
      }
    },
  ));

test("new rates and a new build put on the host together: every page that is open keeps old rates with the old sums, and never mixes", () =>
  visit({ worker: "allow" }, async (page, { origin, dir, context }) => {
    await begin(page, origin);
    const code = await page.locator("#check-code").textContent();
    const rates = JSON.parse(readFileSync(`${dir}/rates.json`, "utf8"));
    rates.labour.metal.rate = "199.00";
    const answer = (body) => (route) =>
      route.fulfill({ body: JSON.stringify(body), contentType: "application/json" });
    const codes = async () => {
      const all = [];
      // The page of figures is a page to be read, without sums.
      for (const name of pagesOf(dir).filter((n) => !n.endsWith(".html") && n !== "figures/")) {
        await page.goto(`${origin}/${name}`);
        await page.waitForFunction(() => document.getElementById("check-code").textContent, null, {
          timeout: patience(240_000),
        });
        all.push(await page.locator("#check-code").textContent());
      }
      return all;
    };
    await context.route("**/rates.json", answer(rates));
    await context.route("**/build.json", answer({ id: "another" }));
    assert.deepEqual(await codes(), Array(5).fill(code), "of another build: not taken");
    await context.unroute("**/build.json");
    const after = await codes();
    assert.equal(new Set(after).size, 1, "all pages have the same rates");
    assert.notEqual(after[0], code, "of this build: taken, so the check above could see it");
  }));
