// The parts of the form that are lists, by the name that a section gives.

import { button, type Children, el } from "../shared/dom.ts";
import type { Charge, SentWork } from "../shared/ratesfile.ts";
import { anotherBody } from "./anotherbody.ts";
import { CHARGED, SCOPES, STAGES, STANDARDS } from "./choices.ts";
import { done } from "./done.ts";
import { doubt } from "./doubt.ts";
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
import type { Field, ListName } from "./fields.ts";
import type { FormHost } from "./formhost.ts";
import { materials } from "./materials.ts";
import { parts } from "./parts.ts";

function sent(host: FormHost): Children[] {
  const list = "sent_out.work";
  const all = host.draft.current.sent_out.work;
  const one = (w: Partial<SentWork>, i: number) => {
    const path = `${list}[${i}]`;
    const now = () => host.draft.current.sent_out.work[i] ?? w;
    return entry(
      host,
      () => withFigures(ownName(host, now()) ?? String(w.id), now().price, host.symbol()),
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
  const blank = (): SentWork => ({
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

function steps(host: FormHost): Children[] {
  const words = new Map(host.outline.steps.map((s) => [s.id, named(host, s)]));
  const hows = new Map(CHARGED.map(([how, text]) => [how, text]));
  const one = (s: Partial<Charge>, i: number) => {
    const path = `strip_and_survey.charged[${i}]`;
    const now = () => host.draft.current.strip_and_survey.charged[i] ?? s;
    // Only a step by the hour has a ceiling, and the source that goes with it.
    const charge = (how: string) => {
      const { no_more_than: ceiling, source, ...rest } = now();
      const kept = how === HOURLY || ceiling === undefined ? now() : rest;
      host.draft.set(path, { ...kept, how }, "how a step is charged");
    };
    const how: Field = {
      path: `${path}.how`,
      label: "Charged",
      kind: "choice",
      options: CHARGED,
      set: charge,
      redraws: true,
    };
    const ceiling: Field = {
      path: `${path}.no_more_than`,
      label: "No more than, on a two-door of one shell",
      kind: "number",
      unit: "hours",
      optional: true,
      hint: "Empty: no ceiling. Scaled to other bodies as the step's own hours are.",
    };
    return entry(
      host,
      () => `${words.get(s.step ?? "") ?? s.step}: ${hows.get(now().how ?? "") ?? now().how}`,
      path,
      () => [how, ...(s.how === HOURLY || "no_more_than" in s ? [ceiling] : []), noteField(path)],
    );
  };
  return [el("h3", {}, "How each step is charged"), ...host.draft.current.strip_and_survey.charged.map(one)];
}

export const lists: Record<ListName, (host: FormHost) => Children[]> = {
  materials,
  sent,
  steps,
  parts,
  done,
  doubt,
  another: anotherBody,
};
