// An entry of a list, folded. Its controls are made when somebody opens it, since most
// entries stay closed.

import { button, el } from "../shared/dom.ts";
import type { Names } from "../shared/ratesfile.ts";
import type { OutlineName } from "../shared/replies.ts";
import type { Field } from "./fields.ts";
import type { FoldedEntry, FormHost, Notes } from "./formhost.ts";
import { control, faultText } from "./inputs.ts";

/** The name of something in the outline, in the words of the shop. */
export const named = (host: FormHost, thing: Pick<OutlineName, "name_us" | "name_uk">): string =>
  host.words() === "uk" ? thing.name_uk : thing.name_us;

/** The name of an entry that has names of its own. */
export const ownName = (host: FormHost, thing: { name?: Partial<Names> }): string | undefined =>
  thing.name?.[host.words()];

/** A name with its figures as they were typed, so that a list can be read without
 *  opening its entries. figures: text, number, list or nothing. */
export function withFigures(name: string, figures: unknown, unit: string): string {
  const text = [figures ?? []]
    .flat()
    .filter((x) => x !== "")
    .join(", ");
  return text ? `${name}: ${text} ${unit}` : name;
}

/** title: called again after every check, for it may hold what was changed. fields: called
 *  when the entry is opened. remove: what the button Remove does; no button without it. */
export function entry(
  host: FormHost,
  title: () => string,
  path: string,
  fields: () => readonly Field[],
  remove?: () => void,
): HTMLDetailsElement {
  const summary = el("summary", {}, title());
  const node: HTMLDetailsElement = el(
    "details",
    {
      class: "entry",
      "data-path": path,
      on: {
        toggle: () => {
          if (node.open) fill();
        },
      },
    },
    summary,
  );
  // For what is wrong with the entry as a whole, rather than with one of its fields.
  const whole = el("p", { class: "error", hidden: true });
  node.append(whole);
  let filled = false;
  const fill = () => {
    if (filled) return;
    filled = true;
    const controls = fields().map((f) => control(f, host));
    host.register(controls);
    node.append(
      el(
        "div",
        { class: "fields" },
        controls.map((c) => c.node),
      ),
      ...(remove ? [button("Remove", remove, { class: "quiet", "aria-label": `Remove ${title()}` })] : []),
    );
    host.notes();
  };
  const open = () => {
    node.open = true;
    fill();
  };
  const notes = ({ faults, warnings, sample }: Notes) => {
    summary.textContent = title();
    node.dataset.faults = faults.length ? "yes" : "";
    node.dataset.slips = warnings.length ? "yes" : "";
    node.dataset.sample = sample ? "yes" : "";
    const own = faults.filter((f) => f.path === path);
    whole.hidden = own.length === 0;
    whole.textContent = own.map(faultText).join(" ");
    if (faults.length && !filled) open();
  };
  const folded: FoldedEntry = { path, node, open, notes };
  host.register([folded]);
  return node;
}

/** Removes entry i of a list and goes on at the entry that follows. */
export function remover(host: FormHost, list: string, i: number, name: string): () => void {
  return () => {
    host.draft.remove(list, i, `removed ${name}`);
    const left = host.draft.list(list).length;
    host.redraw(left ? `${list}[${Math.min(i, left - 1)}]` : "");
  };
}

/** Adds an entry at the end of a list and opens it. first: the member that gets the focus. */
export function add(host: FormHost, list: string, value: object, name: string, first: string): void {
  host.draft.insert(list, value, `added ${name}`);
  host.redraw(`${list}[${host.draft.list(list).length - 1}].${first}`);
}

/** An id that no entry of the list has. */
export function freeId(all: readonly { id?: string }[]): string {
  let n = all.length + 1;
  while (all.some((x) => x.id === `own_${n}`)) n++;
  return `own_${n}`;
}

export const noteField = (path: string): Field => ({
  path: `${path}.note`,
  label: "Note",
  kind: "long",
  rows: 2,
  optional: true,
});
export const sourceField = (path: string, optional = true): Field => ({
  path: `${path}.source`,
  label: "Where these figures come from",
  kind: "long",
  rows: 2,
  optional,
});
