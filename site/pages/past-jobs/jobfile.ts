// Files that are opened on this page. Their size is checked before they are read.

import type { CarFile } from "../shared/carfile.ts";
import { el } from "../shared/dom.ts";
import { MOST_RATES } from "../shared/openshop.ts";
import type { CarOKReply } from "../shared/replies.ts";

/** As much as the engine takes; a car with a whole survey has about ten thousand. */
const MOST_JOBS = 33554432;
const MOST_TABLE = 16777216;

async function textOf(file: File, most: number, what: string): Promise<string> {
  if (file.size === 0) throw new Error(`${file.name} is empty.`);
  if (file.size > most) throw new Error(`${file.name} is far too large to be ${what}.`);
  return file.text();
}

/** These throw with a sentence to show. */
export const readJobsText = (file: File) => textOf(file, MOST_JOBS, "a file of past jobs");
export const readTableText = (file: File) => textOf(file, MOST_TABLE, "a table of past jobs");
export const readRatesText = (file: File) => textOf(file, MOST_RATES, "a rates file");

/** The car that the engine has found to be good. */
export const carOf = (reply: CarOKReply): CarFile => JSON.parse(reply.canonical) as CarFile;

export interface Chooser {
  node: HTMLInputElement;
  /** Opens the browser's own choice of files. */
  press(): void;
}

/** A hidden control that chooses files. took: gets what was chosen. */
export function chooser(
  accept: string,
  took: (files: [File, ...File[]]) => unknown,
  several = false,
): Chooser {
  const node: HTMLInputElement = el("input", {
    type: "file",
    accept,
    multiple: several,
    class: "visually-hidden",
    tabindex: "-1",
    "aria-hidden": "true",
    on: {
      change: () => {
        const [first, ...more] = node.files ?? [];
        node.value = "";
        if (first) took([first, ...more]);
      },
    },
  });
  return { node, press: () => node.click() };
}
