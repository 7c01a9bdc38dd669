// Rates on a host: replaced without a new build, gone, broken, too new, too large.
// And where the shop and the dates stand.

import assert from "node:assert/strict";
import { cpSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import test from "node:test";
import { sleep } from "../pace.mjs";
import { firstRange, press, served, visit, visitor } from "./browser.mjs";

const sample = (dir) => readFileSync(`${dir}/rates.json`, "utf8");

/** name, what the host answers, and what the shop is told of it. */
const WRONG = [
  [
    "missing",
    () => ({ status: 404, body: "<!doctype html><title>Not found</title>" }),
    /rates\.json: the host answered 404/,
  ],
  ["cut short", (text) => ({ body: text.slice(0, 2000) }), /expected a closing .* found the end of the file/],
  [
    "an error page under the name of the rates",
    () => ({ body: "<!doctype html><title>Not found</title>", contentType: "text/html" }),
    /the file: expected .* found "<"/,
  ],
  [
    "of a newer version",
    (text) => ({ body: text.replace("underpaint rates 1", "underpaint rates 2") }),
    /format: expected .*version.* found "underpaint rates 2"/,
  ],
  [
    "of three megabytes",
    (text) => ({ body: text + " ".repeat(3_000_000) }),
    /expected at most 2097152 characters, found 30\d{5}/,
  ],
];

for (const [name, answer, told] of WRONG) {
  test(`rates that are ${name}: said in words, the shop is told what, and no figure`, () =>
    visit({ allow: /404/ }, async (page, { dir, origin }) => {
      await page.route("**/rates.json", (route) =>
        route.fulfill({ contentType: "application/json", ...answer(sample(dir)) }),
      );
      await page.goto(`${origin}/`);
      const notice = page.locator('[data-band="rates"]');
      await notice.waitFor();
      assert.match(
        await notice.innerText(),
        /rates could not be read, so no figure is shown. Your answers are kept; please ask the shop/,
      );
      await notice.locator("summary").click();
      assert.match(await notice.innerText(), told);
      await press(page, "four_door_saloon");
      await page.getByLabel("Year").fill("1967");
      await page.getByRole("button", { name: "Continue" }).click();
      for (const a of ["mild", "driven_all_year", "show"]) await press(page, a);
      await sleep(500);
      assert.equal(await page.locator(".sentence, .dots, .stage-price").count(), 0, "no figure");
      assert.ok(await notice.isVisible());
      assert.match(await page.evaluate(() => JSON.stringify(history.state)), /1967/);
    }));
}

test("where no rates come, nothing seems to be on its way", () =>
  visit({ allow: /404/ }, async (page, { origin }) => {
    await page.route("**/rates.json", (route) => route.fulfill({ status: 404, body: "" }));
    await page.clock.install();
    await page.goto(`${origin}/`);
    await page.locator('[data-band="rates"]').waitFor();
    await page.clock.runFor(5000);
    assert.ok(await page.locator("#loading").isHidden());
  }));

test("rates replaced on the host are taken without a new build, compressed ones or not", () =>
  visit({}, async (page, { dir, origin, program, browser }) => {
    await firstRange(page, origin);
    const before = [
      await page.locator("#check-code").textContent(),
      await page.locator(".stage-price strong").first().textContent(),
    ];
    const other = join(mkdtempSync(join(tmpdir(), "replaced-")), "built");
    cpSync(dir, other, { recursive: true });
    const rates = JSON.parse(sample(dir));
    rates.shop.name = "Another invented shop";
    rates.valid_until = "2031-12-24";
    for (const trade of Object.values(rates.labour))
      if (trade.rate) trade.rate = String(2 * Number(trade.rate));
    writeFileSync(`${other}/rates.json`, JSON.stringify(rates));
    const host = await served(program, other);
    try {
      const { context, page: second, seen } = await visitor(browser, host.origin);
      await firstRange(second, host.origin);
      assert.match(await second.locator("#shop-name").textContent(), /Another invented shop/);
      assert.match(await second.locator("#rates-line").textContent(), /valid until December 24, 2031/);
      const now = [
        await second.locator("#check-code").textContent(),
        await second.locator(".stage-price strong").first().textContent(),
      ];
      assert.notEqual(now[0], before[0]);
      assert.notEqual(now[1], before[1]);
      assert.deepEqual(seen.errors, []);
      await context.close();
    } finally {
      host.stop();
    }
  }));

for (const [width, height] of [
  [360, 740],
  [1280, 900],
]) {
  test(`the shop and its dates stand beside the range at ${width} pixels`, () =>
    visit({ viewport: { width, height } }, async (page, { origin }) => {
      await firstRange(page, origin);
      assert.match(await page.locator("#shop-name").textContent(), /invented shop/);
      assert.match(
        await page.locator("#rates-line").textContent(),
        /Rates of June 3, 2026, valid until June 1, 2027/,
      );
      // A phone has the dates at the foot.
      const dates = width < 700 ? [] : ["#rates-line"];
      if (!dates.length)
        assert.match(await page.locator("#rates-foot").innerText(), /valid until June 1, 2027/);
      const boxes = await Promise.all(
        ["#shop-name", ...dates, ".sentence li >> nth=0", ".sentence li >> nth=2"].map((s) =>
          page.locator(s).boundingBox(),
        ),
      );
      for (const box of boxes) {
        assert.ok(box.width > 0 && box.x >= 0 && box.x + box.width <= width, JSON.stringify(box));
        assert.ok(box.y >= 0 && box.y + box.height <= height, `not in view together: ${JSON.stringify(box)}`);
      }
    }));
}
