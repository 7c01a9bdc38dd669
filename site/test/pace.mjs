// How much longer the tests wait here than on the machine for which their waits were
// chosen: a slow processor, or one that others are at as well, is no fault of a page.
// No test waits by a bare number; pace.test.mjs reads all of them for one.
//
//   node test/pace.mjs 60000    prints what a wait of that many milliseconds is here
//
// SITE_PACE is taken for the pace in place of what is measured.

import { availableParallelism, loadavg } from "node:os";
import { pathToFileURL } from "node:url";

/** Processor milliseconds that work() takes on that machine: median of 21 fresh
 *  processes on a quiet x64 server of two cores (own measurement, no published source). */
export const REFERENCE = 109;

/** Some whole numbers, added up so that nothing of it can be left out. */
function work() {
  let [x, sum] = [1, 0];
  for (let n = 0; n < 60_000_000; n++) {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5; // xorshift32, G. Marsaglia (2003)
    sum = (sum + (x & 255)) | 0;
  }
  return sum;
}

/** Processor and clock milliseconds of work(), and the sum that it came to. */
export function measured() {
  const [began, before] = [performance.now(), process.cpuUsage()];
  const sum = work();
  const { user, system } = process.cpuUsage(before);
  return { sum, busy: (user + system) / 1000, took: performance.now() - began };
}

/** How slow the processor is, times how many want each core; never below 1. busy and
 *  took are of work(); load is how many processes want a core. The clock sees a crowd at
 *  once and the load sees one that comes later, so the greater counts. */
export function paceOf({ busy, took }, load, cores) {
  return Math.max(1, busy / REFERENCE) * Math.max(1, took / busy, load / cores);
}

/** The pace that somebody set, or null. */
export function paceSet(text) {
  if (text === undefined || text === "") return null;
  const pace = Number(text);
  if (!(pace >= 1 && pace <= 1000))
    throw new Error(`SITE_PACE: expected a number from 1 to 1000, found ${text}`);
  return pace;
}

const set = paceSet(process.env.SITE_PACE);
const own = set === null ? measured() : null;

/** How long something may take here that may take ms on a quiet machine, in whole
 *  milliseconds. The load is asked anew each time. */
export const patience = (ms) => Math.ceil(ms * (set ?? paceOf(own, loadavg()[0], availableParallelism())));

export const sleep = (ms) =>
  new Promise((later) => {
    setTimeout(later, patience(ms));
  });

/** Asks until the answer is true, for as long as patience(ms); gives the last answer. */
export async function until(ask, ms) {
  for (const end = performance.now() + patience(ms); ; ) {
    const answer = await ask();
    if (answer || performance.now() > end) return answer;
    await sleep(50);
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const ms = Number(process.argv[2]);
  if (!(ms > 0)) throw new Error("expected milliseconds, as in: node test/pace.mjs 60000");
  console.log(patience(ms));
}
