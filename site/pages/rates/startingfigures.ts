// A group of figures that stands at the starting figures until the shop sets its own.

import { button, type Children } from "../shared/dom.ts";
import type { FormHost } from "./formhost.ts";

export interface StartingFigures {
  /** Of the group, which is left out or null while the starting figures hold. */
  path: string;
  /** What Undo calls the group. */
  name: string;
  /** What the path holds while the starting figures hold. */
  empty: null | undefined;
  starting(): object;
  /** What stands there before the shop sets its own, and after. */
  before: Children[];
  own(): Children[];
}

export function startingFigures(host: FormHost, group: StartingFigures): Children[] {
  const change = (value: unknown, name: string) => {
    host.draft.set(group.path, value, name);
    host.redraw("");
  };
  if (host.draft.get(group.path))
    return [
      ...group.own(),
      button("Go back to the starting figures", () =>
        change(group.empty, `back to the starting figures: ${group.name}`),
      ),
    ];
  return [
    ...group.before,
    button("Set our own, beginning from the starting figures", () =>
      change(structuredClone(group.starting()), `our own ${group.name}`),
    ),
  ];
}
