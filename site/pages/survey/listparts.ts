// What stands round the list of parts: counts, findings of the whole car, the
// way to the zones, and the switches.

import { button, el, freshId } from "../shared/dom.ts";
import { isOpen } from "../shared/thiscar/record.ts";

const countLine = (job, group) => job.tally?.zones?.find((z) => z.id === group.id)?.line ?? "";
export const boxState = (job, group) => (isOpen(job.car, group.box) ? "opened" : "not opened (O opens it)");

/** What is not opened and not recorded: always in view, beside the words. */
export const countsText = (job) =>
  [job.tally?.not_opened_line, job.tally?.not_recorded_line].filter(Boolean).join(" · ") || "\u00a0";

/** The zone in hand, and those before and after. */
export function listHead(job, groups, group, address) {
  const n = groups.length;
  const at = groups.indexOf(group);
  const link = (g, before) =>
    el("a", { href: address(g.id), class: "step-link" }, before ? `‹ ${g.name}` : `${g.name} ›`);
  return el(
    "div",
    {},
    el(
      "h2",
      { class: "group-name" },
      group.name,
      " ",
      el("span", { class: "group-count" }, countLine(job, group)),
    ),
    n > 1 &&
      el(
        "p",
        { class: "group-steps" },
        link(groups[(at + n - 1) % n], true),
        link(groups[(at + 1) % n], false),
      ),
  );
}

export function zoneLinks(job, groups, group, address) {
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
            el("span", { class: "group-count" }, countLine(job, g)),
          ),
        ),
      ),
    ),
  );
}

export function toggle(text, on, set, props = {}) {
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

/** Under the list: rest of the zone, order and keys. view: the list's own. */
export function listFoot(job, view, opening) {
  return el(
    "div",
    { class: "list-foot" },
    el("div", { "data-again": true }),
    !opening &&
      button("Rest of the seen parts here: sound", () => view.act("rest"), {
        "data-rest": true,
        disabled: true,
      }),
    !opening && wholeCar(job, view),
    el(
      "div",
      { class: "switches" },
      !opening && toggle("Down one side, then the other", job.ways.down, (on) => view.setDown(on)),
      toggle("Single keys", job.ways.keys, (on) => view.setKeys(on)),
      button("Keys (?)", () => view.act("help"), { class: "quiet" }),
    ),
  );
}

function wholeCar(job, view) {
  const list = job.sheet.whole_car_findings ?? [];
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
          Boolean(job.car.whole_car?.includes(f.id)),
          (on) => view.act("whole_car", { id: f.id, name: f.name, on, at: view.at }),
          { "data-whole": f.id },
        ),
      ),
    ),
  );
}
