// The way through the questions: by keyboard, Back, reload, changing an answer.

import assert from "node:assert/strict";
import test from "node:test";
import { firstRange, heading, press, sentence, settled, visit } from "./browser.mjs";

/** Presses Tab until the focused element's text holds what is wanted. */
async function tabTo(page, text, most = 60) {
  for (let i = 0; i < most; i++) {
    await page.keyboard.press("Tab");
    const now = await page.evaluate(() =>
      document.activeElement === document.body ? "" : document.activeElement.textContent,
    );
    if (now.includes(text)) return;
  }
  assert.fail(`no way to "${text}" by Tab`);
}

const enter = async (page, text) => {
  await tabTo(page, text);
  await page.keyboard.press("Enter");
};

test("the whole way by keyboard alone, to the range and through every question after it", () =>
  visit({}, async (page, { origin }) => {
    await page.goto(`${origin}/`);
    await enter(page, "Two-door");
    await enter(page, "one shell");
    assert.match(await heading(page), /What year/);
    await page.keyboard.press("Tab");
    if ((await page.evaluate(() => document.activeElement.tagName)) !== "INPUT")
      await page.locator("input").focus();
    await page.keyboard.type("1967");
    await page.keyboard.press("Enter");
    await enter(page, "Humid, or snow");
    await enter(page, "Driven all year");
    await enter(page, "Show standard");
    await settled(page);
    assert.match(
      await sentence(page),
      /^1 would cost less than .*8 would cost between .*1 would cost more than /,
    );
    await enter(page, "Answer another question");
    assert.match(await heading(page), /painted or undercoated in the last ten years/);
    assert.equal(await page.locator("#count").textContent(), "One more (optional)");
    await enter(page, "Yes");
    await enter(page, "20 to 35");
    await enter(page, "No");
    await enter(page, "Patched here and there");
    assert.equal(await heading(page), "When was that?");
    await page.locator("input").focus();
    await page.keyboard.type("about '98");
    await page.keyboard.press("Enter");
    assert.match(await heading(page), /photographs or bills/);
    await enter(page, "No");
    assert.match(await heading(page), /hit hard/);
    await enter(page, "Lightly");
    await enter(page, "Front");
    assert.equal(await heading(page), "What can you see?");
    await enter(page, "Left");
    assert.equal(
      await page.evaluate(() => document.activeElement.getAttribute("aria-pressed")),
      "true",
      "the focus stays on the pressed mark",
    );
    await enter(page, "Continue");
    assert.equal(await heading(page), "A hole you can see: light or a finger goes through");
    await enter(page, "No hole that I can see");
    assert.equal(await heading(page), "Is it all there?");
    await enter(page, "All there");
    await enter(page, "The whole body");
    await settled(page);
    assert.match(await heading(page), /The cost range/);
    const basis = await page.locator(".basis").innerText();
    for (const said of [
      "1967",
      "Humid, or snow and salted roads",
      "Painted or undercoated in the last ten years",
      "20 to 35",
      "Patched here and there, 1998",
      "seen on the left",
    ])
      assert.ok(basis.includes(said), said);
  }));

test("both ends have the same size, and what it is not is beside them in the size of text", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    const size = (selector) =>
      page
        .locator(selector)
        .first()
        .evaluate((n) => getComputedStyle(n).fontSize);
    const ends = await page
      .locator(".range-figure > span")
      .evaluateAll((all) => all.map((n) => getComputedStyle(n).fontSize + getComputedStyle(n).fontWeight));
    assert.equal(ends.length, 2);
    assert.equal(new Set(ends).size, 1);
    const tails = await page
      .locator(".tail")
      .evaluateAll((all) => all.map((n) => getComputedStyle(n).fontSize + getComputedStyle(n).fontWeight));
    assert.equal(new Set(tails).size, 1, "cheaper and more expensive cars alike");
    assert.ok(Number.parseFloat(await size(".caveat")) >= 16);
    const [caveat, dots] = await Promise.all(
      [".caveat", ".dots"].map((s) => page.locator(s).first().boundingBox()),
    );
    assert.ok(caveat.y + caveat.height <= dots.y, "it is read before the picture");
    assert.match(
      await page.locator(".caveat").first().textContent(),
      /not an estimate, not a quotation and not a ceiling/,
    );
    assert.equal(await page.locator(".dots circle").count(), 20);
    assert.equal(await page.locator(".dot.outside").count(), 4);
    assert.equal(
      await page
        .locator(".dot.outside")
        .first()
        .evaluate((n) => getComputedStyle(n).fill),
      "none",
    );
  }));

