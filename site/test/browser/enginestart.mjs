// How a page starts the engine and who answers what: loaded and compiled once, a
// second worker where the machine has the cores, the same answers either way.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";
import { fileURLToPath } from "node:url";
import { buildSync } from "esbuild";
import { patience, sleep } from "../pace.mjs";
import { firstRange, press, sentence, settled, visit } from "./browser.mjs";
import { largest, openFile } from "./surveycar.mjs";

/** A range by itself stays below 40 MB, a full survey reached 55 and one with door
 *  gaps 70, as measured on this page; the rest is room, an assumption. */
const MOST_MEMORY = 96 * 2 ** 20;

/** Says how many cores there are, and notes what workers are told and answer. */
async function machine(page, cores, mostWorkers = 9) {
  await page.addInitScript(
    ([n, most]) => {
      Object.defineProperty(navigator, "hardwareConcurrency", { value: n });
      globalThis.noted = {
        workers: 0,
        refused: 0,
        whenStarted: [],
        modules: 0,
        names: 0,
        asked: [],
        last: [],
        overtaken: 0,
      };
      const { noted } = globalThis;
      globalThis.Worker = class extends Worker {
        #number = noted.workers++;
        #asked = new Map();
        constructor(...all) {
          if (noted.workers >= most) {
            noted.refused++;
            throw new Error("refused by the test");
          }
          noted.whenStarted.push(document.body.dataset.range ?? "");
          super(...all);
          this.addEventListener("message", ({ data }) => {
            if (data.kind === "overtaken") noted.overtaken++;
            if (data.kind === "reply" && data.last)
              noted.last.push({
                ask: this.#asked.get(data.id),
                worker: this.#number,
                text: JSON.stringify({ ...data.reply, id: 0 }),
              });
          });
        }

        postMessage(message) {
          if (message.module) noted.modules++;
          if (message.name) noted.names++;
          if (message.request) {
            this.#asked.set(message.id, message.request.ask);
            noted.asked.push(`${message.request.ask} ${this.#number}`);
          }
          super.postMessage(message);
        }
      };
    },
    [cores, mostWorkers],
  );
}

const noted = (page) => page.evaluate(() => globalThis.noted);
const openFold = (page, kind) => page.locator(`.fold-${kind} > summary`).click();
const foldDone = (page, kind) =>
  page.waitForSelector(`.fold-${kind}[data-state=settled]`, { timeout: patience(480_000) });
const killed = "killed by the test";
const kill = (worker) =>
  worker.evaluate((text) => {
    setTimeout(() => {
      throw new Error(text);
    });
  }, killed);

for (const [cores, workers] of [
  [2, 1],
  [3, 1],
  [4, 2],
  [8, 2],
]) {
  test(`${cores} cores: ${workers === 1 ? "one worker" : "two workers, the second once it is needed"}, the engine loaded and compiled once`, () =>
    visit({}, async (page, { origin }) => {
      const loads = [];
      page.on("request", (r) => {
        if (/\.wasm$/.test(r.url())) loads.push(r.url());
      });
      await machine(page, cores);
      await firstRange(page, origin);
      await openFold(page, "plan");
      await foldDone(page, "plan");
      const seen = await noted(page);
      assert.deepEqual(
        seen.whenStarted,
        ["", "settled"].slice(0, workers),
        "none is started before it is needed",
      );
      assert.deepEqual([loads.length, seen.modules, seen.names], [1, workers, 0]);
      assert.ok(
        seen.asked.includes(`plan ${workers - 1}`) && seen.asked.includes("range 0"),
        seen.asked.join(", "),
      );
    }));
}

test("a browser that lets no compiled engine through to workers: each compiles it by itself", () =>
  visit({}, async (page, { origin }) => {
    await page.addInitScript(() => {
      const real = Worker.prototype.postMessage;
      Worker.prototype.postMessage = function (message) {
        if (message.module) throw new DOMException("refused by the test", "DataCloneError");
        return real.call(this, message);
      };
    });
    await machine(page, 4);
    await firstRange(page, origin);
    await openFold(page, "plan");
    await foldDone(page, "plan");
    const seen = await noted(page);
    assert.deepEqual([seen.workers, seen.names], [2, 2]);
  }));

