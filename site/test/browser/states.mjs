// What goes wrong: rates, engine, worker, connection. No figure is ever shown
// that does not hold, and the answers stay.

import assert from "node:assert/strict";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import test from "node:test";
import { patience, sleep } from "../pace.mjs";
import { firstRange, heading, newContext, press, sentence, settled, visit } from "./browser.mjs";
import { effectSettled, openRates, type } from "./ratesopen.mjs";
import { openCar, stand, step, twoDoor } from "./surveycar.mjs";

/** Answers the first questions without waiting for a range. */
async function answerAll(page) {
  await press(page, "four_door_saloon");
  await page.getByLabel("Year").fill("1967");
  await page.getByRole("button", { name: "Continue" }).click();
  for (const a of ["mild", "driven_all_year", "show"]) await press(page, a);
}

const noFigure = async (page) =>
  assert.equal(await page.locator(".sentence, .dots").count(), 0, "no figure is shown");

for (const [name, body, status] of [
  ["broken", '{"format": "underpaint rates 1", ', 200],
  ["missing", "", 404],
  ["of another kind", "[]", 200],
]) {
  test(`rates that are ${name}: the sentence for it, no figure, answers kept`, () =>
    visit({ allow: /404/ }, async (page, { origin }) => {
      await page.route("**/rates.json", (route) =>
        route.fulfill({ status, body, contentType: "application/json" }),
      );
      await page.goto(`${origin}/`);
      await page.waitForSelector('[data-band="rates"]');
      assert.match(
        await page.locator('[data-band="rates"]').innerText(),
        /rates could not be read, so no figure is shown/,
      );
      assert.equal(await page.locator("#rates-line").textContent(), "", "the dates of other rates");
      await answerAll(page);
      await noFigure(page);
      assert.match(await page.evaluate(() => JSON.stringify(history.state)), /1967/);
    }));
}

test("rates past their date are said under the range, in its size, and printed", () =>
  visit({}, async (page, { origin, dir }) => {
    const rates = JSON.parse(readFileSync(`${dir}/rates.json`, "utf8"));
    rates.valid_until = "2026-06-30";
    await page.clock.setFixedTime(new Date("2026-07-02T10:00:00"));
    await page.route("**/rates.json", (route) =>
      route.fulfill({ body: JSON.stringify(rates), contentType: "application/json" }),
    );
    await firstRange(page, origin);
    assert.match(await page.locator(".past").textContent(), /ran out/);
    const size = (s) =>
      page
        .locator(s)
        .first()
        .evaluate((n) => getComputedStyle(n).fontSize);
    assert.equal(await size(".past"), await size(".sentence"));
    await page.emulateMedia({ media: "print" });
    assert.ok(await page.locator(".past").isVisible());
  }));

test("a host that serves the engine under a wrong type does no harm", () =>
  visit({}, async (page, { origin }) => {
    await page.route("**/customer.wasm", async (route) => {
      const response = await route.fetch();
      await route.fulfill({
        response,
        headers: { ...response.headers(), "content-type": "application/octet-stream" },
      });
    });
    await firstRange(page, origin);
    assert.ok(await sentence(page));
  }));

test("an engine that cannot be loaded: no figure, answers kept, a way to try again", () =>
  visit({ allow: /404|Failed/ }, async (page, { origin }) => {
    await page.route("**/customer.wasm", (route) => route.fulfill({ status: 404, body: "" }));
    await page.goto(`${origin}/`);
    await page.waitForSelector('[data-band="dead"]');
    await answerAll(page);
    await noFigure(page);
    await page.unroute("**/customer.wasm");
    await page.getByRole("button", { name: "Try once more" }).click();
    await settled(page);
    assert.ok(await sentence(page));
  }));

