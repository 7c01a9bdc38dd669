// The other views: start, answers, walk-round, range, what to do, before and
// after.

import assert from "node:assert/strict";
import test from "node:test";
import { patience, sleep } from "../pace.mjs";
import { firstRange, visit } from "./browser.mjs";
import { cell, counted, goTo, openCar, openFile, saved, say, stand, step, twoDoor } from "./surveycar.mjs";

const MONEY = /[$£€]\s?\d/;
const press = (page, name, exact = true) => page.getByRole("button", { name, exact }).click();
const surveyed = {
  ...twoDoor,
  stages: [{ stage: "survey", on: "2026-06-20" }],
  survey: [
    { on: "outer_sill.left", stage: "survey", condition: "rusted_through", finding: "patch_over_rust" },
    { on: "inner_sill.left", stage: "survey", condition: "heavy_pitting" },
    { on: "hood.whole", stage: "survey", condition: "sound" },
  ],
};

test("a customer's link carries every answer over, says that they are not checked, until they are", () =>
  visit({}, async (page, { origin, context }) => {
    await firstRange(page, origin, { place: "salt", year: "1958" });
    await press(page, "Make a link");
    const link = await page.getByLabel("The link").inputValue();
    const shop = await context.newPage();
    await shop.goto(`${origin}/survey`);
    assert.equal(new URL(shop.url()).pathname, "/survey/");
    await shop.getByLabel("Paste a customer's link").fill(link);
    await press(shop, "Open the link");
    await shop.waitForSelector('[data-band="link"]');
    assert.match(await shop.locator('[data-band="link"]').innerText(), /They are not checked by the shop/);
    const answers = await shop.locator(".answers-page").innerText();
    for (const said of [
      "1958",
      "Snow and heavily salted roads all winter",
      "Driven all year",
      "Show standard",
    ])
      assert.ok(answers.includes(said), said);
    await shop.getByRole("button", { name: /^Change: Made/ }).click();
    await shop.getByLabel("Made").fill("18");
    await shop.getByLabel("Made").press("Tab");
    assert.match(await shop.locator(".answers-page .error:visible").textContent(), /Write a year/);
    await shop.getByLabel("Made").fill("1957");
    await shop.getByLabel("Made").press("Tab");
    await shop.getByRole("button", { name: /^Change: Made, 1957/ }).waitFor();
    await press(shop, "I have been through these answers");
    await shop.waitForFunction(() => !document.querySelector('[data-band="link"]'));
    const car = await saved(shop);
    assert.match(car.answers_checked, /^\d{4}-\d\d-\d\d$/);
    assert.equal(car.made.year, 1957);
    assert.equal(car.life[0].place, "salt");
  }));

test("a broken link says so at the entry, and a customer who was not sure of the body is asked on", () =>
  visit({}, async (page, { origin }) => {
    await page.goto(`${origin}/survey/`);
    await page.getByLabel("Paste a customer's link").fill("#v1.abc.00000000");
    await press(page, "Open the link");
    assert.match(await page.locator(".start .error:visible").textContent(), /not whole: ask for it again/);
    await openFileOnly(page, { ...twoDoor, bodies: ["two_door_unitary", "hardtop_on_frame"] });
    assert.match(
      await page.locator('[data-band="arrival"]').innerText(),
      /not sure of the body. Which is it/,
    );
    await page.locator('[data-band="arrival"] button').last().click();
    await page.waitForSelector("#steps a");
    assert.deepEqual((await saved(page)).bodies, ["hardtop_on_frame"]);
  }));

async function openFileOnly(page, car) {
  await page.locator("input[type=file]").setInputFiles({
    name: "car.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(car)),
  });
  await page.waitForSelector('[data-band="arrival"]');
}

