// What the tests of "Past jobs" share: files of jobs, and the ways to them.

import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { patience } from "../pace.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const sample = JSON.parse(readFileSync(join(here, "..", "..", "pages", "samples", "past-jobs.json"), "utf8"));
const folder = mkdtempSync(join(tmpdir(), "past-jobs-"));

/** A job of which the figures alone are known. */
export const job = (name, came_to, more = {}) => ({
  name,
  finished: "2026-03-02",
  said: { low: "10000", high: "20000" },
  came_to,
  ...more,
});
export const file = (jobs, more = {}) => ({
  format: "underpaint past jobs 1",
  currency: "USD",
  rates: [],
  jobs,
  ...more,
});

/** Ten jobs: two above their range, one below, seven inside. */
export const ten = file([
  job("a", "25000"),
  job("b", "21000.50"),
  job("c", "9000"),
  ...[..."defghij"].map((n) => job(n, "15000")),
]);

/** Three invented cars, which teach something, and eight jobs with figures alone. */
export const mixed = file(
  [...sample.jobs.filter((j) => j.hours).slice(0, 3), ...[..."pqrstuvw"].map((n) => job(n, "15000"))],
  { rates: sample.rates },
);
export const oneCar = sample.jobs[0].car;

export function onDisk(name, content) {
  const path = join(folder, name);
  writeFileSync(path, typeof content === "string" ? content : JSON.stringify(content));
  return path;
}

export async function openPage(page, origin) {
  await page.goto(`${origin}/past-jobs/`);
  await page.waitForSelector("[data-key=begin]");
}

export const scored = (page) =>
  page.waitForFunction(
    () =>
      document.querySelector(".headline") &&
      !document.querySelector(".working") &&
      !document.querySelector("#outcome .from-before"),
    null,
    { timeout: patience(300_000) },
  );

/** Opens a file of jobs and waits until it is worked out. */
export async function openJobs(page, origin, content) {
  await openPage(page, origin);
  await page.locator(".jobs-start input[type=file]").setInputFiles(onDisk("jobs.json", content));
  if ((content.jobs ?? []).length) await scored(page);
  else await page.waitForSelector("[data-key=enter]");
}

export const named = (page, name) => page.getByRole("button", { name, exact: true });
export const entry = (page, path) => page.locator(`.job-form [data-path="${path}"]`);

/** The text of what a press saves, and its name. */
export async function saves(page, key) {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.locator(`[data-key="${key}"]`).click(),
  ]);
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), "utf8") };
}

export const savedJobs = async (page) => JSON.parse((await saves(page, "save")).text);
export const headline = async (page) => (await page.locator(".headline").allTextContents()).join(" ");
export const kept = (page) =>
  page.evaluate(() => JSON.parse(localStorage.getItem("underpaint past jobs 1") ?? "null"));
