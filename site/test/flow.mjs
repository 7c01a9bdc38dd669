// The way through the questions: by keyboard, Back, reload, changing an answer.

import test from "node:test";
import assert from "node:assert/strict";
import { firstRange, heading, press, sentence, settled, visit } from "./browser.mjs";

/** Presses Tab until the focused element's text holds what is wanted. */
async function tabTo(page, text, most = 60) {
  for (let i = 0; i < most; i++) {
    await page.keyboard.press("Tab");
    const now = await page.evaluate(() => (document.activeElement === document.body ? "" : document.activeElement.textContent));
    if (now.includes(text)) return;
  }
  assert.fail(`no way to "${text}" by Tab`);
}

const enter = async (page, text) => { await tabTo(page, text); await page.keyboard.press("Enter"); };

test("the whole way by keyboard alone, to the range and through five more questions", () => visit({}, async (page, { origin }) => {
  await page.goto(`${origin}/`);
  await enter(page, "Two-door");
  await enter(page, "one shell");
  assert.match(await heading(page), /What year/);
  await page.keyboard.press("Tab");
  if ((await page.evaluate(() => document.activeElement.tagName)) !== "INPUT") await page.locator("input").focus();
  await page.keyboard.type("1967");
  await page.keyboard.press("Enter");
  await enter(page, "Damp, or some road salt");
  await enter(page, "Driven all year");
  await enter(page, "Show standard");
  await settled(page);
  assert.match(await sentence(page), /^1 would cost less than .*8 would cost between .*1 would cost more than /);
  await enter(page, "See what would make it closer");
  await enter(page, "20 to 35");
  await enter(page, "No");
  await enter(page, "Patched here and there");
  assert.equal(await heading(page), "What can you see?");
  await enter(page, "Left");
  assert.equal(await page.evaluate(() => document.activeElement.getAttribute("aria-pressed")), "true", "the focus stays on the pressed mark");
  await enter(page, "Continue");
  assert.match(await heading(page), /hole right through/);
  await enter(page, "None of them");
  await enter(page, "The whole body");
  await settled(page);
  assert.match(await heading(page), /The cost range/);
  const basis = await page.locator(".basis").innerText();
  for (const said of ["1967", "Damp, or some road salt", "20 to 35", "Patched here and there", "seen on the left"]) assert.ok(basis.includes(said), said);
}));

test("both ends have the same size, and what it is not is no smaller", () => visit({}, async (page, { origin }) => {
  await firstRange(page, origin);
  const size = (selector) => page.locator(selector).first().evaluate((n) => getComputedStyle(n).fontSize);
  const ends = await page.locator(".sentence li").evaluateAll((all) => all.map((n) => getComputedStyle(n).fontSize + getComputedStyle(n).fontWeight));
  assert.equal(new Set(ends).size, 1);
  assert.equal(await size(".caveat"), await size(".sentence li"));
  assert.match(await page.locator(".caveat").first().textContent(), /not an estimate, not a quotation, not a ceiling/);
  assert.equal(await page.locator(".dots circle").count(), 20);
  assert.equal(await page.locator(".dot.outside").count(), 4);
  assert.equal(await page.locator(".dot.outside").first().evaluate((n) => getComputedStyle(n).fill), "none");
}));