for (const width of [360, 1280]) {
  test(`at ${width} px nothing moves under a finger while the sums get ready`, () =>
    visit({ viewport: { width, height: 740 } }, async (page, { origin }) => {
      let go;
      const held = new Promise((r) => {
        go = r;
      });
      await page.route("**/rates.json", async (route) => {
        await held;
        await route.continue();
      });
      await page.goto(`${origin}/`);
      const answer = page.locator("[data-answer]").first();
      const before = await answer.boundingBox();
      await page.locator("#loading").waitFor();
      assert.deepEqual(await answer.boundingBox(), before, "when the wait is told");
      go();
      await page.waitForFunction(() => document.getElementById("check-code").textContent);
      assert.deepEqual(await answer.boundingBox(), before, "when the rates are there");
      assert.ok(!(await page.locator("#loading").isVisible()));
    }));
}

test("half an engine is refused", () =>
  visit({ allow: /./ }, async (page, { origin, dir }) => {
    const id = JSON.parse(readFileSync(`${dir}/build.json`, "utf8")).id;
    const whole = readFileSync(`${dir}/v-${id}/customer.wasm`);
    await page.route("**/customer.wasm", (route) =>
      route.fulfill({ body: whole.subarray(0, whole.length >> 1), contentType: "application/wasm" }),
    );
    await page.goto(`${origin}/`);
    await page.waitForSelector('[data-band="dead"]');
    await noFigure(page);
  }));

test("a browser without WebAssembly says so", () =>
  visit({ allow: /./ }, async (page, { origin }) => {
    await page.route("**/worker.js", async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: `delete self.WebAssembly;\n${await response.text()}` });
    });
    await page.goto(`${origin}/`);
    await page.waitForSelector('[data-band="dead"]');
    assert.match(await page.locator('[data-band="dead"]').innerText(), /could not be done in this browser/);
  }));

test("without scripts the page says what it can", () =>
  visit({ javaScriptEnabled: false }, async (page, { origin }) => {
    await page.goto(`${origin}/`);
    await sleep(4500);
    assert.ok(await page.locator("#no-start").isVisible());
    assert.match(await page.locator("#no-start").innerText(), /not an estimate, not a quotation/);
  }));

test("a worker that dies is started again, and nothing entered is lost", () =>
  visit({ allow: /killed by the test/ }, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.workers()[0].evaluate(() => {
      setTimeout(() => {
        throw new Error("killed by the test");
      });
    });
    await page.waitForSelector('[data-band="restarted"]');
    assert.match(
      await page.locator('[data-band="restarted"]').innerText(),
      /started again. Nothing you entered is lost/,
    );
    await page.getByRole("button", { name: "Answer another question" }).click();
    await press(page, "no");
    await press(page, "10_to_20");
    await settled(page);
    assert.ok(await sentence(page));
  }));

/** The pages of the shop with something entered: how, where it stands, and what the
 *  sums have to say of it after they were started again. */
const SHOPS = {
  "survey/": {
    enter: async (page, origin) => {
      await openCar(page, origin, twoDoor);
      await stand(page);
      for (const key of "ss") await page.keyboard.press(key);
    },
    entered: (page) => page.evaluate(() => history.state.car.survey.length),
    want: 2,
    goesOn: async (page) => {
      await step(page, "stages").click();
      await page.waitForSelector(".before-after[data-state=settled]", { timeout: patience(300_000) });
    },
  },
  "rates/": {
    enter: async (page, origin) => {
      await openRates(page, origin);
      await type(page, "labour.metal.rate", "91.50");
    },
    entered: (page) => page.locator('[data-path="labour.metal.rate"] input').first().inputValue(),
    want: "91.50",
    goesOn: async (page) => {
      await type(page, "labour.metal.rate", "92.50");
      await effectSettled(page);
    },
  },
};

for (const [name, { enter, entered, want, goesOn }] of Object.entries(SHOPS)) {
  test(`/${name}: a worker that dies is started again, and nothing entered is lost`, () =>
    visit({ allow: /killed by the test/ }, async (page, { origin }) => {
      await enter(page, origin);
      await page.workers()[0].evaluate(() => {
        setTimeout(() => {
          throw new Error("killed by the test");
        });
      });
      await page.waitForSelector('[data-band="restarted"]');
      assert.match(
        await page.locator('[data-band="restarted"]').innerText(),
        /started again. Nothing you entered is lost/,
      );
      assert.equal(await entered(page), want);
      await goesOn(page);
    }));
}

