// Files that become jobs: cars that wait to be completed, and another file of
// past jobs put with the one in hand.

import { button, el } from "../shared/dom.ts";
import { readCarFile } from "../shared/files.ts";
import { today } from "../shared/linkcontent.ts";
import { readJobsText } from "./jobfile.ts";

/** Reads car files; gives the good ones as {name, car} and what was refused. */
export async function carsOf(files, link) {
  const good = [];
  const refused = [];
  for (const file of files) {
    try {
      const reply = await link.ask({ ask: "check_car", car: await readCarFile(file) });
      if (reply.kind === "car_ok") good.push({ name: file.name, car: JSON.parse(reply.canonical) });
      else refused.push({ place: file.name, text: reply.text });
    } catch (error) {
      refused.push({ place: file.name, text: error.message });
    }
  }
  return { good, refused };
}

/** The cars that wait, each with a way on. complete(waiting), leave(waiting) */
export function waitingBox(waiting, { complete, leave }) {
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

/** Puts the jobs of another file with those in hand. Gives {faults, file} when
 *  something is wrong, {text} when it is done. */
export async function merge(file, ledger) {
  let other;
  const text = await readJobsText(file);
  try {
    other = JSON.parse(text);
  } catch {
    return { faults: [{ path: file.name, text: "This is not a file of past jobs, or it is not whole." }] };
  }
  const mine = ledger.file;
  if (other?.format !== mine.format || !Array.isArray(other.jobs) || !Array.isArray(other.rates)) {
    return {
      faults: [
        {
          path: "format",
          found: typeof other?.format === "string" ? other.format : "another kind of file",
          expected: mine.format,
        },
      ],
    };
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

function clashes(mine, other) {
  const have = new Set(mine.jobs.map((j) => j.name));
  return other.jobs.flatMap((j, n) =>
    have.has(j?.name)
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
