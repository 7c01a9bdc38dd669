// The modules that a visitor gets, as a build of the site makes them, each started in
// a thread of its own with a host that the test chooses. Needs Go and Node.

import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

/** The folder of a build with engine.wasm, customer.wasm and wasm_exec.js: the one that
 *  SITE_BUILT names, or a new one. */
export function shipped() {
  let built = process.env.SITE_BUILT && join(process.env.SITE_BUILT, "built");
  if (!built) {
    built = mkdtempSync(join(tmpdir(), "shipped-"));
    process.on("exit", () => rmSync(built, { recursive: true, force: true }));
    const done = spawnSync("go", ["run", "./site", "build", "-out", built, "-rates", "engine/rates/data/sample.json"], { cwd: root, encoding: "utf8" });
    if (done.status !== 0) throw new Error(done.stdout + done.stderr);
  }
  return join(built, readdirSync(built).find((name) => name.startsWith("v-")));
}

/** Starts a module and asks it. host: a name in host.mjs. Gives {replies, console,
 *  written, ended}: the replies as objects, what went to the console as an error, what
 *  the program wrote by itself, and how it ended, if it did. */
export function asked(folder, module, { host = "plain", requests = [], spoil = [] }) {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL("host.mjs", import.meta.url), { workerData: { folder, module, host, requests, spoil }, stdout: true, stderr: true });
    worker.once("message", (result) => { resolve(result); worker.terminate(); });
    worker.once("error", reject);
  });
}
