// How far off the shop's figures may be at each stage: the starting figures, or the shop's
// own.

import { type Children, el } from "../shared/dom.ts";
import { optionText, STAGES_OF_DOUBT } from "./choices.ts";
import { entry, sourceField, withFigures } from "./entries.ts";
import type { FormHost } from "./formhost.ts";
import { startingFigures } from "./startingfigures.ts";

const KINDS = [
  ["shared", "All your cars together"],
  ["own", "One car by itself"],
] as const;

const MEANS =
  "0.1 means that in two cars of three the figures are at most about a tenth too high or too low.";

export function doubt(host: FormHost): Children[] {
  const starting = host.outline.doubt;
  const stages = STAGES_OF_DOUBT.map((option) => [option[0], optionText(option, host.words())] as const);
  const values = (kind: string) => stages.map(([stage]) => host.draft.get(`doubt.${kind}.${stage}`) ?? "");
  const kindEntry = ([kind, name]: (typeof KINDS)[number]) =>
    entry(
      host,
      () => withFigures(name, values(kind), ""),
      `doubt.${kind}`,
      () =>
        stages.map(([stage, label]) => ({ path: `doubt.${kind}.${stage}`, label, kind: "number" as const })),
    );
  return [
    el("h3", {}, "How far off they may be"),
    ...startingFigures(host, {
      path: "doubt",
      name: "doubt",
      empty: undefined,
      starting: () => ({ ...starting, source: "the shop's own figures" }),
      before: [
        el("p", {}, `As delivered, and as finished jobs correct it. ${MEANS}`),
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
      ],
      own: () => [
        el("p", {}, `From 0 to 0.5; at a later stage never more than at the one before it. ${MEANS}`),
        ...KINDS.map(kindEntry),
        entry(
          host,
          () => "Where these figures come from",
          "doubt.source",
          () => [sourceField("doubt")],
        ),
      ],
    }),
  ];
}