test("Back shows the answer given before, marked in words; reload changes nothing", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    const before = await sentence(page);
    await page.reload();
    await settled(page);
    assert.equal(await sentence(page), before);
    await page.goBack();
    assert.equal(await heading(page), "How good should it come out?");
    await page.getByRole("button", { name: "Back" }).click();
    await page.waitForFunction(() => document.querySelector("h1:not([hidden])").textContent.includes("kept"));
    assert.match(await page.locator('[data-answer="driven_all_year"]').textContent(), /your answer/);
    assert.equal(await page.locator(".given").count(), 1);
    await page.reload();
    assert.equal(await heading(page), "How was it kept there?");
    await page.goForward();
    await page.goForward();
    await settled(page);
    assert.equal(await sentence(page), before);
  }));

test("no answer is chosen beforehand, and Not sure is last and no smaller", () =>
  visit({}, async (page, { origin }) => {
    await page.goto(`${origin}/`);
    assert.equal(await page.locator(".given").count(), 0);
    const answers = page.locator(".answer");
    assert.match(await answers.last().textContent(), /Not sure/);
    const heights = await answers.evaluateAll((all) => all.map((n) => n.getBoundingClientRect().height));
    assert.ok(
      heights.every((h) => h >= 48),
      String(heights),
    );
  }));

/** The marks of the axis of the nth picture, and the amounts at those that have one: an amount
 *  that would touch an end of the range is left out. */
const axisOf = (page, n) =>
  page
    .locator(".big-dots")
    .nth(n)
    .evaluate((picture) => ({
      marks: [...picture.querySelectorAll(".axis-tick")].map(
        (t) => /^M([\d.]+)/.exec(t.getAttribute("d"))[1],
      ),
      amounts: Object.fromEntries(
        [...picture.querySelectorAll(".axis-text")].map((t) => [t.getAttribute("x"), t.textContent]),
      ),
    }));
function sameAxis(a, b) {
  assert.deepEqual(a.marks, b.marks);
  const both = Object.keys(a.amounts).filter((x) => x in b.amounts);
  assert.ok(both.length >= 2, `${both.length} amounts at the same places`);
  for (const x of both) assert.equal(a.amounts[x], b.amounts[x]);
}

test("a later answer says what it did to the range, and the axis never shrinks", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin, { place: "sea", standard: "concours" });
    const before = await axisOf(page, 0);
    await page.getByRole("button", { name: /Change: Standard/ }).click();
    await press(page, "driver");
    await settled(page);
    assert.match(await page.locator(".moved").textContent(), /Driver standard changed the range from .* to /);
    sameAxis(await axisOf(page, 0), before);
  }));

test("three rows on one axis and no sentence while the standard is not sure", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin, { standard: "not_sure" });
    assert.equal(await page.locator(".dots").count(), 3);
    assert.equal(await page.locator(".sentence").count(), 0);
    const [first, second, third] = await Promise.all([0, 1, 2].map((n) => axisOf(page, n)));
    sameAxis(second, first);
    sameAxis(third, first);
  }));

test("two ranges, never pooled, while the frame is not sure", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin, { frame: "not_sure" });
    assert.equal(await page.locator(".sentence").count(), 2);
    assert.equal(await page.locator(".cover").count(), 0, "a sum can be held against one range only");
  }));

test("a body that is not covered gets rates and the stage price, and no range", () =>
  visit({}, async (page, { origin }) => {
    await page.goto(`${origin}/`);
    await page.waitForFunction(() => document.getElementById("check-code").textContent !== "");
    await press(page, "none");
    assert.match(await page.locator("#screen").innerText(), /Strip and survey/);
    assert.equal(await page.locator(".dots").count(), 0);
  }));

