// Files that become jobs: cars that wait to be completed, and another file of past jobs that
// is added to the open one.

import { button, el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { messageOf, readCarFile } from "../shared/files.ts";
import type { JobsFile } from "../shared/jobsfile.ts";
import { today } from "../shared/linkcontent.ts";
import { isObject } from "../shared/ratesfile.ts";
import type { FileFault } from "./faults.ts";
import { carOf, readJobsText } from "./jobfile.ts";
import type { Ledger } from "./ledger.ts";
import type { WaitingCar } from "./storage.ts";

/** A file that was not taken, and why. */
interface RefusedFile {
  place: string;
  text: string;
}

/** Reads car files: the good ones, and those that were refused. */
export async function carsOf(
  files: readonly File[],
  client: EngineClient,
): Promise<{ good: WaitingCar[]; refused: RefusedFile[] }> {
  const good: WaitingCar[] = [];
  const refused: RefusedFile[] = [];
  for (const file of files) {
    try {
      const reply = await client.ask({ ask: "check_car", car: await readCarFile(file) });
      if (reply.kind === "car_ok") good.push({ name: file.name, car: carOf(reply) });
      else refused.push({ place: file.name, text: reply.text });
    } catch (error) {
      refused.push({ place: file.name, text: messageOf(error) });
    }
  }
  return { good, refused };
}

export interface WaitingHost {
  complete(car: WaitingCar): void;
  leave(car: WaitingCar): void;
}

/** The cars that wait, each with what can be done about it; null when there are none. */
export function waitingBox(
  waiting: readonly WaitingCar[],
  { complete, leave }: WaitingHost,
): HTMLElement | null {
  if (waiting.length === 0) return null;
  return el(
    "section",
    { class: "waiting-cars", "aria-labelledby": "waiting-title" },
    el(
      "h2",
      { id: "waiting-title" },
      waiting.length === 1 ? "1 car waits to be completed" : `${waiting.length} cars wait to be completed`,
    ),
    el(
      "p",
      { class: "hint" },
      "They are no jobs yet, and stand in no saved file, until it is entered what they came to.",
    ),
    el(
      "ul",
      {},
      waiting.map((w) =>
        el(
          "li",
          {},
          el("span", {}, w.name),
          " ",
          button(["Complete", el("span", { class: "visually-hidden" }, ` ${w.name}`)], () => complete(w)),
          button(["Leave out", el("span", { class: "visually-hidden" }, ` ${w.name}`)], () => leave(w), {
            class: "quiet",
          }),
        ),
      ),
    ),
  );
}

/** What became of a merge: faults, with the file that was tried, or what was done in words. */
type Merged = { faults: FileFault[]; file?: object; text?: undefined } | { faults?: undefined; text: string };

/** Adds the jobs of another file to the open one. */
export async function merge(file: File, ledger: Ledger): Promise<Merged> {
  let other: unknown;
  const text = await readJobsText(file);
  try {
    other = JSON.parse(text);
  } catch {
    return { faults: [{ path: file.name, text: "This is not a file of past jobs, or it is not whole." }] };
  }
  const mine = ledger.current;
  if (!isLike(other, mine)) {
    const format = isObject(other) ? other.format : null;
    const found = typeof format === "string" ? format : "another kind of file";
    return { faults: [{ path: "format", found, expected: mine.format }] };
  }
  if (other.currency !== mine.currency)
    return {
      faults: [
        {
          path: "currency",
          found: String(other.currency),
          expected: `${mine.currency}, as in the file in hand`,
        },
      ],
    };
  const twice = clashes(mine, other);
  if (twice.length) return { faults: twice };
  const codes = new Set((await ledger.codes(today())).map((r) => r.code));
  const added = (await ledger.codes(today(), other))
    .filter((r) => !r.code || !codes.has(r.code))
    .map((r) => r.rates);
  const next = {
    ...mine,
    ...(mine.invented || other.invented ? { invented: true } : {}),
    rates: [...mine.rates, ...added],
    jobs: [...mine.jobs, ...other.jobs],
  };
  const what = other.jobs.length === 1 ? "1 job" : `${other.jobs.length} jobs`;
  const faults = await ledger.change(next, `putting in ${what} from ${file.name}`);
  return faults.length ? { faults, file: next } : { text: `${what} from ${file.name} put with the others.` };
}

/** Another file of the same format. Its rates and jobs are lists, of which the engine has not
 *  read anything yet. */
interface OtherFile extends Pick<JobsFile, "rates"> {
  currency?: unknown;
  invented?: unknown;
  jobs: unknown[];
}

function isLike(other: unknown, mine: JobsFile): other is OtherFile {
  return (
    isObject(other) && other.format === mine.format && Array.isArray(other.jobs) && Array.isArray(other.rates)
  );
}

/** Jobs of the other file with a name that a job of the open file has. */
function clashes(mine: JobsFile, other: OtherFile): FileFault[] {
  const have = new Set<unknown>(mine.jobs.map((j) => j.name));
  return other.jobs.flatMap((j, n) =>
    isObject(j) && typeof j.name === "string" && have.has(j.name)
      ? [
          {
            path: `jobs[${n}].name`,
            found: j.name,
            expected: "a name of its own: a job in hand has it already",
          },
        ]
      : [],
  );
}
