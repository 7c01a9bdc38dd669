// What the tests of "This car" share: cars, the way to the list, and presses.

import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { encode } from "../../pages/shared/carurl.ts";

const STANDARD = {
  format: "underpaint car 1",
  asked_in: 2026,
  made: { year: 1967 },
  life: [{ place: "damp", kept: "driven_all_year", road_years: "20_to_35" }],
  earlier_work: "patched_here_and_there",
  standard: "show",
  scope: "whole_body",
};

/** A car with the most parts of any body. */
export const largest = { ...STANDARD, bodies: ["four_door_saloon"] };
export const twoDoor = { ...STANDARD, bodies: ["two_door_unitary"] };

export const shared = (car) => ({
  format: "underpaint link 1",
  entered: "2026-06-04",
  rates_of: "2026-06-03",
  check_code: "00000 00000",
  car,
});

/** Opens a car by its link and stands in the survey. */
export async function openCar(page, origin, car, view = "survey") {
  await page.goto(`${origin}/survey/${await encode(shared(car))}`);
  await page.waitForSelector("#steps a");
  await page.evaluate((v) => {
    location.hash = v;
  }, view);
  await page.waitForSelector(
    view === "survey" || view === "opening" ? ".grid .in-hand" : `body[data-view=${view}]`,
  );
}

/** The way of one who has a file. */
export async function openFile(page, origin, car) {
  const path = join(mkdtempSync(join(tmpdir(), "car-")), "car.json");
  writeFileSync(path, JSON.stringify(car));
  await page.goto(`${origin}/survey/`);
  await page.waitForSelector("[data-key=sample]");
  await page.locator("input[type=file]").setInputFiles(path);
  await page.waitForSelector("#steps a");
  await page.evaluate(() => {
    location.hash = "survey";
  });
  await page.waitForSelector(".grid .in-hand");
}

export const stand = (page) => page.locator(".grid .in-hand").focus();
export const at = (page) => page.evaluate(() => document.querySelector(".grid .in-hand").dataset.on);
export const cell = (page, on) => page.locator(`.grid [data-on="${on}"]`);
export const step = (page, view) => page.locator(`#steps a[href="#${view}"]`);
export const say = (page) => page.locator("#status").textContent();

/** Goes to an item by the address of its zone and a tap. */
export async function goTo(page, zone, on) {
  await page.evaluate((z) => {
    location.hash = `survey/${z}`;
  }, zone);
  await cell(page, on).click();
}

/** What the car file holds now. */
export async function saved(page) {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.locator("#kept").getByRole("button", { name: "Save a file" }).click(),
  ]);
  return JSON.parse(readFileSync(await download.path(), "utf8"));
}

/** Waits until the line of a step says this. */
export const counted = (page, view, text) =>
  page.waitForFunction(
    ([v, t]) => document.querySelector(`#steps a[href="#${v}"]`)?.textContent.includes(t),
    [view, text],
  );
