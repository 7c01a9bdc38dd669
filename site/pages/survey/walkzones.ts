// The way to each part of the walk-round, with how much was looked at there: the
// whole list is hundreds of looks long.

import { button, el } from "../shared/dom.ts";

export class WalkZones {
  node = el("nav", { class: "walk-zones", "aria-label": "Parts of the walk" });
  #counts = [];

  /** sections: {name, lines}; goTo(section), made(line) */
  constructor(sections, { goTo, made }) {
    // A part of the walk where nothing can be looked at on this body has nowhere to stand.
    const some = sections.filter((section) => section.lines.some((line) => !line.not_here));
    this.node.append(
      el(
        "ul",
        {},
        some.map((section, n) => {
          const lines = section.lines.filter((line) => !line.not_here);
          const count = el("span", { class: "walk-count" });
          this.#counts.push(() => {
            count.textContent = `${lines.filter(made).length} of ${lines.length}`;
          });
          return el(
            "li",
            {},
            button([`${section.name} `, count], () => goTo(section), {
              class: "quiet",
              "data-key": `walk-${n}`,
            }),
          );
        }),
      ),
    );
    this.count();
  }

  count() {
    for (const one of this.#counts) one();
  }
}
