// How long the tests wait: by the pace of the machine, and never by a bare number.

import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { test } from "node:test";
import { measured, paceOf, paceSet, patience, REFERENCE, until } from "../pace.mjs";

const here = new URL("../", import.meta.url);

/** What a wait may not be: its own number, a timer with a number, or a browser's or a
 *  context's usual half minute. Ours is set where browser.mjs makes the context. */
const BARE = [
  /\btimeout: (?!patience\()/,
  /\.setDefault(Navigation)?Timeout\((?!patience\()/,
  /\.waitForTimeout\(/,
  /\bset(Timeout|Interval)\(.*, *[\d_]+\)/,
  /AbortSignal\.timeout\((?!patience\()/,
];
const CONTEXT =
  /\.(newContext|launchPersistentContext)\(|\bbrowser\.newPage\(|\.connectOverCDP\((?!.*timeout: patience\()|\.launch\((?!.*timeout: patience\()/;

const bare = (line, call, name) =>
  BARE.some((one) => one.test(line)) ||
  (CONTEXT.test(call) && !(name === "browser/browser.mjs" && line.includes("usual(await b.newContext")));

test("no test waits by a bare number", () => {
  const found = [];
  const names = ["browser", "unit"]
    .flatMap((folder) => readdirSync(new URL(folder, here)).map((name) => `${folder}/${name}`))
    .concat("pace.mjs")
    .filter((name) => name.endsWith(".mjs") && name !== "unit/pace.test.mjs");
  for (const name of names) {
    const lines = readFileSync(new URL(name, here), "utf8").split("\n");
    for (const [n, line] of lines.entries()) {
      // What a call is given may stand on the lines after it.
      const call = /\([^)]*\{$|\($/.test(line) ? lines.slice(n, n + 6).join(" ") : line;
      if (bare(line, call, name)) found.push(`${name}:${n + 1}: ${line.trim()}`);
    }
  }
  assert.deepEqual(found, []);
  assert.ok(names.length > 50, `${names.length} files read`);
});

test("the reading of the tests finds what it is for", () => {
  for (const line of [
    "waitFor({ timeout: 240_000 })",
    "{ timeout: MOST }",
    "page.setDefaultTimeout(15000);",
    "await page.waitForTimeout(300);",
    "setTimeout(later, 100)",
    'setTimeout(() => late(new Error("late")), 90_000)',
    "await browser.newContext();",
    "browser.newPage()",
    "chromium.launch({ args })",
    "chromium.connectOverCDP(at)",
  ])
    assert.ok(bare(line, line, "flow.mjs"), line);
  for (const line of [
    "waitFor({ timeout: patience(240_000) })",
    "setTimeout(later, patience(ms))",
    "setTimeout(later)",
    "newContext(browser, {})",
    "page.clock.runFor(21000)",
  ])
    assert.ok(!bare(line, line, "flow.mjs"), line);
});

test("a slow processor and a crowd both count, and nothing is below 1", () => {
  const quick = { busy: REFERENCE / 2, took: REFERENCE / 2 };
  assert.equal(paceOf(quick, 0.5, 2), 1, "a quick machine waits no less");
  assert.equal(paceOf({ busy: 4 * REFERENCE, took: 4 * REFERENCE }, 1, 2), 4, "four times slower");
  assert.equal(
    paceOf({ busy: REFERENCE, took: 8 * REFERENCE }, 1, 2),
    8,
    "eight want the core, and the load does not say so yet",
  );
  assert.equal(paceOf(quick, 16, 2), 8, "a crowd that came later");
  assert.equal(paceOf({ busy: 3 * REFERENCE, took: 6 * REFERENCE }, 10, 2), 15, "both");
});

test("the pace is measured, or taken from whoever starts the tests", () => {
  const [one, two] = [measured(), measured()];
  assert.equal(one.sum, two.sum);
  assert.ok(one.busy > 5 && one.took > 5, `${one.busy} and ${one.took} ms`);
  assert.ok(patience(1000) >= 1000 && Number.isInteger(patience(1000)));
  assert.deepEqual([paceSet(undefined), paceSet(""), paceSet("2.5")], [null, null, 2.5]);
  for (const text of ["0", "0.5", "-1", "fast", "NaN", "1e9"])
    assert.throws(() => paceSet(text), /SITE_PACE: expected a number from 1 to 1000/);
  const told = spawnSync(process.execPath, [new URL("pace.mjs", here).pathname, "1000"], {
    encoding: "utf8",
    env: { ...process.env, SITE_PACE: "8" },
  });
  assert.equal(told.stdout, "8000\n", told.stderr);
});

test("asking again ends with the answer or with the time", async () => {
  let asked = 0;
  assert.equal(await until(() => ++asked === 3, 5000), true);
  assert.equal(asked, 3);
  assert.equal(await until(() => false, 1), false);
});
