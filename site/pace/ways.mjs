// What is measured: each is one visit, and gives its figures in milliseconds.

import { encode } from "../pages/shared/carurl.ts";
import { press } from "../test/browser/browser.mjs";
import { shared, twoDoor } from "../test/browser/surveycar.mjs";
import { onMachine } from "./machine.mjs";

/** Longer than this nothing is waited for. */
const MOST_MS = 180000;
const SETTLED = ["settled", "budget_ended"];

const settledAfter = (page) =>
  page.waitForFunction((ends) => ends.some((s) => s in globalThis.pace.shown), SETTLED, { timeout: MOST_MS });

/** From the last press to the first range, and to the settled one. */
async function afterPress(page) {
  await settledAfter(page);
  const { pressed, shown } = await page.evaluate(() => globalThis.pace);
  return {
    rough: Math.min(...Object.values(shown)) - pressed,
    settled: Math.min(...SETTLED.map((s) => shown[s] ?? Infinity)) - pressed,
  };
}

/** The first questions, and the range that they lead to. */
async function answerAll(page, origin) {
  await page.goto(`${origin}/`);
  for (const answer of ["two_door", "shell"]) await press(page, answer);
  await page.getByLabel("Year").fill("1967");
  await page.getByRole("button", { name: "Continue" }).click();
  for (const answer of ["mild", "driven_all_year", "show"]) await press(page, answer);
  await settledAfter(page);
}

async function change(page, answer) {
  await page.getByRole("button", { name: /Change: Kept/ }).click();
  await press(page, answer);
  return afterPress(page);
}

/** Answers five questions, changes one, opens three questions beside the range and
 *  changes it once more while they are being worked out. */
export const answering = (world, machine) =>
  onMachine(world.browser, machine, async (page) => {
    await answerAll(page, world.origin);
    await page.waitForSelector(".one-look[data-worth]", { timeout: MOST_MS });
    const quiet = await change(page, "garage");
    for (const fold of ["plan", "decide", "wide"]) await page.locator(`.fold-${fold} > summary`).click();
    const busy = await change(page, "driven_all_year");
    const slowest = await page.evaluate(() => Math.max(...Object.values(globalThis.pace.interactions), 0));
    return {
      "change rough": quiet.rough,
      "change settled": quiet.settled,
      "busy rough": busy.rough,
      "busy settled": busy.settled,
      interaction: slowest,
    };
  });

/** The first question, over the slow line. */
const opening = (world, machine) =>
  onMachine(world.browser, { ...machine, phone: true }, async (page) => {
    await page.goto(`${world.slow}/`);
    await page.waitForSelector("[data-answer]", { timeout: MOST_MS });
    await page.waitForFunction(() => globalThis.pace.largest > 0, null, { timeout: MOST_MS });
    await page.waitForTimeout(1500);
    return page.evaluate(() => globalThis.pace.largest);
  });

/** A link with all answers in it: the range as soon as there can be one. */
const linked = (world, machine) =>
  onMachine(world.browser, { ...machine, phone: true }, async (page) => {
    await page.goto(`${world.slow}/${await encode(shared(twoDoor))}`);
    await settledAfter(page);
    const shown = await page.evaluate(() => globalThis.pace.shown);
    return Math.min(...Object.values(shown));
  });

export async function starting(world, machine) {
  return { "largest paint": await opening(world, machine), "first range": await linked(world, machine) };
}