test("a year that is none is refused at the entry", () =>
  visit({}, async (page, { origin }) => {
    await page.goto(`${origin}/`);
    await press(page, "pickup");
    await press(page, "no");
    for (const bad of ["", "67", "3067", "x"]) {
      await page.getByLabel("Year").fill(bad);
      await page.getByRole("button", { name: "Continue" }).click();
      assert.match(await page.locator(".error").textContent(), /Error: Write the year as four digits/);
      assert.equal(
        await page
          .getByLabel("Year")
          .evaluate((n) => n === document.activeElement && n.getAttribute("aria-invalid")),
        "true",
      );
    }
  }));

test("a place from the list, and a second place with its years", () =>
  visit({}, async (page, { origin }) => {
    await page.goto(`${origin}/`);
    await press(page, "four_door_saloon");
    await page.getByLabel("Year").fill("1960");
    await page.getByRole("button", { name: "Continue" }).click();
    await press(page, "pick");
    await page.getByLabel(/shorten the list/).fill("vermo");
    const left = page.locator(".answer:visible");
    assert.equal(await left.count(), 1);
    await left.first().click();
    await press(page, "dry_or_heated_garage");
    await press(page, "driver");
    await settled(page);
    await page.getByRole("button", { name: "Answer another question" }).click();
    await press(page, "no");
    await press(page, "not_sure");
    await press(page, "yes");
    await press(page, "sea");
    await press(page, "open_shed_or_outside");
    await page.getByLabel("Years").fill("12");
    await page.getByRole("button", { name: "Continue" }).click();
    assert.match(await heading(page), /anywhere else/);
    await press(page, "yes");
    await page.goBack();
    await press(page, "no");
    await press(page, "not_sure");
    await press(page, "not_that_i_know");
    assert.equal(await heading(page), "What can you see?");
  }));

test("would this much cover it: an answer in counts, an error at the entry", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    const field = page.getByLabel(/A sum you have in mind/);
    assert.equal(await field.inputValue(), "");
    await field.fill("110,000");
    await page.getByRole("button", { name: "Work it out" }).click();
    await page.waitForFunction(() =>
      /out of (?:10|20) cars/.test(document.querySelector(".cover-answer").textContent),
    );
    await field.fill("plenty");
    await page.getByRole("button", { name: "Work it out" }).click();
    await page.waitForSelector(".cover .error:visible");
    assert.equal(await page.locator(".cover-answer").textContent(), "");
  }));

const carNow = (page) => page.evaluate(() => history.state.car);

test("earlier work: its year, the parts on photographs, and holes, each in the car file and taken back where it was given", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.getByRole("button", { name: "Answer another question" }).click();
    for (const answer of ["not_sure", "not_sure", "no", "stripped_and_restored"]) await press(page, answer);
    const year = page.getByLabel("Year");
    await year.fill("1966");
    await page.getByRole("button", { name: "Continue" }).click();
    assert.match(
      await page.locator(".error").textContent(),
      /Write 1967 or later, because the car was not made before that/,
    );
    await year.fill("June 1998");
    await page.getByRole("button", { name: "Continue" }).click();
    await press(page, "yes");
    await page.locator('[data-items="outer_sill.left"]').click();
    await page.locator('[data-items="front_floor.right"]').click();
    await page.locator(".other-parts > summary").click();
    await page.locator(".other-parts details > summary").first().click();
    await page.locator('[data-items="radiator_support.whole"]').click();
    await page.locator('[data-items="front_floor.right"]').click();
    assert.equal(
      await page.locator('.other-parts [data-items="outer_sill.left"]').count(),
      0,
      "a part stands in one list only",
    );
    await page.getByRole("button", { name: "Continue" }).click();
    const photos = (on) => ({ look: "photos", on, result: "yes", by: "customer" });
    let car = await carNow(page);
    assert.deepEqual(
      [car.earlier_work_year, car.looks],
      [1998, [photos("outer_sill.left"), photos("radiator_support.whole")]],
    );
    await press(page, "not_that_i_know");
    await page.locator("[data-hole]").click();
    assert.equal(await heading(page), "A hole you can see: light or a finger goes through");
    await page.getByRole("button", { name: "Door bottoms, left" }).click();
    await page.getByRole("button", { name: "Continue" }).click();
    await press(page, "all_there");
    await press(page, "whole_body");
    await settled(page);
    const basis = await page.locator(".basis").innerText();
    for (const said of [
      "Stripped and restored, 1998",
      "2 parts shown renewed or patched",
      "a hole you can see, left",
    ])
      assert.ok(basis.includes(said), said);
    await page.locator(".looks-made", { hasText: "hole" }).waitFor();
    assert.equal(
      await page.locator(".looks-made li").count(),
      1,
      "photographs are taken back at their question",
    );
    await page.getByRole("button", { name: /^Change: Door bottoms/ }).click();
    await page.locator('[aria-pressed="true"]').click();
    await press(page, "none");
    await settled(page);
    await page.getByRole("button", { name: /^Change: Photographs or bills/ }).click();
    await page.locator('[data-items="outer_sill.left"]').click();
    await page.getByRole("button", { name: "Continue" }).click();
    await settled(page);
    await page.getByRole("button", { name: /^Change: Earlier work/ }).click();
    await press(page, "not_known_of");
    await settled(page);
    car = await carNow(page);
    assert.deepEqual([car.earlier_work_year, car.looks], [undefined, [photos("radiator_support.whole")]]);
    await page.locator(".looks-made", { hasText: "yes" }).waitFor();
  }));

