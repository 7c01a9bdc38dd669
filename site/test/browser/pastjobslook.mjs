// How "Past jobs" looks and reads: automated accessibility checks, widths,
// targets, keys alone, paper.

import assert from "node:assert/strict";
import test from "node:test";
import { axeSource, visit } from "./browser.mjs";
import { file, headline, job, mixed, openJobs, openPage, ten } from "./pastjobsfiles.mjs";

/** axe-core, with the rules for WCAG 2.2 A and AA and its best practice. */
async function axe(page, where) {
  if (!(await page.evaluate(() => Boolean(globalThis.axe)))) await page.evaluate(axeSource);
  const found = await page.evaluate(() =>
    globalThis.axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      rules: { region: { enabled: false } },
    }),
  );
  assert.deepEqual(
    found.violations.map(
      (v) =>
        `${where}: ${v.id}: ${v.nodes
          .slice(0, 3)
          .map((n) => n.target)
          .join(" ; ")}`,
    ),
    [],
  );
  assert.ok(found.passes.length > 5, `${where}: axe checked something`);
}

/** Every state of the page with something in it; look(name) on each. */
async function everyState(page, origin, look) {
  await openPage(page, origin);
  await look("start");
  await openJobs(page, origin, {
    ...mixed,
    jobs: [...mixed.jobs, { ...job("no range", "5000"), said: undefined }],
  });
  await page.locator("details").evaluateAll((all) =>
    all.forEach((d) => {
      d.open = true;
    }),
  );
  await page.locator("[data-tick]").first().check();
  await look("worked out");
  await page.locator("[data-key=edit-0]").click();
  await page.locator('.job-form [data-path="came_to"]').fill("many");
  await page.getByRole("button", { name: "Take the change" }).click();
  await page.waitForSelector(".job-form .error:visible");
  await look("a form with an error");
  await page.getByRole("button", { name: "Leave it" }).click();
  await page.locator("[data-key=bring]").click();
  await page
    .getByLabel("Paste the table")
    .fill(
      'job,finished,said low,said high,came to\nm,2026-01-31,"1,234","2,345","2,000"\nn,2026,1,2,3\no,2026-01-31,10,20,15\n',
    );
  await page.getByRole("button", { name: "Look through it" }).click();
  await page.locator("[data-key=point]").click();
  await page.waitForSelector("[data-key=take]");
  await look("a table looked through");
}

test("past jobs: no accessibility fault that a program can find, light and dark; at 320 pixels nothing to scroll sideways, no small target, no id twice", () =>
  visit({}, (page, { origin }) =>
    everyState(page, origin, async (name) => {
      for (const [colorScheme, width] of [
        ["light", 1280],
        ["dark", 320],
      ]) {
        await page.emulateMedia({ colorScheme });
        await page.setViewportSize({ width, height: 900 });
        await axe(page, `${name}, ${colorScheme}`);
      }
      const over = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      assert.ok(over <= 0, `${name}: ${over} pixels too wide`);
      const small = await page
        .locator(
          "main button:visible, main summary:visible, main select:visible, main input[type=text]:visible, main nav a:visible",
        )
        .evaluateAll((all) =>
          all
            .map((n) => [n.textContent || n.dataset.path, n.getBoundingClientRect()])
            .filter(([, r]) => r.width > 0 && (r.height < 48 || r.width < 44))
            .map(([t, r]) => `${t} ${r.width}x${r.height}`),
        );
      assert.deepEqual(small, [], `${name}: targets`);
      const ids = await page.evaluate(() => [...document.querySelectorAll("[id]")].map((n) => n.id));
      assert.deepEqual(
        ids.filter((id, i) => ids.indexOf(id) !== i),
        [],
        `${name}: an id twice`,
      );
    }),
  ));

test("past jobs by keys alone: from the start to a job that is with the others", () =>
  visit({}, async (page, { origin }) => {
    await openPage(page, origin);
    await page.locator("[data-key=begin]").focus();
    await page.keyboard.press("Enter");
    await page.waitForSelector("[data-key=enter]");
    assert.equal(
      await page.evaluate(() => document.activeElement.tagName),
      "H1",
      "the new screen's heading has the focus",
    );
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    assert.equal(await page.evaluate(() => document.activeElement.id), "form-title");
    await page.keyboard.press("Tab");
    await page.keyboard.type("2026-17");
    await page.keyboard.press("Tab");
    await page.keyboard.type("06202026");
    while (await page.evaluate(() => document.activeElement.dataset.path !== "came_to"))
      await page.keyboard.press("Tab");
    await page.keyboard.type("15000");
    await page.keyboard.press("Tab");
    await page.keyboard.type("10000");
    await page.keyboard.press("Tab");
    await page.keyboard.type("20000");
    await page.keyboard.press("Enter");
    await page.waitForSelector('[data-job="2026-17"]');
    assert.equal(
      await page.evaluate(() => document.activeElement.dataset.key),
      "enter",
      "the focus is not lost",
    );
  }));

test("past jobs on paper: the record alone, in black ink, few sheets", () =>
  visit({}, async (page, { origin }) => {
    await openJobs(page, origin, file(ten.jobs));
    await page.locator("[data-key=enter]").click();
    await page.emulateMedia({ media: "print" });
    const pdf = await page.pdf({ format: "A4" });
    const pages = pdf.toString("latin1").match(/\/Type\s*\/Page[^s]/g).length;
    assert.ok(pages >= 1 && pages <= 3, `${pages} pages`);
    const text = await page.locator("main").innerText();
    for (const must of [
      "How our ranges have come out",
      "2 came out above",
      "The jobs",
      "$21,000.50",
      "Why jobs came to more",
      "check code of these jobs",
    ])
      assert.ok(text.includes(must), must);
    assert.equal(
      await page
        .locator("main button:visible, main input:visible, main nav:visible, .job-form:visible")
        .count(),
      0,
    );
    const inks = await page
      .locator("main *:visible")
      .evaluateAll((all) => [...new Set(all.map((n) => getComputedStyle(n).color))]);
    assert.deepEqual(inks, ["rgb(0, 0, 0)"]);
    const above = page.locator(".one-box").last().locator("path").first();
    assert.equal(
      await above.evaluate((n) => getComputedStyle(n).fill),
      "none",
      "above is hollow, inside is full: shape tells them apart",
    );
    assert.match(await headline(page), /^10 jobs/);
  }));
