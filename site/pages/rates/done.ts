// What is done by condition: the starting table, or the shop's own.

import { type Children, el } from "../shared/dom.ts";
import { KINDS, STANDARDS } from "./choices.ts";
import { entry, named } from "./entries.ts";
import type { FormHost } from "./formhost.ts";
import { startingFigures } from "./startingfigures.ts";

export function done(host: FormHost): Children[] {
  const table = (standard: string, standardName: string, kind: string, name: string) => {
    const path = `what_is_done.${standard}.${kind}`;
    return entry(
      host,
      () => `${standardName.charAt(0).toUpperCase()}${standardName.slice(1)}: ${name}`,
      path,
      () =>
        host.outline.conditions.map((c) => ({ path: `${path}.${c.id}`, label: named(host, c), kind: "row" })),
    );
  };
  return startingFigures(host, {
    path: "what_is_done",
    name: "table of what is done",
    empty: null,
    starting: () => host.outline.what_is_done,
    before: [
      el(
        "p",
        {},
        "A part that is pinholed can be patched, or have a section or a whole panel let in. The starting figures say how often each is chosen, by standard and condition. Most shops leave them.",
      ),
    ],
    own: () => [
      el(
        "p",
        {},
        "For each condition, the share of jobs in which each is chosen, from 0 to 1. The shares of one condition add to 1.",
      ),
      ...STANDARDS.flatMap(([standard, standardName]) =>
        Object.entries(KINDS).map(([kind, name]) => table(standard, standardName, kind, name)),
      ),
    ],
  });
}