test("new paint is asked beside the quick check, before it, until there is an answer", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    const first = page.locator(".covered-first");
    assert.match(
      await first.innerText(),
      /painted or undercoated in the last ten years or so\?\s+Fresh paint and undercoat hide rust, so a check that finds nothing says less\./,
    );
    assert.ok(
      await page.evaluate(
        () =>
          document
            .querySelector(".covered-first")
            .compareDocumentPosition(document.querySelector(".one-look")) & Node.DOCUMENT_POSITION_FOLLOWING,
      ),
    );
    await first.locator('[data-covered="no"]').click();
    await settled(page);
    assert.equal((await carNow(page)).covered, "no");
    assert.equal(await page.locator("[data-covered]").count(), 0);
    assert.match(
      await page.locator(".basis").innerText(),
      /Not painted or undercoated in the last ten years/,
    );
  }));

test("a file of an earlier version says what is not known and how it was read, each with the way to its question", () =>
  visit({}, async (page, { origin }) => {
    const car = {
      format: "underpaint car 1",
      asked_in: 2026,
      bodies: ["two_door_unitary"],
      made: { year: 1967 },
      life: [{ place: "mild", kept: "mostly_garaged" }],
      earlier_work: "stripped_and_restored",
      standard: "show",
    };
    const open = (file) =>
      page.locator("input[type=file]").setInputFiles({
        name: "car.json",
        mimeType: "application/json",
        buffer: Buffer.from(JSON.stringify(file)),
      });
    await page.goto(`${origin}/`);
    await page.waitForFunction(() => document.getElementById("check-code").textContent !== "");
    await open(car);
    const notes = page.locator('[data-band="notes"] p');
    await notes.first().waitFor();
    await settled(page);
    assert.deepEqual(
      (await notes.allInnerTexts()).map(
        (t) => /mostly in an ordinary garage|don't know when|painted, or coated underneath/.exec(t)?.[0],
      ),
      ["mostly in an ordinary garage", "don't know when", "painted, or coated underneath"],
    );
    await page.locator('[data-note="life[0].kept"]').click();
    assert.equal(await heading(page), "How was it kept there?");
    assert.match(await page.locator('[data-answer="garage"]').textContent(), /your answer/);
    await press(page, "dry_or_heated_garage");
    await settled(page);
    await page.locator('[data-note="earlier_work_year"]').click();
    await page.getByLabel("Year").fill("1990");
    await page.getByRole("button", { name: "Continue" }).click();
    await press(page, "no");
    await settled(page);
    assert.equal(await notes.count(), 1);
    await page.locator("[data-covered=yes]").click();
    await settled(page);
    assert.equal(await notes.count(), 0);
    assert.deepEqual(await carNow(page).then((c) => [c.life[0].kept, c.earlier_work_year, c.covered]), [
      "dry_or_heated_garage",
      1990,
      "yes",
    ]);
  }));