test("a blank car from one plain page; what is missing is asked at the entry; the sample is marked invented", () =>
  visit({}, async (page, { origin }) => {
    await page.goto(`${origin}/survey/`);
    await press(page, "Begin with this car");
    assert.match(await page.locator(".begin .error:visible").textContent(), /Choose one/);
    const pick = (name, value) => page.locator(`.begin [data-field="${name}"]`).selectOption(value);
    await pick("body", "pickup");
    await page.locator('.begin [data-field="year"]').fill("1950s");
    await pick("place0", "sea");
    await pick("kept0", "open_shed_or_outside");
    await pick("standard", "driver");
    await press(page, "Begin with this car");
    await page.waitForSelector(".grid .in-hand");
    const car = await saved(page);
    assert.deepEqual(
      [car.bodies, car.made, car.life[0].place, car.life[0].kept, car.standard],
      [["pickup"], { decade: 1950 }, "sea", "open_shed_or_outside", "driver"],
    );
    await press(page, "Another car");
    await press(page, "Lose it and begin another");
    await page.locator("[data-key=sample]").click();
    await page.waitForSelector('[data-band="sample"]');
    assert.match(await page.locator('[data-band="sample"]').innerText(), /This car is invented/);
  }));

test("the walk-round: keys y n c, filter by tool, the customer's own look stays his", () =>
  visit({}, async (page, { origin }) => {
    await openCar(
      page,
      origin,
      { ...twoDoor, looks: [{ look: "bubbles", on: "outer_sill.left", result: "yes", by: "customer" }] },
      "walk",
    );
    const order = await page.locator(".walk-section h2").allTextContents();
    assert.match(order[0], /Doors/);
    assert.ok(order.indexOf("Water (do this last)") > order.indexOf("Left side, front to back"));
    await page.locator(".look.in-hand button").first().focus();
    for (const key of ["y", "n", "c", "ArrowDown", "y"]) await page.keyboard.press(key);
    await page.keyboard.press("Backspace");
    const car = await saved(page);
    const shop = car.looks.filter((l) => l.by === "shop");
    assert.deepEqual(shop.map((l) => [l.look, l.on, l.result]).slice(0, 2), [
      ["gaps", "left", "yes"],
      ["gaps", "right", "no"],
    ]);
    assert.equal(shop[2].result, "could_not");
    assert.equal(shop.length, 3, "the fourth is taken back");
    assert.deepEqual(
      car.looks.filter((l) => l.by === "customer"),
      [{ look: "bubbles", on: "outer_sill.left", result: "yes", by: "customer" }],
    );
    assert.equal(car.stages[0].stage, "walk_round");
    assert.equal(await page.locator("h1").textContent(), "Walk-around", "in the words of the shop");
    const zones = page.locator(".walk-zones button");
    assert.deepEqual(
      (await zones.allTextContents()).map((t) => t.replace(/ \d+ of \d+$/, "")),
      order,
      "the way to every part of the list",
    );
    const made = (await zones.allTextContents()).reduce((sum, t) => sum + Number(/(\d+) of/.exec(t)[1]), 0);
    assert.equal(made, car.looks.filter((l) => l.by === "shop").length, "counted where they were made");
    await page.locator(".filter select").selectOption({ index: 1 });
    await zones.last().click();
    assert.equal(
      await page.evaluate(
        () => document.activeElement.closest(".walk-section")?.querySelector("h2").textContent,
      ),
      order.at(-1),
      "stands on the first look there",
    );
    await page.locator(".filter select").selectOption({ index: 0 });
    const theirs = page.locator('[data-look="bubbles outer_sill.left"]');
    assert.match(await theirs.locator(".look-theirs").textContent(), /Looked by the customer: yes/);
    assert.equal(await theirs.locator('[aria-pressed="true"]').count(), 0, "the shop has not looked there");
    const all = await page.locator(".look:visible").count();
    await page.getByLabel("With what in hand").selectOption({ index: 4 });
    const some = await page.locator(".look:visible").count();
    const said = await page.getByLabel("With what in hand").evaluate((n) => n.selectedOptions[0].textContent);
    assert.ok(some > 0 && some < all && said.endsWith(`${some} checks`), `${some} of ${all}: ${said}`);
    assert.ok(await page.locator(".look.in-hand .look-more").isVisible());
  }));