test("a script that something on the way has changed is not run, and the page says what to do", () =>
  visit({ allow: /integrity|digest|Failed to load/ }, async (page, { origin }) => {
    for (const name of ["customer.js", "customer.css"]) {
      await page.route(`**/${name}`, async (route) => {
        const response = await route.fetch();
        await route.fulfill({ response, body: `${await response.text()}\n/* more */` });
      });
      await page.goto(`${origin}/`);
      if (name === "customer.css") {
        assert.equal(
          await page.evaluate(() => [...document.styleSheets].filter((s) => s.href).length),
          0,
          "a style that is another",
        );
      } else {
        await sleep(4500);
        assert.match(await page.locator("#no-start").innerText(), /load it again/);
        assert.equal(await page.locator("[data-answer]").count(), 0, `${name}: nothing of the page runs`);
      }
      await page.unroute(`**/${name}`);
    }
    await page.goto(`${origin}/`);
    await page.waitForSelector("[data-answer]");
  }));

test("a worker that dies in the middle of a range finishes that range", () =>
  visit({ allow: /killed by the test/ }, async (page, { origin }) => {
    await firstRange(page, origin);
    const before = await sentence(page);
    await page.workers()[0].evaluate(() => {
      const real = globalThis.underpaintAsk;
      globalThis.underpaintAsk = (text) => {
        if (JSON.parse(text).effort === "settle") throw new Error("killed by the test");
        return real(text);
      };
    });
    await page.getByRole("button", { name: /Change: Kept/ }).click();
    await press(page, "garage");
    await page.waitForSelector('[data-band="restarted"]');
    await settled(page);
    assert.ok((await sentence(page)) && before);
  }));

test("a worker that falls silent is taken for dead and started again", () =>
  visit({}, async (page, { origin }) => {
    await page.clock.install();
    await firstRange(page, origin);
    await page.workers()[0].evaluate(() => self.close());
    await page.getByRole("button", { name: /Change: Kept/ }).click();
    await press(page, "garage");
    await sleep(300);
    assert.equal(await page.locator('[data-band="restarted"]').count(), 0);
    await page.clock.runFor(21000);
    await page.waitForSelector('[data-band="restarted"]');
    await settled(page);
    assert.ok(await sentence(page));
  }));

test("a mistake inside the sums shows no figure", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.workers()[0].evaluate(() => {
      globalThis.underpaintAsk = (text) =>
        JSON.stringify({ id: JSON.parse(text).id, kind: "broken", text: "made up by the test" });
    });
    await page.getByRole("button", { name: /Change: Kept/ }).click();
    await press(page, "garage");
    await page.waitForSelector('[data-band="broken"]');
    await noFigure(page);
  }));

test("a refused entry is said with the way to its question, and no figure", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.workers()[0].evaluate(() => {
      globalThis.underpaintAsk = (text) =>
        JSON.stringify({
          id: JSON.parse(text).id,
          kind: "refused",
          what: "car",
          path: "made.year",
          text: "made.year: expected another year",
        });
    });
    await page.getByRole("button", { name: /Change: Kept/ }).click();
    await press(page, "garage");
    await page.waitForSelector('[data-band="refused"]');
    await noFigure(page);
    await page.getByRole("button", { name: "Change: Made" }).click();
    assert.equal(await heading(page), "What year was it made?");
  }));

test("a newer answer overtakes an older one", () =>
  visit({}, async (page, { origin }) => {
    await firstRange(page, origin);
    await page.getByRole("button", { name: "Answer another question" }).click();
    for (const a of ["no", "under_10", "no", "not_known_of"]) await press(page, a);
    await settled(page);
    const shown = await sentence(page);
    await page.reload();
    await settled(page);
    assert.equal(shown, await sentence(page), "the range is that of the newest answers");
  }));

/** Waits until the worker for offline use has the whole build. */
const takenIn = (page) => page.evaluate(() => navigator.serviceWorker.ready.then(() => true));

