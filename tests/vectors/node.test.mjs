// The vectors under Node: both engines as wasm, each asked through the one function
// that it exports. Builds them itself; needs Go.

import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import test, { after } from "node:test";
import assert from "node:assert/strict";
import { differences, replies, until, vectors, wrong } from "./run.mjs";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const folder = mkdtempSync(join(tmpdir(), "vectors-"));
after(() => rmSync(folder, { recursive: true, force: true }));

function go(args, env = {}) {
  const done = spawnSync("go", args, { cwd: root, encoding: "utf8", env: { ...process.env, ...env } });
  if (done.status !== 0) throw new Error(`go ${args.join(" ")}:\n${done.stdout}${done.stderr}`);
  return done.stdout.trim();
}

async function compiled(name, what) {
  const file = join(folder, name);
  go(["build", "-o", file, what], { GOOS: "js", GOARCH: "wasm" });
  return WebAssembly.compile(readFileSync(file));
}

/** Asks a fresh engine. */
async function fresh(module) {
  const program = new globalThis.Go();
  delete globalThis.underpaintAsk;
  program.run(await WebAssembly.instantiate(module, program.importObject));
  return globalThis.underpaintAsk;
}

await import(join(go(["env", "GOROOT"]), "lib", "wasm", "wasm_exec.js"));
const shop = await compiled("shop.wasm", "./wasm");
const customer = await compiled("customer.wasm", "./wasm/customer");

for (const vector of vectors()) {
  test(vector.name, async () => {
    const texts = replies(await fresh(shop), vector.requests, until(vector));
    assert.deepEqual(wrong(vector, texts), []);
    if (vector.customers) assert.deepEqual(replies(await fresh(customer), vector.requests, until(vector)), texts, "the customer's engine");
  });
}

test("another figure and other bytes are found", () => {
  const expect = { kind: "range", sha256: "0", figures: { "rows[0].low_minor": 100 } };
  assert.deepEqual(differences(expect, '{"id":1,"kind":"range","rows":[{"low_minor":101}]}'), ["rows[0].low_minor 100 → 101"]);
  assert.deepEqual(differences(expect, '{"id":1,"kind":"range","rows":[{"low_minor":100}]}'), ["other bytes, the same figures"]);
});