test("beside a leaded joint the magnet's line says why to keep away", () =>
  visit({}, async (page, { origin }) => {
    await openCar(page, origin, twoDoor, "walk");
    assert.match(
      await page.locator('[data-look="magnet outer_sill.left"] .look-why').textContent(),
      /[Ll]ead/,
    );
    assert.equal(await page.locator('[data-look="magnet fender_upper.left"] .look-why').count(), 0);
  }));

test("no sum and no odds while recording, until the switch shows both", () =>
  visit({}, async (page, { origin }) => {
    await openCar(page, origin, twoDoor);
    await stand(page);
    for (const key of ["s", "h", "r"]) await page.keyboard.press(key);
    await counted(page, "survey", "Survey 3 of 91");
    await sleep(800);
    for (const view of ["survey", "walk", "opening"]) {
      await page.evaluate((v) => {
        location.hash = v;
      }, view);
      await page.waitForSelector(`body[data-view=${view}]`);
      const text = await page.locator("main").innerText();
      assert.doesNotMatch(text, MONEY, view);
      // The hours of the strip are told as a range; nothing of this car's metal is.
      const rest = text.replace(/In 8 cars out of 10: [\d,]+ to [\d,]+ hours/g, "");
      assert.doesNotMatch(rest, /such cars|cars like this|cars? out of \d|cars in 10/, view);
    }
    await page.evaluate(() => {
      location.hash = "survey/sill";
    });
    await cell(page, "outer_sill.left").click();
    await press(page, "Show the range");
    await page.waitForSelector(".range-strip[data-range=settled]", { timeout: patience(240_000) });
    assert.match(await page.locator(".range-strip").innerText(), MONEY);
    assert.equal(await page.locator(".range-strip .dots circle").count(), 20);
    await page.keyboard.press("Tab");
    await stand(page);
    await page.keyboard.press("g");
    await page.waitForFunction(
      () =>
        /(Worse|Better) than in .* cars like this/.test(document.querySelector(".odds")?.textContent ?? ""),
      null,
      { timeout: patience(240_000) },
    );
    assert.match(await page.locator(".odds").textContent(), /^Outer .*left: /);
    await press(page, "Show the range", false);
    assert.doesNotMatch(await page.locator("main").innerText(), MONEY);
    assert.equal(await page.locator(".odds").count(), 0);
  }));

test("what to do: ways as cards, choice by a press, by whom, and the difference on request", () =>
  visit({}, async (page, { origin }) => {
    await openFile(page, origin, surveyed);
    await step(page, "todo").click();
    const card = page.locator('[data-card="outer_sill.left"]');
    await card.waitFor();
    assert.equal(await page.locator(".card").count(), 2, "sound asks for nothing");
    assert.equal(await card.locator('[data-way="leave"]').count(), 0);
    assert.match(
      await card.innerText(),
      /Structural metal that is heavily pitted or worse cannot stay as it is/,
    );
    await press(page, "The shop chooses");
    await card.locator('[data-way="section"]').click();
    await page.waitForFunction(
      () =>
        document
          .querySelector('[data-card="outer_sill.left"] [data-way="section"]')
          .getAttribute("aria-pressed") === "true",
    );
    await counted(page, "todo", "1 undecided");
    assert.deepEqual((await saved(page)).ways, [{ on: "outer_sill.left", way: "section", by: "shop" }]);
    await card.getByRole("button", { name: /Compare/ }).click();
    await card
      .locator(".difference")
      .first()
      .waitFor({ timeout: patience(240_000) });
    assert.match(await card.locator(".difference").first().textContent(), /compared with section/);
    await card.locator('[data-way="section"]').click();
    await counted(page, "todo", "2 undecided");
    assert.equal((await saved(page)).ways, undefined);
  }));

