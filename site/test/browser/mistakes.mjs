// A mistake of the engine, in the engine as it is served: a data file that it carries is
// spoilt in its memory before it runs. The shop's pages show what the panic said and
// where, to be copied; the customer's page has its sentence and no more.

import assert from "node:assert/strict";
import test from "node:test";
import { patience } from "../pace.mjs";
import { firstRange, press, visit } from "./browser.mjs";
import { openCar, stand, twoDoor } from "./surveycar.mjs";

/** What stands before worker.js: every engine that it starts has bodies and figures without parts. */
const SPOILER = `{
  const start = WebAssembly.instantiate;
  WebAssembly.instantiate = async (...given) => {
    const instance = await start(...given);
    const memory = new Uint8Array(instance.exports.mem.buffer);
    const from = new TextEncoder().encode('"parts":');
    for (let at = memory.indexOf(from[0]); at >= 0; at = memory.indexOf(from[0], at + 1)) {
      if (from.every((byte, k) => memory[at + k] === byte)) memory[at + 5] = "z".charCodeAt(0);
    }
    return instance;
  };
}
`;

async function spoilt(page) {
  await page.route("**/worker.js", async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, body: SPOILER + (await response.text()) });
  });
}

const ON_CONSOLE = /error in the program: engine: internal error: /;
const SENTENCE = "Something went wrong on our side. Nothing you entered is lost.";

for (const address of ["survey/", "why/", "rates/", "past-jobs/"]) {
  test(`/${address}: what a panic said and where can be read and copied`, () =>
    visit(
      { allow: ON_CONSOLE, permissions: ["clipboard-read", "clipboard-write"] },
      async (page, { origin, seen }) => {
        await spoilt(page);
        await page.goto(`${origin}/${address}`);
        const band = page.locator('[data-band="mistake"]');
        await band.waitFor({ timeout: patience(240_000) });
        await band.locator("summary").click();
        const text = await band.locator("pre").innerText();
        assert.match(
          text,
          /^build [0-9a-f]{10}\nengine: internal error: .*\nunderpaint\/engine\/\S+ \(underpaint\/engine\/\w+\/\w+\.go:\d+\)\n/,
        );
        await band.getByRole("button", { name: "Copy this text" }).click();
        await band.getByText("Copied.").waitFor();
        assert.equal(await page.evaluate(() => navigator.clipboard.readText()), text);
        assert.ok(
          seen.errors.some((e) => ON_CONSOLE.test(e) && e.includes(".go:")),
          "the console has it too",
        );
      },
    ));
}

test("the customer's page has the sentence, and the console the rest", () =>
  visit({ allow: ON_CONSOLE }, async (page, { origin, seen }) => {
    await spoilt(page);
    await page.goto(`${origin}/`);
    await page
      .locator("[data-band]")
      .first()
      .waitFor({ timeout: patience(240_000) });
    assert.match(await page.locator("#bands").innerText(), new RegExp(SENTENCE.replaceAll(".", "\\.")));
    assert.doesNotMatch(await page.locator("body").textContent(), /internal error|\.go:/);
    assert.equal(await page.locator('[data-band="mistake"]').count(), 0);
    assert.ok(seen.errors.some((e) => ON_CONSOLE.test(e) && e.includes(".go:")));
  }));

/** The engine of the page ends as when Go itself ends it: it writes why, and stops. */
const ended = (page) =>
  page.workers()[0].evaluate(() => {
    globalThis.underpaintAsk = () => {
      globalThis.fs.writeSync(2, new TextEncoder().encode("fatal error: made up by the test\n"));
      throw new Error("unreachable");
    };
  });

test("what Go wrote as it ended the engine is shown, and another engine goes on", () =>
  visit({}, async (page, { origin }) => {
    await openCar(page, origin, twoDoor);
    await ended(page);
    await stand(page);
    await page.keyboard.press("s");
    await page.locator('[data-band="restarted"]').waitFor();
    await page.locator('[data-band="mistake"] summary').click();
    assert.match(
      await page.locator('[data-band="mistake"] pre').innerText(),
      /unreachable\nfatal error: made up by the test/,
    );
  }));

test("a customer reads nothing of it", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    await ended(page);
    await page.getByRole("button", { name: /Change: Kept/ }).click();
    await press(page, "garage");
    await page.locator('[data-band="restarted"]').waitFor();
    assert.doesNotMatch(await page.locator("body").textContent(), /fatal error|unreachable/);
  }));