test("a compiled engine that does not arrive: the worker is started again and compiles it by itself", () =>
  visit({}, async (page, { origin }) => {
    await page.route("**/worker.js", async (route) => {
      const response = await route.fetch();
      await route.fulfill({
        response,
        body: `${await response.text()}\nconst take = self.onmessage;\nself.onmessage = (e) => (e.data.module ? self.onmessageerror() : take(e));\n`,
      });
    });
    await machine(page, 2);
    await firstRange(page, origin);
    const seen = await noted(page);
    assert.deepEqual([seen.workers, seen.modules, seen.names], [2, 1, 1]);
    assert.equal(
      await page.locator('[data-band="restarted"]').count(),
      0,
      "nothing was lost, so nothing is said",
    );
  }));

test("a page without WebAssembly says so", () =>
  visit({ allow: /./ }, async (page, { origin }) => {
    await page.addInitScript(() => {
      delete globalThis.WebAssembly;
    });
    await page.goto(`${origin}/`);
    await page.waitForSelector('[data-band="dead"]');
  }));

test("an engine that is not the one of the page is refused, though it would run", () =>
  visit({}, async (page, { origin, dir }) => {
    const id = JSON.parse(readFileSync(`${dir}/build.json`, "utf8")).id;
    // A section of another's own at the end: a valid module (WebAssembly Core, 5.5.3).
    const other = Buffer.concat([readFileSync(`${dir}/v-${id}/customer.wasm`), Buffer.from([0, 2, 1, 120])]);
    await page.route("**/customer.wasm", (route) =>
      route.fulfill({ body: other, contentType: "application/wasm" }),
    );
    await page.goto(`${origin}/`);
    await page.waitForSelector('[data-band="dead"]');
    assert.ok(
      await page.evaluate(
        (b) => WebAssembly.validate(Uint8Array.from(b)),
        [...other.subarray(0, 8), 0, 2, 1, 120],
      ),
    );
    assert.equal(await page.locator(".sentence, .dots").count(), 0);
  }));

/** All last answers of a visit that opens every fold, by what was asked. */
async function everyAnswer(cores) {
  let answers;
  await visit({}, async (page, { origin }) => {
    await machine(page, cores);
    await firstRange(page, origin, { place: "salt" });
    await page.waitForSelector(".one-look[data-worth=settled]", { timeout: patience(480_000) });
    for (const kind of ["plan", "decide", "wide"]) {
      await openFold(page, kind);
      await foldDone(page, kind);
    }
    const seen = await noted(page);
    assert.equal(seen.workers, cores < 4 ? 1 : 2);
    answers = new Map(seen.last.map(({ ask, text }) => [ask, text]));
    answers.set("page", await page.locator("main").innerText());
  });
  return answers;
}

test("two workers answer in the same bytes as one", async () => {
  const [one, two] = [await everyAnswer(2), await everyAnswer(4)];
  assert.deepEqual([...one.keys()].sort(), ["decide", "open", "page", "plan", "range", "wide", "worth"]);
  for (const [ask, text] of one) assert.equal(two.get(ask), text, ask);
});

/** Holds what a worker answers to some questions back until release() is called. */
const hold = (worker, asks) =>
  worker.evaluate((list) => {
    const real = globalThis.underpaintAsk;
    globalThis.release = () => {
      globalThis.underpaintAsk = real;
    };
    globalThis.underpaintAsk = (text) => {
      const { ask, id } = JSON.parse(text);
      return list.includes(ask)
        ? JSON.stringify({ id, kind: ask, state: "refining", progress_text: "held by the test" })
        : real(text);
    };
  }, asks);

for (const cores of [2, 4]) {
  test(`${cores} cores: what is asked beside the range does not stop it, and gets its answer`, () =>
    visit({}, async (page, { origin }) => {
      await machine(page, cores);
      await firstRange(page, origin);
      await hold(page.workers()[0], ["range"]);
      await page.getByRole("button", { name: /Change: Kept/ }).click();
      await press(page, "garage");
      await page.locator(".fold-wide").waitFor({ state: "attached" });
      await openFold(page, "wide");
      await page.waitForFunction(() => globalThis.noted.asked.some((a) => a.startsWith("wide")));
      await page.workers()[0].evaluate(() => globalThis.release());
      await settled(page);
      await foldDone(page, "wide");
    }));
}

/** The page's side of the engine by itself, as a script that lies beside the others of the build. */
const engineClient = buildSync({
  entryPoints: [fileURLToPath(new URL("../../pages/shared/engineclient.ts", import.meta.url))],
  bundle: true,
  format: "esm",
  write: false,
}).outputFiles[0].text;

