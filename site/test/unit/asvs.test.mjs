// ASVS.md names tests; each must be there, or the table would say what nobody holds.

import assert from "node:assert/strict";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import test from "node:test";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const root = resolve(here, "..", "..", "..");
const table = readFileSync(join(here, "..", "ASVS.md"), "utf8");

/** The page tests in a file, by the file's name. */
function pageTests(file) {
  const at = ["browser", "unit"]
    .map((folder) => join(here, "..", folder, file))
    .find((name) => existsSync(name));
  if (!at) return [];
  const calls = readFileSync(at, "utf8").matchAll(/\btest\(\s*(?:`([^`]+)`|"((?:[^"\\]|\\.)+)")/g);
  return [...calls].map(([, ticked, quoted]) => ticked ?? quoted);
}

/** Every Go test by name, in the whole tree. */
function goTests() {
  const files = ["engine", "site", "tests", "wasm"].flatMap((top) =>
    readdirSync(join(root, top), { recursive: true })
      .filter((n) => n.endsWith("_test.go"))
      .map((n) => join(root, top, n)),
  );
  return new Set(
    files.flatMap((name) =>
      [...readFileSync(name, "utf8").matchAll(/^func (Test\w+|Fuzz\w+)\(/gm)].map((m) => m[1]),
    ),
  );
}

/** What one cell names and is not there: a test, or a passage of a document. */
export function missing(cell, go) {
  const passages = [...cell.matchAll(/(\w+\.md), "([^"]+)"/g)]
    .filter(([, file, words]) => {
      try {
        return !readFileSync(join(root, file), "utf8").includes(`\n**${words}.**`);
      } catch {
        return true;
      }
    })
    .map(([whole]) => whole);
  const pages = [...cell.matchAll(/([\w.]+\.mjs): "([^"]+)"/g)]
    .filter(([, file, words]) => !pageTests(file).some((name) => name.includes(words)))
    .map(([whole]) => whole);
  return [
    ...passages,
    ...pages,
    ...[...cell.matchAll(/`((?:Test|Fuzz)\w+)`/g)].map((m) => m[1]).filter((name) => !go.has(name)),
  ];
}

test("every test that the table of security names is there, and every row has one or says why not", () => {
  const go = goTests();
  const rows = table
    .split("\n")
    .filter((line) => line.startsWith("| v5.0.0-"))
    .map((line) => line.split(" | "));
  assert.ok(rows.length > 40, `${rows.length} rows`);
  for (const [row, , cell] of rows) {
    assert.match(row, /^\| v5\.0\.0-\d+\.\d+\.\d+$/);
    assert.deepEqual(missing(cell, go), [], row);
    assert.ok(
      /\.mjs: "|`Test/.test(cell) || /^(Deploy|Documented|Not met): /.test(cell),
      `${row}: held by nothing`,
    );
  }
  assert.deepEqual(missing(table.slice(table.lastIndexOf("\n\n")), go), []);
  assert.equal(new Set(rows.map(([row]) => row)).size, rows.length, "a row is there twice");
  assert.deepEqual(
    missing('trustedtypes.mjs: "no such words" and `TestThatIsNot`, `TestServer`', go),
    ['trustedtypes.mjs: "no such words"', "TestThatIsNot"],
    "the check itself can fail",
  );
  assert.deepEqual(
    missing('Documented: README.md, "No such passage"', go),
    ['README.md, "No such passage"'],
    "and for documents",
  );
});
