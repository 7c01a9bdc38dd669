// The way to each part of the walk-round, with how much was checked there: the whole list
// is hundreds of checks long.

import { button, el } from "../shared/dom.ts";
import type { WalkLine, WalkSection } from "../shared/replies.ts";

export interface WalkZonesHost {
  goTo(section: WalkSection): void;
  /** Whether a check was made. */
  made(line: WalkLine): boolean;
}

export class WalkZones {
  node = el("nav", { class: "walk-zones", "aria-label": "Parts of the walk" });
  #counts: (() => void)[] = [];

  constructor(sections: readonly WalkSection[], { goTo, made }: WalkZonesHost) {
    // A part of the walk where this body has nothing to check is left out.
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

  /** Counts again. */
  count(): void {
    for (const count of this.#counts) count();
  }
}
