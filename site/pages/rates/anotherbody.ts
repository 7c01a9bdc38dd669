// The bodies that the shop offers in place of the customer's, each with its price and the
// chance of finding a sound one. A body that is not listed is never spoken of.

import { button, type Children, el } from "../shared/dom.ts";
import type { OfferedBody } from "../shared/ratesfile.ts";
import { labelled } from "./boxes.ts";
import { add, entry, named, remover, sourceField, withFigures } from "./entries.ts";
import type { FormHost } from "./formhost.ts";

const LIST = "another_body.bodies";

const listed = ({ draft }: FormHost): Partial<OfferedBody>[] => draft.current.another_body?.bodies ?? [];

export function anotherBody(host: FormHost): Children[] {
  const names = new Map(host.outline.bodies.map((b) => [b.id, named(host, b)]));
  const one = (b: Partial<OfferedBody>, i: number) => {
    const path = `${LIST}[${i}]`;
    const now = () => listed(host)[i] ?? b;
    const removeOne = remover(host, LIST, i, "another body");
    // A file without any body has no such group.
    const removeAll = () => {
      host.draft.set("another_body", undefined, "removed another body");
      host.redraw("");
    };
    return entry(
      host,
      () => withFigures(names.get(String(now().body)) ?? String(now().body), now().price, host.symbol()),
      path,
      () => [
        {
          path: `${path}.price`,
          label: "What a sound one costs",
          kind: "three",
          unit: host.symbol(),
          why: "What the customer pays for the bare body. We add what it takes to find it, its papers, stripping it, moving everything across and the metalwork that it needs itself.",
        },
        {
          path: `${path}.to_be_had`,
          label: "The chance of finding one",
          kind: "number",
          hint: "From 0 to 1: 0.6 means for 6 cars out of 10",
        },
        {
          path: `${path}.weeks`,
          label: "Weeks until it is here",
          kind: "three",
          optional: true,
          hint: "All three empty: the starting figures",
        },
        sourceField(path),
      ],
      () => (listed(host).length > 1 ? removeOne : removeAll)(),
    );
  };
  return [...listed(host).map(one), adding(host, names)];
}

function adding(host: FormHost, names: ReadonlyMap<string, string>): Children {
  const left = [...names].filter(([id]) => !listed(host).some((b) => b.body === id));
  if (left.length === 0) return null;
  const body = el(
    "select",
    { id: "offer-body" },
    left.map(([id, name]) => el("option", { value: id }, name)),
  );
  return el(
    "div",
    { class: "add" },
    labelled("offer-body", "Body", body),
    button("Offer this body", () =>
      add(
        host,
        LIST,
        { body: body.value, price: ["", "", ""], to_be_had: "", source: "the shop's own figure" },
        "another body",
        "price",
      ),
    ),
  );
}