test("with one worker a newer range does not wait for what was asked beside the older one, which is answered after it", () =>
  visit({}, async (page, { origin }) => {
    await machine(page, 2);
    await firstRange(page, origin);
    await page.route("**/engineclient.js", (route) =>
      route.fulfill({ body: engineClient, contentType: "text/javascript" }),
    );
    const order = await page.evaluate(async (name) => {
      const { EngineClient } = await import(
        new URL(name, document.querySelector("script[type=module]").src).href
      );
      const link = new EngineClient({ loading() {}, restarted() {} }, "customer.wasm", ["plan", "decide"]);
      await link.open(await (await fetch("rates.json")).text());
      const car = {
        format: "underpaint car 1",
        asked_in: 2026,
        bodies: ["two_door_unitary"],
        made: { year: 1967 },
        life: [{ place: "mild", kept: "driven_all_year" }],
        standard: "show",
        scope: "whole_body",
      };
      const came = [];
      const note = (what) => (reply) => {
        if (reply.kind === "refused") came.push(reply.text);
        if (!came.includes(what)) came.push(what);
      };
      // While the first of them is worked out, all others reach the worker.
      await Promise.all([
        link.ask({ ask: "wide", car }),
        link.ask({ ask: "plan", car }).then(note("plan")),
        link.ask({ ask: "decide", car }).then(note("decide")),
        link.range({ car }, note("a range")).then(note("settled")),
      ]);
      return came;
    }, "engineclient.js");
    assert.deepEqual(order, ["a range", "settled", "plan", "decide"]);
  }));

test("a newer answer takes the place of what was worked out beside the older one", () =>
  visit({}, async (page, { origin }) => {
    await machine(page, 4);
    await firstRange(page, origin);
    await openFold(page, "plan");
    await foldDone(page, "plan");
    await hold(page.workers()[1], ["wide"]);
    await openFold(page, "wide");
    await page.getByText("held by the test").waitFor();
    const { overtaken } = await noted(page);
    await page.getByRole("button", { name: /Change: Kept/ }).click();
    await press(page, "garage");
    await settled(page);
    await page.waitForFunction((n) => globalThis.noted.overtaken > n, overtaken);
  }));

test("the second worker dies: started again with the same rates, nothing entered is lost", () =>
  visit({ allow: /killed by the test/ }, async (page, { origin }) => {
    await machine(page, 4);
    await firstRange(page, origin);
    await openFold(page, "plan");
    await foldDone(page, "plan");
    const shown = await sentence(page);
    await kill(page.workers()[1]);
    await page.waitForSelector('[data-band="restarted"]');
    await openFold(page, "decide");
    await foldDone(page, "decide");
    assert.equal(await sentence(page), shown);
    const seen = await noted(page);
    assert.deepEqual(
      [seen.workers, seen.modules, seen.last.filter((l) => l.ask === "open").map((l) => l.worker)],
      [3, 3, [0, 1, 2]],
    );
  }));

test("the second worker dies in the middle of an answer, which is given all the same; the range goes on", () =>
  visit({ allow: /killed by the test/ }, async (page, { origin }) => {
    await machine(page, 4);
    await firstRange(page, origin);
    await openFold(page, "plan");
    await foldDone(page, "plan");
    await page.workers()[1].evaluate((text) => {
      const real = globalThis.underpaintAsk;
      let n = 0;
      globalThis.underpaintAsk = (request) => {
        if (JSON.parse(request).ask === "wide" && ++n === 3) throw new Error(text);
        return real(request);
      };
    }, killed);
    await openFold(page, "wide");
    await page.waitForSelector('[data-band="restarted"]');
    await foldDone(page, "wide");
    await page.getByRole("button", { name: /Change: Kept/ }).click();
    await press(page, "garage");
    await settled(page);
  }));

test("the first worker dies while the second works: each gives its answer", () =>
  visit({ allow: /killed by the test/ }, async (page, { origin }) => {
    await machine(page, 4);
    await firstRange(page, origin);
    await openFold(page, "plan");
    await foldDone(page, "plan");
    await openFold(page, "wide");
    await kill(page.workers()[0]);
    await page.waitForSelector('[data-band="restarted"]');
    await foldDone(page, "wide");
    await page.getByLabel(/A sum you have in mind/).fill("30000");
    await page.getByRole("button", { name: "Work it out" }).click();
    await page.waitForFunction(
      () =>
        document.querySelector(".cover-answer").textContent ||
        document.querySelector(".cover .error:not([hidden])"),
    );
  }));

