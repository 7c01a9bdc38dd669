// The parts of the form that are lists, by the name that a section gives.

import { button, el } from "../shared/dom.ts";
import { CHARGED, SCOPES, STAGES, STANDARDS } from "./choices.ts";
import { done } from "./done.ts";
import {
  add,
  entry,
  freeId,
  named,
  noteField,
  ownName,
  remover,
  sourceField,
  withFigures,
} from "./entries.ts";
import { materials } from "./materials.ts";
import { parts } from "./parts.ts";

function sent(host) {
  const list = "sent_out.work";
  const all = host.draft.get(list);
  const one = (w, i) => {
    const path = `${list}[${i}]`;
    const now = () => host.draft.get(path) ?? w;
    return entry(
      host,
      () => withFigures(ownName(host, now()) ?? w.id, now().price, host.symbol()),
      path,
      () => [
        { path: `${path}.name`, label: "Name", kind: "name" },
        { path: `${path}.price`, label: "Price", kind: "three", unit: host.symbol() },
        { path: `${path}.stage`, label: "When", kind: "choice", options: STAGES },
        { path: `${path}.standards`, label: "At which standards", kind: "ticks", options: STANDARDS },
        { path: `${path}.scopes`, label: "For how much of the car", kind: "ticks", options: SCOPES },
        noteField(path),
        sourceField(path),
      ],
      remover(host, list, i, "work sent out"),
    );
  };
  const blank = () => ({
    id: freeId(all),
    name: { us: "New work sent out", uk: "New work sent out" },
    price: ["", "", ""],
    stage: "after",
    standards: STANDARDS.map(([s]) => s),
    scopes: SCOPES.map(([s]) => s),
    source: "the shop's own figure",
  });
  return [
    el("h3", {}, "Work that others do"),
    ...all.map(one),
    el(
      "div",
      { class: "add" },
      button("Add work sent out", () => add(host, list, blank(), "work sent out", "name")),
    ),
  ];
}

const HOURLY = "by_the_hour";

function steps(host) {
  const words = Object.fromEntries(host.outline.steps.map((s) => [s.id, named(host, s)]));
  const hows = Object.fromEntries(CHARGED);
  const one = (s, i) => {
    const path = `strip_and_survey.charged[${i}]`;
    const now = () => host.draft.get(path) ?? s;
    // A ceiling belongs to a step by the hour alone, and its source with it.
    const charge = (how) => {
      const { no_more_than: ceiling, source, ...rest } = now();
      const kept = how === HOURLY || ceiling === undefined ? now() : rest;
      host.draft.set(path, { ...kept, how }, "how a step is charged");
    };
    return entry(
      host,
      () => `${words[s.step] ?? s.step}: ${hows[now().how] ?? now().how}`,
      path,
      () => [
        {
          path: `${path}.how`,
          label: "Charged",
          kind: "choice",
          options: CHARGED,
          set: charge,
          redraws: true,
        },
        ...(s.how === HOURLY || "no_more_than" in s
          ? [
              {
                path: `${path}.no_more_than`,
                label: "No more than, on a two-door of one shell",
                kind: "number",
                unit: "hours",
                optional: true,
                hint: "Empty: no ceiling. Scaled to other bodies as the step's own hours are.",
              },
            ]
          : []),
        noteField(path),
      ],
    );
  };
  return [el("h3", {}, "How each step is charged"), ...host.draft.get("strip_and_survey.charged").map(one)];
}

export const lists = { materials, sent, steps, parts, done };
