// What the tests of "Why so wide" share: the page with its car in hand, the
// pages of the talk, and what can be waited for.

import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { patience } from "../pace.mjs";

export const PAGES = ["twenty", "odds", "suppose", "stages", "stays", "wide", "end"];

/** A two-door of a mild place that nobody has looked at. */
export const plain = {
  format: "underpaint car 1",
  asked_in: 2026,
  bodies: ["two_door_unitary"],
  made: { year: 1967 },
  life: [{ place: "mild", kept: "driven_all_year", road_years: "20_to_35" }],
  earlier_work: "patched_here_and_there",
  standard: "show",
  scope: "whole_body",
};

/** The page with the first picture drawn. */
export async function openWhy(page, origin, hash = "") {
  await page.goto(`${origin}/why/${hash}`);
  await page.waitForSelector(".twenty .dots, body:not([data-page=twenty])[data-page]", {
    timeout: patience(240_000),
  });
}

export const nextCar = (page) => page.locator("[data-key=next-car]").click();
export const line = (page) => page.locator(".hand-line").textContent();

/** A page of the talk by its address, drawn as far as it goes at once. */
export async function goTo(page, id) {
  await page.evaluate((x) => {
    location.hash = x;
  }, id);
  await page.waitForSelector(`body[data-page=${id}]`);
}

/** Waits until a page has the figures it stands on. */
const READY = {
  odds: ".two-ways .dots",
  stages: ".stages:not(:has(.working)) .bars li:nth-child(2)",
  stays: ".stays:not(:has(.working)) .bars",
  wide: ".worse-fold",
  end: ".next-stage",
};
export const ready = (page, id) =>
  READY[id] ? page.waitForSelector(READY[id], { timeout: patience(300_000) }) : null;

/** Supposes a part in a condition and waits for what follows. */
export async function suppose(page, on, condition) {
  await page.locator(".suppose select").selectOption(on);
  await page.locator(`[data-suppose=${condition}]`).click();
  await page.waitForSelector(".suppose-result .dots, .suppose-result .error", { timeout: patience(240_000) });
}

/** Opens a car file by the button of the page. */
export async function openCarFile(page, car) {
  const path = join(mkdtempSync(join(tmpdir(), "why-")), "car.json");
  writeFileSync(path, typeof car === "string" ? car : JSON.stringify(car));
  await page.locator("input[type=file]").setInputFiles(path);
}
