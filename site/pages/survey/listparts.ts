// What is around the list of parts: counts, findings of the whole car, the way to the zones,
// and the switches.

import { button, el, freshId, type Props } from "../shared/dom.ts";
import { isOpen } from "../shared/thiscar/record.ts";
import { hitsCard } from "./hits.ts";
import type { Act } from "./keys.ts";
import type { OpenCar } from "./opencar.ts";
import type { Group } from "./order.ts";

/** The address of a group by its id. */
export type AddressOf = (group: string) => string;

const countLine = (openCar: OpenCar, group: Group) =>
  openCar.tally?.zones.find((z) => z.id === group.id)?.line ?? "";
/** group: a closed box, which has the id of its group. */
export const boxState = (openCar: OpenCar, group: Group): string =>
  isOpen(openCar.car, group.id) ? "opened" : "not opened (O opens it)";

/** What is not opened and not recorded: always in view, beside the words. */
export const countsText = (openCar: OpenCar): string =>
  [openCar.tally?.not_opened_line, openCar.tally?.not_recorded_line].filter(Boolean).join(" · ") || "\u00a0";

/** The current zone, and those before and after. */
export function listHead(
  openCar: OpenCar,
  groups: readonly Group[],
  group: Group,
  address: AddressOf,
): HTMLElement {
  const at = groups.indexOf(group);
  const before = groups.at(at - 1);
  const after = groups[at + 1] ?? groups[0];
  const link = (g: Group, text: string) => el("a", { href: address(g.id), class: "step-link" }, text);
  return el(
    "div",
    {},
    el(
      "h2",
      { class: "group-name" },
      group.name,
      " ",
      el("span", { class: "group-count" }, countLine(openCar, group)),
    ),
    groups.length > 1 &&
      el(
        "p",
        { class: "group-steps" },
        before && link(before, `‹ ${before.name}`),
        after && link(after, `${after.name} ›`),
      ),
  );
}

export function zoneLinks(
  openCar: OpenCar,
  groups: readonly Group[],
  group: Group,
  address: AddressOf,
): HTMLElement {
  return el(
    "nav",
    { "aria-label": "Zones" },
    el(
      "ul",
      { class: "group-links" },
      groups.map((g) =>
        el(
          "li",
          {},
          el(
            "a",
            { href: address(g.id), "aria-current": g === group ? "true" : null },
            el("span", {}, g.name),
            " ",
            el("span", { class: "group-count" }, countLine(openCar, g)),
          ),
        ),
      ),
    ),
  );
}

/** A button that is on or off. set is called with the new state. */
export function toggle(
  text: string,
  on: boolean,
  set: (on: boolean) => unknown,
  props: Props = {},
): HTMLButtonElement {
  const node = button(
    text,
    () => {
      const now = node.getAttribute("aria-pressed") !== "true";
      node.setAttribute("aria-pressed", String(now));
      set(now);
    },
    { class: "mark", "aria-pressed": String(on), ...props },
  );
  return node;
}

/** What the list does for what is around it. */
export interface FootHost {
  /** The current part. */
  at(): string;
  act(...act: Act): unknown;
}

/** Under the list: rest of the zone, order and keys. */
export function listFoot(openCar: OpenCar, host: FootHost, opening: boolean): HTMLElement {
  return el(
    "div",
    { class: "list-foot" },
    el("div", { "data-again": true }),
    !opening &&
      button("Rest of the seen parts here: sound", () => host.act("rest"), {
        "data-rest": true,
        disabled: true,
      }),
    !opening && wholeCar(openCar, host),
    !opening && hitsCard(openCar, host),
    el(
      "div",
      { class: "switches" },
      !opening &&
        toggle("Down one side, then the other", openCar.settings.down, (on) => openCar.change({ down: on })),
      toggle("Single keys", openCar.settings.keys, (on) => openCar.change({ keys: on })),
      button("Keys (?)", () => host.act("help"), { class: "quiet" }),
    ),
  );
}

function wholeCar(openCar: OpenCar, host: FootHost): HTMLElement | null {
  const list = openCar.sheet.whole_car_findings;
  if (list.length === 0) return null;
  const id = freshId("whole");
  return el(
    "div",
    { class: "whole-car" },
    el("h3", { id }, "The whole car"),
    el(
      "div",
      { role: "group", "aria-labelledby": id },
      list.map((f) =>
        toggle(
          f.name,
          Boolean(openCar.car.whole_car?.includes(f.id)),
          (on) => host.act("whole_car", { id: f.id, name: f.name, on, at: host.at() }),
          { "data-whole": f.id },
        ),
      ),
    ),
  );
}
