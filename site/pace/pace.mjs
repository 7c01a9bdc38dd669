// How soon an answer is there, in a real browser on a slowed processor. Prints a
// table of medians and, with --readme, writes it between its two marks there.
// Every wait is bounded: what does not come is an error.
//
//   node pace/pace.mjs [--runs 5] [--rates 1,4,6] [--readme ../README.md]

import { cpus } from "node:os";
import { parseArgs } from "node:util";
import { browser, closeAll, site } from "../test/browser/browser.mjs";
import { SLOW_4G, slowLine } from "./line.mjs";
import { tableOf, writeBetween } from "./table.mjs";
import { answering, starting } from "./ways.mjs";

const LEAST_RUNS = 5;
const MOST_MINUTES = 120;

const { values: o } = parseArgs({
  options: {
    runs: { type: "string", default: "5" },
    rates: { type: "string", default: "1,4,6" },
    readme: { type: "string" },
  },
});
const runs = Number(o.runs);
if (!Number.isInteger(runs) || runs < 1 || (o.readme && runs < LEAST_RUNS))
  throw new Error(`--runs: expected a whole number, for the README at least ${LEAST_RUNS}; found ${o.runs}`);
const rates = o.rates.split(",").map(Number);
if (!rates.every((r) => r >= 1)) throw new Error(`--rates: expected numbers from 1 upward, found ${o.rates}`);

setTimeout(() => {
  console.error(`pace: not done after ${MOST_MINUTES} minutes`);
  process.exit(1);
}, MOST_MINUTES * 60000).unref();

const built = await site();
const line = await slowLine(built.origin, SLOW_4G);
const world = { browser: await browser(), origin: built.origin, slow: line.origin };
const columns = rates.flatMap((rate) => [1, 2].map((workers) => ({ rate, workers, figures: {} })));
try {
  // In turn, so that a busy moment of the machine does not fall on one column alone.
  for (let run = 1; run <= runs; run++) {
    for (const { rate, workers, figures } of columns) {
      const machine = { rate, cores: workers === 1 ? 2 : 4 };
      const found = { ...(await answering(world, machine)), ...(await starting(world, machine)) };
      for (const [name, ms] of Object.entries(found)) {
        figures[name] ??= [];
        figures[name].push(ms);
      }
      console.error(
        `run ${run} of ${runs}, ${rate}×, ${workers} worker(s): ${Object.entries(found)
          .map(([name, ms]) => `${name} ${Math.round(ms)}`)
          .join(", ")}`,
      );
    }
  }
  const table = tableOf(columns, {
    runs,
    chromium: world.browser.version().split(".")[0],
    processor: `${cpus().length} cores of ${process.platform}/${process.arch}`,
  });
  console.log(table);
  if (o.readme) writeBetween(o.readme, table);
} finally {
  await world.browser.close();
  line.stop();
  built.stop();
  await closeAll();
}
