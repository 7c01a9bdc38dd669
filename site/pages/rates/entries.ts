// A folded entry of a list. Its controls are made when it is opened, since most
// stay closed.

import { button, el } from "../shared/dom.ts";
import { control, faultText } from "./inputs.ts";

export const named = (host, thing) => (host.words() === "uk" ? thing.name_uk : thing.name_us);

/** A list's entry that has its own names. */
export const ownName = (host, thing) => thing.name?.[host.words() === "uk" ? "uk" : "us"];

/** A name with its figures as they were typed, so that a list can be read without
 *  opening it. figures: text, number, list or null. */
export function withFigures(name, figures, unit) {
  const text = [figures ?? []]
    .flat()
    .filter((x) => x !== "")
    .join(", ");
  return text ? `${name}: ${text} ${unit}` : name;
}

/** title(): asked again after every check, for it may hold what was changed.
 *  fields(): made on opening. remove: what the button does, or null. */
export function entry(host, title, path, fields, remove) {
  const summary = el("summary", {}, title());
  const node = el(
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
  // What is wrong with the entry as a whole, and with no one field of it.
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
  const notes = ({ faults, warnings, sample }) => {
    summary.textContent = title();
    node.dataset.faults = faults.length ? "yes" : "";
    node.dataset.slips = warnings.length ? "yes" : "";
    node.dataset.sample = sample ? "yes" : "";
    const own = faults.filter((f) => f.path === path);
    whole.hidden = own.length === 0;
    whole.textContent = own.map(faultText).join(" ");
    if (faults.length && !filled) open();
  };
  host.register([{ path, node, open, notes }]);
  return node;
}

/** Takes entry i out of a list and goes on at the one that follows. */
export function remover(host, list, i, name) {
  return () => {
    host.draft.remove(list, i, `removed ${name}`);
    const left = host.draft.get(list).length;
    host.redraw(left ? `${list}[${Math.min(i, left - 1)}]` : "");
  };
}

/** Puts a new entry at the end of a list and opens it. */
export function add(host, list, value, name, first) {
  host.draft.insert(list, value, `added ${name}`);
  host.redraw(`${list}[${host.draft.get(list).length - 1}].${first}`);
}

/** An id that no entry of the list has. */
export function freeId(all) {
  let n = all.length + 1;
  while (all.some((x) => x.id === `own_${n}`)) n++;
  return `own_${n}`;
}

export const noteField = (path) => ({
  path: `${path}.note`,
  label: "Note",
  kind: "long",
  rows: 2,
  optional: true,
});
export const sourceField = (path, optional = true) => ({
  path: `${path}.source`,
  label: "Where these figures come from",
  kind: "long",
  rows: 2,
  optional,
});