test("Back shows the answer given before, marked in words; reload changes nothing", () => visit({}, async (page, { origin }) => {
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

test("no answer is chosen beforehand, and Not sure is last and no smaller", () => visit({}, async (page, { origin }) => {
  await page.goto(`${origin}/`);
  assert.equal(await page.locator(".given").count(), 0);
  const answers = page.locator(".answer");
  assert.match(await answers.last().textContent(), /Not sure/);
  const heights = await answers.evaluateAll((all) => all.map((n) => n.getBoundingClientRect().height));
  assert.ok(heights.every((h) => h >= 48), String(heights));
}));

test("a later answer says what it did to the range, and the axis never shrinks", () => visit({}, async (page, { origin }) => {
  await firstRange(page, origin, { place: "sea", standard: "concours" });
  const reach = () => page.locator(".tick").last().evaluate((n) => parseFloat(n.style.getPropertyValue("--at")) > 0 && n.textContent);
  const ticks = await page.locator(".tick").allTextContents();
  await page.getByRole("button", { name: /Change: Standard/ }).click();
  await press(page, "driver");
  await settled(page);
  assert.match(await page.locator(".moved").textContent(), /Driver standard moved the range from .* to /);
  assert.deepEqual(await page.locator(".tick").allTextContents(), ticks);
  assert.ok(await reach());
}));

test("three rows on one axis and no sentence while the standard is not sure", () => visit({}, async (page, { origin }) => {
  await firstRange(page, origin, { standard: "not_sure" });
  assert.equal(await page.locator(".dots").count(), 3);
  assert.equal(await page.locator(".sentence").count(), 0);
  const ticks = await page.locator(".ticks").allTextContents();
  assert.equal(new Set(ticks).size, 1);
}));

test("two ranges, never pooled, while the frame is not sure", () => visit({}, async (page, { origin }) => {
  await firstRange(page, origin, { frame: "not_sure" });
  assert.equal(await page.locator(".sentence").count(), 2);
  assert.equal(await page.locator(".cover").count(), 0, "a sum can be held against one range only");
}));

test("a body that is not covered gets rates and the stage price, and no range", () => visit({}, async (page, { origin }) => {
  await page.goto(`${origin}/`);
  await page.waitForFunction(() => document.getElementById("check-code").textContent !== "");
  await press(page, "none");
  assert.match(await page.locator("#screen").innerText(), /Strip and survey/);
  assert.equal(await page.locator(".dots").count(), 0);
}));

test("a year that is none is refused at the entry", () => visit({}, async (page, { origin }) => {
  await page.goto(`${origin}/`);
  await press(page, "pickup");
  await press(page, "no");
  for (const bad of ["", "67", "3067", "x"]) {
    await page.getByLabel("Year").fill(bad);
    await page.getByRole("button", { name: "Continue" }).click();
    assert.match(await page.locator(".error").textContent(), /Error: Write the year as four digits/);
    assert.equal(await page.getByLabel("Year").evaluate((n) => n === document.activeElement && n.getAttribute("aria-invalid")), "true");
  }
}));

test("a place from the list, and a second place with its years", () => visit({}, async (page, { origin }) => {
  await page.goto(`${origin}/`);
  await press(page, "four_door_saloon");
  await page.getByLabel("Year").fill("1960");
  await page.getByRole("button", { name: "Continue" }).click();
  await press(page, "pick");
  await page.getByLabel(/shorten the list/).fill("vermo");
  const left = page.locator(".answer:visible");
  assert.equal(await left.count(), 1);
  await left.first().click();
  await press(page, "mostly_garaged");
  await press(page, "driver");
  await settled(page);
  await page.getByRole("button", { name: "See what would make it closer" }).click();
  await press(page, "not_sure");
  await press(page, "yes");
  await press(page, "sea");
  await press(page, "mostly_outside");
  await page.getByLabel("Years").fill("12");
  await page.getByRole("button", { name: "Continue" }).click();
  assert.match(await heading(page), /anywhere else/);
  await press(page, "yes");
  await page.goBack();
  await press(page, "no");
  await press(page, "not_sure");
  assert.equal(await heading(page), "What can you see?");
}));

test("would this much cover it: an answer in counts, an error at the entry", () => visit({}, async (page, { origin }) => {
  await firstRange(page, origin);
  const field = page.getByLabel(/A sum you have in mind/);
  assert.equal(await field.inputValue(), "");
  await field.fill("110,000");
  await page.getByRole("button", { name: "Work it out" }).click();
  await page.waitForFunction(() => /cars? in (10|20)/.test(document.querySelector(".cover-answer").textContent));
  await field.fill("plenty");
  await page.getByRole("button", { name: "Work it out" }).click();
  await page.waitForSelector(".cover .error:visible");
  assert.equal(await page.locator(".cover-answer").textContent(), "");
}));
