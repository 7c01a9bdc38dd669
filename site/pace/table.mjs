// The table of medians, and its place in the README.

import { readFileSync, writeFileSync } from "node:fs";

const BEGIN = "<!-- pace: begins -->\n";
const END = "<!-- pace: ends -->\n";

const ROWS = [
  ["change rough", "a changed answer → a first range"],
  ["change settled", "… → the settled range"],
  ["busy rough", "the same while three questions beside it are worked out → a first range"],
  ["busy settled", "… → the settled range"],
  ["interaction", "slowest answer of the page to a press (Interaction to Next Paint)"],
  ["largest paint", "start → the first question (Largest Contentful Paint)"],
  ["first range", "start, with all answers in a link → a first range"],
];

export function median(values) {
  const v = [...values].sort((a, b) => a - b);
  return (v[(v.length - 1) >> 1] + v[v.length >> 1]) / 2;
}

const seconds = (ms) => (ms / 1000).toFixed(2);

/** columns: [{rate, workers, figures: name → values}] */
export function tableOf(columns, { runs, chromium, processor }) {
  const head = columns.map(({ rate, workers }) => `${rate}×, ${workers === 1 ? "one worker" : "two"}`);
  return [
    `Seconds on the customer's page, medians of ${runs} visits, in Chromium ${chromium} on ${processor}, its processor as it is and slowed four and six times, with one worker and with two. ` +
      "The page is slowed by the browser, the engine by waiting after each answer; compiling and starting the engine are not slowed. The rows of the start are on a phone's screen over a line of 1.6 Mbit/s with a round trip of 150 ms, with nothing kept from before. `make pace` measures it again.",
    "",
    `| | ${head.join(" | ")} |`,
    `|---|${"---|".repeat(columns.length)}`,
    ...ROWS.map(
      ([name, text]) =>
        `| ${text} | ${columns.map(({ figures }) => seconds(median(figures[name]))).join(" | ")} |`,
    ),
    "",
  ].join("\n");
}

/** Puts the table between the marks; a README without them is an error. */
export function writeBetween(file, table) {
  const text = readFileSync(file, "utf8");
  const [from, to] = [text.indexOf(BEGIN), text.indexOf(END)];
  if (from < 0 || to < from)
    throw new Error(`${file}: expected ${BEGIN.trim()} and, after it, ${END.trim()}`);
  writeFileSync(file, text.slice(0, from + BEGIN.length) + table + text.slice(to));
}
