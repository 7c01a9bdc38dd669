// Takes the pictures of the README from the running pages, with the invented shop
// and invented cars: node test/pictures.mjs [name ...]. Each is at most 60,000 bytes.

import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { patience } from "../pace.mjs";
import { closeAll, firstRange, newContext, world } from "./browser.mjs";
import { effectSettled, openRates } from "./ratesopen.mjs";
import { goTo, openFile } from "./surveycar.mjs";

const MOST = 60_000;
const here = dirname(fileURLToPath(import.meta.url));
const folder = join(here, "..", "..", "pictures");
const surveyed = JSON.parse(
  readFileSync(join(here, "..", "..", "pages", "samples", "two-door-surveyed.json"), "utf8"),
);
const PHONE = { width: 390, height: 800 };
const DESK = { width: 1180, height: 800 };

const PICTURES = {
  questions: [
    PHONE,
    async (page, origin) => {
      await page.goto(`${origin}/`);
      await page.waitForFunction(() => document.getElementById("check-code").textContent !== "");
      await page.locator(".side-view").first().waitFor();
    },
  ],
  range: [{ ...PHONE, height: 1180 }, (page, origin) => firstRange(page, origin)],
  zones: [
    DESK,
    async (page, origin) => {
      await firstRange(page, origin);
      await page.locator(".opened-out").first().waitFor();
      await page.locator(".zones").scrollIntoViewIfNeeded();
      await page.evaluate(() => document.querySelector(".zones").scrollIntoView());
    },
  ],
  survey: [
    { ...DESK, height: 900 },
    async (page, origin) => {
      await openFile(page, origin, surveyed);
      await goTo(page, "sill", "outer_sill.left");
      await page.locator(".car-drawing .opened-out").first().waitFor();
    },
  ],
  stages: [
    { width: 900, height: 1500 },
    async (page, origin) => {
      await openFile(page, origin, surveyed);
      await page.evaluate(() => {
        location.hash = "stages";
      });
      // On a busy machine the last of it takes minutes; the picture then says "About".
      await page.waitForFunction(() => document.querySelectorAll(".stage-row .dots").length >= 3, null, {
        timeout: patience(240_000),
      });
      await page
        .waitForSelector(".before-after[data-state=settled]", { timeout: patience(60_000) })
        .catch(() => console.log("stages: still being worked out"));
    },
  ],
  rates: [
    { width: 1040, height: 1400 },
    async (page, origin) => {
      await openRates(page, origin);
      await effectSettled(page);
    },
  ],
  why: [
    DESK,
    async (page, origin) => {
      await page.goto(`${origin}/why/`);
      const next = page.locator("[data-key=next-car]");
      await next.waitFor();
      for (let n = 1; n <= 6; n++) {
        await next.click();
        await page.waitForFunction((k) => document.querySelectorAll(".twenty .dot").length === k, n);
      }
    },
  ],
};

/** The picture as WebP: the browser that took it also packs it. */
async function packed(browser, png, quality) {
  const context = await newContext(browser);
  const page = await context.newPage();
  const text = await page.evaluate(
    async ([data, q]) => {
      const picture = await createImageBitmap(await (await fetch(`data:image/png;base64,${data}`)).blob());
      const canvas = new OffscreenCanvas(picture.width, picture.height);
      canvas.getContext("2d").drawImage(picture, 0, 0);
      const bytes = new Uint8Array(
        await (await canvas.convertToBlob({ type: "image/webp", quality: q })).arrayBuffer(),
      );
      return btoa(Array.from(bytes, (b) => String.fromCharCode(b)).join(""));
    },
    [png.toString("base64"), quality],
  );
  await context.close();
  return Buffer.from(text, "base64");
}

/** Draws the picture beside a shared link: a drawing of ours as PNG, in its own size. */
async function shareFrom(svg, png) {
  const share = join(here, "..", "..", "share");
  const context = await newContext(browser, { viewport: { width: 1200, height: 630 } });
  const page = await context.newPage();
  await page.setContent(`<body style="margin: 0">${readFileSync(join(share, svg), "utf8")}</body>`);
  const picture = await page.screenshot();
  if (picture.length > MOST) throw new Error(`${png}: ${picture.length} bytes, expected at most ${MOST}`);
  writeFileSync(join(share, png), picture);
  await context.close();
}

/** Without names, those that the README shows. */
const shown = [
  ...readFileSync(join(here, "..", "..", "..", "README.md"), "utf8").matchAll(/site\/pictures\/(\w+)\.webp/g),
].map((m) => m[1]);
const wanted = process.argv.length > 2 ? process.argv.slice(2) : shown;
for (const name of wanted)
  if (!PICTURES[name]) throw new Error(`${name}: expected one of ${Object.keys(PICTURES).join(", ")}`);
const { browser, origin } = await world();
if (process.argv.length === 2) await shareFrom("share.svg", "share.png");
mkdirSync(folder, { recursive: true });
try {
  for (const [name, [viewport, show]] of Object.entries(PICTURES)) {
    if (!wanted.includes(name)) continue;
    const context = await newContext(browser, {
      viewport,
      colorScheme: "light",
      reducedMotion: "reduce",
      serviceWorkers: "block",
      acceptDownloads: true,
    });
    const page = await context.newPage();
    await show(page, origin);
    const png = await page.screenshot();
    let picture = await packed(browser, png, 0.8);
    for (let quality = 0.7; picture.length > MOST && quality > 0.2; quality -= 0.1)
      picture = await packed(browser, png, quality);
    if (picture.length > MOST) throw new Error(`${name}: ${picture.length} bytes, expected at most ${MOST}`);
    writeFileSync(join(folder, `${name}.webp`), picture);
    console.log(`${name}.webp ${picture.length} bytes`);
    await context.close();
  }
} finally {
  await closeAll();
}
