// How far off the shop's figures may be at each stage: the starting figures, or the shop's
// own.

import { button, type Children, el } from "../shared/dom.ts";
import { optionText, STAGES_OF_DOUBT } from "./choices.ts";
import { entry, sourceField, withFigures } from "./entries.ts";
import type { FormHost } from "./formhost.ts";

const KINDS = [
  ["shared", "All your cars together"],
  ["own", "One car by itself"],
] as const;

export function doubt(host: FormHost): Children[] {
  const change = (value: unknown, name: string) => {
    host.draft.set("doubt", value, name);
    host.redraw("");
  };
  const starting = host.outline.doubt;
  const heading = el("h3", {}, "How far off they may be");
  const means =
    "0.1 means that in two cars of three the figures are at most about a tenth too high or too low.";
  const stages = STAGES_OF_DOUBT.map((option) => [option[0], optionText(option, host.words())] as const);
  if (!host.draft.get("doubt")) {
    return [
      heading,
      el("p", {}, `As delivered, and as finished jobs correct it. ${means}`),
      el(
        "ul",
        {},
        stages.map(([stage, name]) =>
          el(
            "li",
            {},
            `${name}: all your cars together ${starting.shared?.[stage]}, one car by itself ${starting.own?.[stage]}`,
          ),
        ),
      ),
      button("Set our own, beginning from the starting figures", () =>
        change({ ...structuredClone(starting), source: "the shop's own figures" }, "our own doubt"),
      ),
    ];
  }
  const values = (kind: string) => stages.map(([stage]) => host.draft.get(`doubt.${kind}.${stage}`) ?? "");
  return [
    heading,
    el("p", {}, `From 0 to 0.5; at a later stage never more than at the one before it. ${means}`),
    ...KINDS.map(([kind, name]) =>
      entry(
        host,
        () => withFigures(name, values(kind), ""),
        `doubt.${kind}`,
        () =>
          stages.map(([stage, label]) => ({
            path: `doubt.${kind}.${stage}`,
            label,
            kind: "number" as const,
          })),
      ),
    ),
    entry(
      host,
      () => "Where these figures come from",
      "doubt.source",
      () => [sourceField("doubt")],
    ),
    button("Go back to the starting figures", () => change(undefined, "back to the starting doubt")),
  ];
}