test("the second worker falls silent: taken for dead and started again", () =>
  visit({}, async (page, { origin }) => {
    await page.clock.install();
    await machine(page, 4);
    await firstRange(page, origin);
    await openFold(page, "plan");
    await foldDone(page, "plan");
    await page.workers()[1].evaluate(() => {
      setTimeout(() => self.close());
    });
    await openFold(page, "decide");
    await sleep(300);
    assert.equal(await page.locator('[data-band="restarted"]').count(), 0);
    await page.clock.runFor(21000);
    await page.waitForSelector('[data-band="restarted"]');
    await foldDone(page, "decide");
  }));

test("a second worker that cannot be started: the first answers everything", () =>
  visit({}, async (page, { origin }) => {
    await machine(page, 4, 1);
    await firstRange(page, origin);
    await openFold(page, "plan");
    await foldDone(page, "plan");
    const seen = await noted(page);
    assert.deepEqual([seen.workers, seen.refused], [1, 1], "it is tried once");
    assert.ok(seen.asked.includes("plan 0"), seen.asked.join(", "));
    assert.equal(await page.locator('[data-band="restarted"], [data-band="dead"]').count(), 0);
  }));

const whole = { ...largest, stages: [{ stage: "survey", on: "2026-06-20" }] };
/** The same with the gaps of its doors seen before it was stripped, which takes most. */
const withGaps = {
  ...largest,
  stages: [
    { stage: "walk_round", on: "2026-06-10" },
    { stage: "survey", on: "2026-06-20" },
  ],
  looks: [
    { look: "gaps", on: "left", result: "yes", by: "shop" },
    { look: "gaps", on: "right", result: "no", by: "shop" },
  ],
};
const found = ["light_pitting", "heavy_pitting", "rusted_through", "sound"];

/** A car with every part recorded. */
async function surveyed(worker, plain) {
  const sheet = await worker.evaluate(
    (car) => JSON.parse(globalThis.underpaintAsk(JSON.stringify({ id: 1, ask: "sheet", car }))),
    plain,
  );
  return {
    ...plain,
    survey: Object.keys(sheet.items).map((on, n) => ({
      on,
      stage: "survey",
      condition: found[n % found.length],
    })),
  };
}

for (const [what, plain] of [
  ["a full survey", whole],
  ["a full survey and door gaps", withGaps],
])
  test(`the largest body with ${what}, everything worked out in one worker: memory stays within its budget`, () =>
    visit({}, async (page, { origin }) => {
      await page.route("**/worker.js", async (route) => {
        const response = await route.fetch();
        const noting =
          "const real = WebAssembly.instantiate; WebAssembly.instantiate = async (...all) => { const done = await real(...all); globalThis.memoryOfTest = (done.instance ?? done).exports.mem; return done; };";
        await route.fulfill({ response, body: `${noting}\n${await response.text()}` });
      });
      await machine(page, 2);
      await page.goto(`${origin}/survey/`);
      await page.waitForSelector("[data-key=sample]", { timeout: patience(180_000) });
      await openFile(page, origin, await surveyed(page.workers()[0], plain));
      await page.locator("[data-key=range]").click();
      await page.waitForSelector(".range-strip[data-range=settled]", { timeout: patience(300_000) });
      await page.evaluate(() => {
        location.hash = "stages";
      });
      await page.waitForSelector(".before-after [data-worth=settled], .before-after[data-worth=settled]", {
        timeout: patience(1_500_000),
      });
      await page.evaluate(() => {
        location.hash = "papers";
      });
      await page.waitForSelector(".papers[data-state=whole]", { timeout: patience(600_000) });
      const sizes = await Promise.all(
        page.workers().map((w) => w.evaluate(() => globalThis.memoryOfTest.buffer.byteLength)),
      );
      console.log(`# memory of the engine: ${(sizes[0] / 2 ** 20).toFixed(1)} MB`);
      assert.equal(sizes.length, 1);
      for (const size of sizes) assert.ok(size > 2 ** 20 && size <= MOST_MEMORY, `${size} bytes`);
    }));