test("the second time it works without a connection", () =>
  visit(
    { worker: "allow", allow: /ERR_INTERNET|Failed to load|Failed to fetch/ },
    async (page, { origin, context }) => {
      await firstRange(page, origin);
      const before = await sentence(page);
      await takenIn(page);
      await context.setOffline(true);
      const second = await context.newPage();
      await firstRange(second, origin);
      assert.equal(await sentence(second), before);
      assert.match(await second.locator("#offline").textContent(), /No connection: everything still works/);
      await second.locator(".opened-out").first().waitFor();
      await second.goto(`${origin}/about.html`);
      assert.equal(await heading(second), "About the figures");
    },
  ));

test("a build that is only half there is never used", () =>
  visit({ worker: "allow", allow: /./ }, async (page, { origin, context }) => {
    await context.route("**/customer.css", async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: `${await response.text()}\n/* from another build */` });
    });
    await page.goto(`${origin}/`);
    const states = await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.register("sw.js");
      const worker = registration.installing;
      if (worker && worker.state === "installing")
        await new Promise((r) => worker.addEventListener("statechange", r, { once: true }));
      return [worker?.state ?? "redundant", Boolean(registration.active)];
    });
    assert.deepEqual(states, ["redundant", false]);
  }));

test("new rates are taken without a new build", () =>
  visit({ worker: "allow" }, async (page, { origin, dir, context }) => {
    await page.goto(`${origin}/`);
    await takenIn(page);
    await page.reload();
    const rates = readFileSync(`${dir}/rates.json`, "utf8");
    await context.route("**/rates.json", (route) =>
      route.fulfill({ body: `${rates} `, contentType: "application/json" }),
    );
    const length = await page.evaluate(async () => (await (await fetch("rates.json")).text()).length);
    assert.equal(length, rates.length + 1);
  }));

/** Makes the served folder look as if another build had been copied over it. */
function otherBuild(dir) {
  const names = ["sw.js", "sw.js.br", "sw.js.gz"];
  const kept = names.map((n) => readFileSync(`${dir}/${n}`));
  writeFileSync(`${dir}/sw.js`, String(kept[0]).replace(/id: "[0-9a-f]+"/, 'id: "other"'));
  rmSync(`${dir}/sw.js.br`);
  rmSync(`${dir}/sw.js.gz`);
  return () =>
    names.forEach((n, i) => {
      writeFileSync(`${dir}/${n}`, kept[i]);
    });
}

const builds = (page) => page.evaluate(() => caches.keys());

test("a newer build takes over by itself while nothing is entered, and is offered while something is", () =>
  visit({ worker: "allow" }, async (page, { origin, dir, browser }) => {
    const second = await newContext(browser);
    const entered = await second.newPage();
    for (const p of [page, entered]) {
      await p.goto(`${origin}/`);
      await takenIn(p);
      await p.reload();
      await sleep(500);
    }
    const [before] = await builds(page);
    await answerAll(entered);
    await settled(entered);
    const restore = otherBuild(dir);
    try {
      await page.reload();
      await page.waitForFunction(async (old) => {
        const k = await caches.keys();
        return k.length === 1 && k[0] !== old;
      }, before);
      await entered.reload();
      await entered.waitForSelector('[data-band="newer"]');
      assert.ok((await builds(entered)).includes(before), "the build in use stays whole");
      await entered.getByRole("button", { name: "Load it" }).click();
      await entered.waitForFunction(async (old) => {
        const k = await caches.keys();
        return k.length === 1 && k[0] !== old;
      }, before);
      await settled(entered);
      assert.match(await entered.locator(".basis").innerText(), /1967/);
    } finally {
      restore();
      await second.close();
    }
  }));

test("the server sends the policy, and the browser keeps to it", () =>
  visit({ allow: /Content Security Policy|TrustedScript/ }, async (page, { origin }) => {
    const response = await page.goto(`${origin}/`);
    const headers = response.headers();
    assert.match(headers["content-security-policy"], /default-src 'none'.*'wasm-unsafe-eval'/);
    assert.equal(headers["x-content-type-options"], "nosniff");
    const ran = await page.evaluate(() => {
      const script = document.createElement("script");
      try {
        script.textContent = "globalThis.ranInline = true";
      } catch (error) {
        return error.message;
      }
      document.head.append(script);
      return Boolean(globalThis.ranInline);
    });
    assert.match(String(ran), /TrustedScript/);
  }));
