// One thread with one module in it, and a host that may stand in its way.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { parentPort, workerData } from "node:worker_threads";

const { folder, module, host, requests, spoil } = workerData;
const NAME = "underpaintAsk";
const result = { replies: [], console: [], written: "", ended: null };

// As in a browser's worker: the loader finds no file system and makes its own, which
// shows on the console what the program writes.
console.error = (text) => { result.console.push(text); };
console.log = (text) => { result.written += `${text}\n`; };
console.warn = () => {};

const refuse = () => { throw new TypeError("the host forbids it"); };
const hosts = {
  plain() {},
  "a global that throws"() { Object.defineProperty(globalThis, NAME, { set: refuse, configurable: true }); },
  "a global that cannot be set"() { Object.defineProperty(globalThis, NAME, { value: null, writable: false }); },
  "no Reflect.set"() { const { set } = Reflect; Reflect.set = (target, name, value) => (name === NAME ? refuse() : set(target, name, value)); },
  "a console that throws"() { console.error = refuse; },
  "no console"() { console.error = undefined; },
};

createRequire(import.meta.url)(join(folder, "wasm_exec.js"));
hosts[host]();
const go = new Go();
const { instance } = await WebAssembly.instantiate(readFileSync(join(folder, module)), go.importObject);

/** Overwrites a text wherever it lies in the program's memory. */
function overwrite(from, to) {
  const memory = Buffer.from(instance.exports.mem.buffer);
  let found = 0;
  for (let at = memory.indexOf(from); at >= 0; at = memory.indexOf(from, at + 1)) { memory.write(to, at); found += 1; }
  if (found === 0) throw new Error(`${from} is nowhere in memory`);
}

go.exit = (code) => { result.ended = code; };
const ran = go.run(instance);
ran.catch((error) => { result.ended = String(error); });
for (const [from, to] of spoil) overwrite(from, to);
for (const request of requests) {
  try { result.replies.push(JSON.parse(globalThis[NAME](request))); } catch (error) { result.replies.push({ threw: String(error) }); }
}
await new Promise((resolve) => setTimeout(resolve, 20));
result.offered = typeof globalThis[NAME] === "function";
parentPort.postMessage(result);
