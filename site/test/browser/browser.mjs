// What the page tests share: one browser, one built site, and short words for
// what a customer does.
//
// The site under test is built from this tree. SITE_BUILT names a folder with the
// program "site" and the folder "built" that it made, so that several processes
// share one; SITE_ENGINE an engine that is already built; SITE_RATES a rates file.
// Without them ./wasm is built and the shop's sample rates are used.

import assert from "node:assert/strict";
import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { patience } from "../pace.mjs";

const root = resolve(dirname(fileURLToPath(import.meta.url)), "..", "..", "..");
const RATES = process.env.SITE_RATES ?? join(root, "engine", "rates", "data", "sample.json");
export const FLAGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

export const axeSource = readFileSync(join(root, "site", "node_modules", "axe-core", "axe.min.js"), "utf8");
/** Milliseconds on a quiet machine: until a browser has started, and until a page shows
 *  what a test waits for where the test says nothing else (common practice, no
 *  published source). */
export const STARTS = 60_000;
const USUAL = 120_000;
const workFolder = mkdtempSync(join(tmpdir(), "site-test-"));

function run(args) {
  const done = spawnSync("go", args, { cwd: root, encoding: "utf8" });
  if (done.status !== 0) throw new Error(`go ${args.join(" ")}:\n${done.stdout}${done.stderr}`);
}

/** Builds the site into its own folder and serves it; gives {origin, dir, stop}. */
export async function site() {
  if (process.env.SITE_BUILT) {
    const [program, dir] = ["site", "built"].map((name) => join(process.env.SITE_BUILT, name));
    return { ...(await served(program, dir)), dir, program };
  }
  const program = join(workFolder, "site");
  const dir = join(workFolder, "built");
  run(["build", "-o", program, "./site"]);
  const engine = process.env.SITE_ENGINE ? ["-engine", process.env.SITE_ENGINE] : [];
  const made = spawnSync(program, ["build", "-out", dir, "-rates", RATES, ...engine], {
    cwd: root,
    encoding: "utf8",
  });
  if (made.status !== 0) throw new Error(made.stderr);
  return { ...(await served(program, dir)), dir, program };
}

/** Serves a built folder on a free port. */
export async function served(program, dir) {
  const server = spawn(program, ["serve", "-addr", "127.0.0.1:0", "-dir", dir], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  const origin = await new Promise((found, failed) => {
    server.once("exit", (code) => failed(new Error(`the server ended: ${code}`)));
    server.stdout.on("data", (text) => {
      const at = /http:\/\/[\d.:]+/.exec(String(text));
      if (at) found(at[0]);
    });
  });
  return {
    origin,
    stop: () => {
      server.removeAllListeners("exit");
      server.kill();
    },
  };
}

/** Every page of a built folder by its address; a new one cannot be forgotten. */
export function pagesOf(dir) {
  return readdirSync(dir, { recursive: true })
    .filter((name) => name.endsWith(".html") && !name.startsWith("v-"))
    .map((name) => name.replace(/(^|\/)index\.html$/, "$1"))
    .sort();
}

/** The one site and the one browser of a run, made when first asked for. */
let shared = null;
export function world() {
  shared ??= (async () => ({ ...(await site()), browser: await browser() }))();
  return shared;
}

export async function closeAll() {
  if (shared) {
    const w = await shared;
    await w.browser.close();
    w.stop();
  }
  rmSync(workFolder, { recursive: true, force: true });
}

export function browser() {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: FLAGS,
    timeout: patience(STARTS),
  });
}

/** A fresh profile of a browser; what its pages wait for has the usual time. */
export async function newContext(b, options = {}) {
  return usual(await b.newContext(options));
}

/** Gives whatever the pages of a context wait for the usual time; the context itself. */
export function usual(context) {
  context.setDefaultTimeout(patience(USUAL));
  return context;
}

/** Runs fn(page, more) as a fresh visitor, and fails when the page asked another
 *  host for anything or had an error of its own. allow: errors that belong to it. */
export async function visit(options, fn) {
  const w = await world();
  const { allow = null, ...rest } = options;
  const v = await visitor(w.browser, w.origin, rest);
  try {
    await fn(v.page, { ...w, ...v });
    assert.deepEqual(v.seen.elsewhere, [], "requests off the origin");
    assert.deepEqual(
      v.seen.errors.filter((e) => !allow?.test(e)),
      [],
      "errors of the page",
    );
  } finally {
    await v.context.close();
  }
}

/** A fresh visitor. Requests off the origin and script errors are collected. */
export async function visitor(b, origin, { worker = "block", ...options } = {}) {
  const context = await newContext(b, {
    viewport: { width: 1280, height: 900 },
    acceptDownloads: true,
    serviceWorkers: worker,
    ...options,
  });
  const seen = { elsewhere: [], errors: [] };
  context.on("request", (r) => {
    const u = r.url();
    if (!u.startsWith(origin) && !/^(blob|data):/.test(u)) seen.elsewhere.push(u);
  });
  const page = await context.newPage();
  page.on("pageerror", (e) => seen.errors.push(String(e)));
  page.on("console", (m) => {
    if (m.type() === "error") seen.errors.push(m.text());
  });
  return { context, page, seen };
}

export const press = (page, answer) => page.locator(`[data-answer="${answer}"]`).click();
export const heading = (page) => page.locator("#question-title, h1:visible").last().textContent();
export const settled = (page) =>
  page.waitForSelector("body[data-range=settled], body[data-range=budget_ended]", {
    timeout: patience(240_000),
  });

/** The first five questions (six for a two-door), then the settled range. */
export async function firstRange(
  page,
  origin,
  { frame = "shell", year = "1967", place = "mild", kept = "driven_all_year", standard = "show" } = {},
) {
  await page.goto(`${origin}/`);
  await press(page, "two_door");
  await press(page, frame);
  await page.getByLabel("Year").fill(year);
  await page.getByRole("button", { name: "Continue" }).click();
  await press(page, place);
  await press(page, kept);
  await press(page, standard);
  await settled(page);
}

/** Waits until the worker for offline use has the whole build; for ever is too long. */
export const takenIn = (page) =>
  page.evaluate(
    (most) =>
      Promise.race([
        navigator.serviceWorker.ready.then(() => true),
        new Promise((_, late) =>
          setTimeout(() => late(new Error("not taken in for use without a connection")), most),
        ),
      ]),
    patience(90_000),
  );

export const sentence = async (page) => (await page.locator(".sentence li").allTextContents()).join(" | ");