test("before and after: a row of dots for each stage on one axis, and what the next is worth", () =>
  visit({}, async (page, { origin }) => {
    await openFile(page, origin, surveyed);
    // A range that is still wanted must not take the engine away from this view.
    await press(page, "Show the range");
    await step(page, "stages").click();
    await page.waitForSelector(".before-after[data-state=settled]", { timeout: patience(300_000) });
    const rows = page.locator(".stage-row");
    assert.ok((await rows.count()) >= 3);
    assert.ok((await page.locator(".stage-row .dots").count()) >= 2);
    assert.equal(new Set(await page.locator(".stage-row .ticks").allTextContents()).size, 1, "one axis");
    assert.match(await page.locator(".before-after .sentence").innerText(), /After the survey, the range is/);
    assert.match(
      await page.locator(".before-after").innerText(),
      /not an estimate, not a quotation and not a ceiling/,
    );
    await page.waitForSelector(".before-after[data-worth=settled]", { timeout: patience(300_000) });
    assert.match(await page.locator(".worth").innerText(), /for a car like this is on average/);
  }));

test("what finished stages came to: the running total, and an error that takes nothing in", () =>
  visit({}, async (page, { origin }) => {
    await openFile(page, origin, surveyed);
    await step(page, "stages").click();
    await page.waitForSelector(".spent .plan-stages", { timeout: patience(480_000) });
    const strip = page.locator('[data-spent="strip_and_survey"]');
    await strip.fill("16500");
    await strip.press("Tab");
    await page.waitForFunction(
      () =>
        /So far \$16,500\. In 8 cars out of 10, the rest costs \$/.test(
          document.querySelector(".spent").textContent,
        ),
      null,
      { timeout: patience(240_000) },
    );
    const paint = page.locator('[data-spent="paint"]');
    await paint.fill("100");
    await paint.press("Tab");
    await page.locator(".spent .error").waitFor({ timeout: patience(240_000) });
    assert.match(await page.locator(".spent .error").textContent(), /stages before it first/);
    assert.deepEqual((await saved(page)).came_to, { strip_and_survey: "16500" });
  }));

test("strip hours by trade, with an error at the entry, and findings of the whole car", () =>
  visit({}, async (page, { origin }) => {
    await openCar(page, origin, twoDoor);
    const metal = page.locator('[data-hours="metal"]');
    await metal.fill("many");
    await metal.press("Tab");
    assert.match(await page.locator(".strip-hours .error:visible").textContent(), /such as 6.5/);
    assert.equal(await metal.inputValue(), "many", "what was typed stays");
    await metal.fill("6,5");
    await metal.press("Tab");
    await page.locator('[data-hit="square out"]').click();
    const car = await saved(page);
    assert.deepEqual(
      [car.strip_hours, car.survey_car, car.stages.map((s) => s.stage)],
      [{ metal: 6.5 }, { square: "out" }, ["survey"]],
    );
    await goTo(page, "sill", "outer_sill.left");
    await page.keyboard.press("Backspace");
    assert.match(await say(page), /Taken back/);
    assert.equal((await saved(page)).survey_car, undefined);
  }));

test("paint and the year of earlier work among the answers; an older file says what is missing there", () =>
  visit({}, async (page, { origin }) => {
    await openFile(page, origin, { ...twoDoor, earlier_work: "stripped_and_restored" });
    await page.locator('[data-note="earlier_work_year"]').click();
    const year = page.locator('[data-field="earlier_year"]');
    await year.fill("1950");
    await year.press("Tab");
    assert.match(await page.locator(".answers-page .error:visible").textContent(), /Write 1967 or later/);
    await year.fill("'98");
    await year.press("Tab");
    await page.getByRole("button", { name: /^Change: Year of that work, 1998/ }).waitFor();
    await page.locator('[data-note="covered"]').click();
    await page.locator('[data-field="covered"]').selectOption("not_sure");
    await page.waitForFunction(() => !document.querySelector('[data-band="notes"]'));
    await counted(page, "answers", "Answers 9 of 11");
    const car = await saved(page);
    assert.deepEqual([car.earlier_work_year, car.covered], [1998, "not_sure"]);
  }));
