// The budgets of what a visitor loads (site/build/budget.go), held against the
// built site.

import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { after, test } from "node:test";
import { closeAll, world } from "./browser.mjs";

after(closeAll);

test("what a visitor loads is within its budgets", async () => {
  const { program, dir } = await world();
  const done = spawnSync(program, ["weigh", "-dir", dir], { encoding: "utf8" });
  assert.equal(done.status, 0, done.stderr);
  assert.match(done.stdout, /first visit \d+ of \d+/);
});
