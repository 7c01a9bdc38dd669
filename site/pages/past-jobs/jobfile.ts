// Files that are opened here: their size is looked at before they are read.

import { el } from "../shared/dom.ts";
import { MOST_RATES } from "../shared/openshop.ts";

/** As much as the engine takes; a car with a whole survey is about ten thousand. */
const MOST_JOBS = 33554432;
const MOST_TABLE = 16777216;

async function textOf(file, most, what) {
  if (file.size === 0) throw new Error(`${file.name} is empty.`);
  if (file.size > most) throw new Error(`${file.name} is far too large to be ${what}.`);
  return file.text();
}

export const readJobsText = (file) => textOf(file, MOST_JOBS, "a file of past jobs");
export const readTableText = (file) => textOf(file, MOST_TABLE, "a table of past jobs");
export const readRatesText = (file) => textOf(file, MOST_RATES, "a rates file");

/** A hidden chooser; press() opens it. took(files) gets what was chosen. */
export function chooser(accept, took, several = false) {
  const node = el("input", {
    type: "file",
    accept,
    multiple: several,
    class: "visually-hidden",
    tabindex: "-1",
    "aria-hidden": "true",
    on: {
      change: () => {
        const files = [...node.files];
        node.value = "";
        if (files.length) took(files);
      },
    },
  });
  return { node, press: () => node.click() };
}
