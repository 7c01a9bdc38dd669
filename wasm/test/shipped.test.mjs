// What the modules of a build do when something goes wrong: in their host, and in
// themselves. A mistake is brought about by spoiling a file that the module carries,
// after it was loaded: nothing in it is there for tests.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";
import { asked, shipped } from "./shipped.mjs";

const folder = shipped();
const rates = readFileSync(new URL("../../engine/rates/data/sample.json", import.meta.url), "utf8");
const open = JSON.stringify({ id: 1, ask: "open", rates });
const SPOILT = [['"parts":', '"partz":']]; // of every body; prices of parts are held against them
const SENTENCE = "Something went wrong on our side. Nothing you entered is lost.";

for (const module of ["engine.wasm", "customer.wasm"]) {
  test(`${module}: answers on a host that lets it`, async () => {
    const { replies, ended, console } = await asked(folder, module, { requests: [open] });
    assert.equal(replies[0].kind, "opened");
    assert.deepEqual([ended, console], [null, []]);
  });

  for (const host of ["a global that throws", "a global that cannot be set", "no Reflect.set"]) {
    test(`${module}: ${host}: says that it cannot be asked, and ends`, async () => {
      const { ended, written, offered } = await asked(folder, module, { host });
      assert.equal(ended, 1, written);
      assert.equal(offered, false);
      assert.match(written, /the engine could not offer underpaintAsk: .*(the host forbids it|does not let it be set)/);
    });
  }

  test(`${module}: what is no text is refused in words`, async () => {
    const { replies } = await asked(folder, module, { requests: [7, null, { toString: null }, "", "{"] });
    for (const reply of replies) assert.deepEqual([reply.kind, reply.what], ["refused", "request"]);
  });

  test(`${module}: a panic tells`, async () => {
    const { replies, console, ended } = await asked(folder, module, { requests: [open, open], spoil: SPOILT });
    assert.equal(ended, null, "it goes on");
    for (const [n, reply] of replies.entries()) {
      assert.deepEqual([reply.id, reply.kind, reply.text], [1, "broken", SENTENCE]);
      const report = console[n];
      assert.match(report, /error in the program: engine: internal error: body \w+: /);
      assert.match(report, /\n {4}underpaint\/engine\/\S+ \(underpaint\/engine\/\S+\.go:\d+\)\n/, "functions, files and lines");
      if (module === "customer.wasm") { assert.deepEqual(Object.keys(reply), ["id", "kind", "text"]); continue; }
      assert.match(reply.panic, /^engine: internal error: /);
      assert.equal(report, `underpaint: an error in the program: ${[reply.panic, ...reply.stack].join("\n    ")}`);
      if (n === 0) assert.match(reply.stack[0], /^underpaint\/engine\/rates\.addWaysDone /, "the one that panicked first");
    }
  });

  for (const host of ["a console that throws", "no console"]) {
    test(`${module}: a panic tells where there is ${host}`, async () => {
      const { replies, console, written, ended } = await asked(folder, module, { host, requests: [open], spoil: SPOILT });
      assert.deepEqual([replies[0].kind, replies[0].text, ended, console], ["broken", SENTENCE, null, []]);
      assert.match(written, /error in the program: engine: internal error: [^]*\.go:\d+\)\n[^]*\n\(the console did not take this: /);
    });
  }
}
