// How small supplies are charged: in the rate, or as a share of labor with a limit, but
// never both.

import { el, freshId } from "../shared/dom.ts";
import { isObject } from "../shared/ratesfile.ts";
import { asText, box, labelled, select, unitText } from "./boxes.ts";
import type { PlainField } from "./fields.ts";
import type { Made, Making } from "./formhost.ts";

const SHARE = "share_of_labour";

export function supplies({ field, host, id, described, label, put }: Making<PlainField>): Made {
  const value = host.draft.get(field.path);
  const now = isObject(value) ? value : {};
  const inputs: HTMLElement[] = [];
  const more = el("div", {});

  /** The boxes that only a share of labor has. Gives what the file holds then. */
  const share = () => {
    const own = () => ({
      how: SHARE,
      percent: percent.value.trim(),
      ...(limit.value.trim() ? { no_more_than: limit.value.trim() } : {}),
      source: "the shop's own figure",
    });
    const one = (member: string) =>
      box(
        {
          id: freshId("share"),
          "aria-describedby": described,
          inputmode: "decimal",
          class: "figure",
          "data-at": `${field.path}.${member}`,
        },
        asText(now[member]),
        () => put(own()),
      );
    const percent = one("percent");
    const limit = one("no_more_than");
    inputs.splice(1, 2, percent, limit);
    more.replaceChildren(
      labelled(percent.id, "Share", percent, unitText("%")),
      labelled(
        limit.id,
        "No more than, for a job",
        limit,
        unitText(host.symbol()),
        el("p", { class: "hint" }, "Empty: no limit"),
      ),
    );
    return own();
  };

  const how = select(
    { id, "aria-describedby": described, "data-at": `${field.path}.how` },
    [
      ["in_the_rate", "in the rate an hour"],
      [SHARE, host.words() === "uk" ? "a share of labour" : "a share of labor"],
    ],
    now.how,
    (key) => {
      if (key === SHARE) put(share());
      else {
        more.replaceChildren();
        inputs.length = 1;
        put({ how: key, source: "the shop's own choice" });
      }
    },
  );
  inputs.push(how);
  if (now.how === SHARE) share();
  return { inputs, node: el("div", {}, labelled(id, label, how), more) };
}
