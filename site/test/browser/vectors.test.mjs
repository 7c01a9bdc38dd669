// The vectors of tests/vectors in a real browser: both engines of the served site,
// asked through the function that they export, and the shop's through the site's own
// worker.

import assert from "node:assert/strict";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import test, { after } from "node:test";
import { replies, until, vectors, wrong } from "../../../tests/vectors/run.mjs";
import { closeAll, visit, world } from "./browser.mjs";

after(closeAll);

const all = vectors();
/** Those that the worker is asked too: what a page sends is an object, so not texts
 *  that are no JSON. */
const byWorker = all.filter((v) =>
  /^(told|money|survey-part|several|no-(unknown|negative|look|record|sum|rates))/.test(v.name),
);
assert.ok(byWorker.length >= 20, "vectors for the worker");

/** Where the pages of this build lie, such as /v-0123456789/. */
async function folder() {
  const { dir } = await world();
  return `/${readdirSync(dir).find((name) => name.startsWith("v-") && readdirSync(join(dir, name)).includes("engine.wasm"))}/`;
}

/** Puts an engine into the page, whose policy is set aside for it: what the policy
 *  holds back is the business of trustedtypes.mjs; window.answers gives the replies to a vector. */
async function engineIn(page, origin, engine) {
  const at = await folder();
  await page.goto(`${origin}/privacy.html`);
  await page.addScriptTag({ url: `${at}wasm_exec.js` });
  await page.evaluate(
    async ([file, source]) => {
      const run = (0, eval)(`(${source})`);
      const module = await WebAssembly.compileStreaming(fetch(file));
      window.answers = async (requests, until) => {
        const program = new window.Go();
        delete window.underpaintAsk;
        program.run(await WebAssembly.instantiate(module, program.importObject));
        return run(window.underpaintAsk, requests, until, 500);
      };
    },
    [at + engine, replies.toString()],
  );
}

for (const [engine, asked] of Object.entries({
  "engine.wasm": all,
  "customer.wasm": all.filter((v) => v.customers),
})) {
  test(`${engine} of the site gives the bytes of every vector that it is asked`, async () => {
    assert.ok(asked.length >= 40, `${asked.length} vectors`);
    await visit({ bypassCSP: true }, async (page, { origin }) => {
      await engineIn(page, origin, engine);
      const faults = [];
      for (const vector of asked) {
        const texts = await page.evaluate(
          ([requests, until]) => window.answers(requests, until),
          [vector.requests, until(vector)],
        );
        faults.push(...wrong(vector, texts));
      }
      assert.deepEqual(faults, []);
      // The gate can go red: another figure is found.
      const [first] = all.filter((v) => v.name === "told-two-door");
      const texts = await page.evaluate(
        ([requests, until]) => window.answers(requests, until),
        [first.requests, until(first)],
      );
      assert.equal(wrong(first, [texts[0], texts[1].replace('"low_minor":', '"low_minor":1')]).length, 1);
    });
  });
}

/** Asks the site's own worker, as pages do, and gives its replies as texts. */
async function throughWorker(page, at, vector) {
  return page.evaluate(
    async ([at, requests, until]) => {
      const worker = new Worker(`${at}worker.js`);
      window.heard = [];
      let heard = null;
      const next = (wanted) =>
        new Promise((resolve, reject) => {
          heard = (data) => {
            if (data.kind === "dead") reject(new Error(data.text));
            if (data.kind === wanted && data.last !== false) resolve(data);
          };
        });
      worker.onmessage = ({ data }) => {
        window.heard.push(JSON.stringify(data));
        heard?.(data);
      };
      const started = next("ready");
      worker.postMessage({ kind: "start", name: "engine.wasm" });
      await started;
      const out = [];
      for (const [n, text] of requests.entries()) {
        const { id, ...request } = JSON.parse(text);
        const answered = next("reply");
        worker.postMessage({ kind: until[n] ? "refine" : "ask", id, request });
        out.push(JSON.stringify((await answered).reply));
      }
      worker.terminate();
      return out;
    },
    [at, vector.requests, until(vector)],
  );
}

test("the site's own worker gives the same figures", async () => {
  await visit({ bypassCSP: true }, async (page, { origin }) => {
    const at = await folder();
    await page.goto(`${origin}/privacy.html`);
    for (const vector of byWorker) {
      // A reply has been an object on the way, so bytes may be written another way.
      const faults = wrong(vector, await throughWorker(page, at, vector)).filter(
        (fault) => !fault.endsWith("other bytes, the same figures"),
      );
      assert.deepEqual(faults, []);
    }
  });
});

test("a piece of an answer that says nothing new is not handed on", async () => {
  await visit({ bypassCSP: true }, async (page, { origin }) => {
    await page.goto(`${origin}/privacy.html`);
    const [worth] = all.filter((v) => v.name === "why-worth-settled");
    await throughWorker(page, await folder(), worth);
    const heard = (await page.evaluate(() => window.heard))
      .map((text) => JSON.parse(text))
      .filter((m) => m.reply?.kind === "worth");
    assert.deepEqual(
      heard.map((m) => m.reply.done),
      [...Array(13).keys()],
      "the looks, then each of twelve imagined outcomes",
    );
    assert.deepEqual(
      heard.map((m) => m.last),
      [...Array(12).fill(false), true],
    );
  });
});
