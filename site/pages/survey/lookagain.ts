// Where the page asks for a second look: under the list, at the part itself, and on the
// survey sheet.

import { button, el } from "../shared/dom.ts";
import type { OpenCar } from "./opencar.ts";

const entries = (n: number): string => (n === 1 ? "1 entry" : `${n} entries`);

/** Under the list: how many entries there are, and the way to the first. */
export function lookAgainLine(openCar: OpenCar, go: (on: string) => void): HTMLElement | null {
  const list = openCar.secondLooks.list(openCar.car);
  const [first] = list;
  if (!first) return null;
  return el(
    "p",
    { class: "look-again-line" },
    `${entries(list.length)} to look at again. First: `,
    button(first.name, () => go(first.on), { class: "quiet", "data-key": "look-again" }),
  );
}

/** At the part itself. act: what the buttons do. */
export function lookAgainHere(
  openCar: OpenCar,
  on: string,
  act: (name: "sure" | "words") => unknown,
): HTMLElement | null {
  const one = openCar.secondLooks.at(openCar.car, on);
  if (!one) return null;
  return el(
    "div",
    { class: "look-again", role: "group", "aria-label": "Look again" },
    el("p", {}, one.text),
    el(
      "div",
      { class: "switches" },
      button("Yes, it is so", () => act("sure"), { "data-act": "sure" }),
      button("Change it", () => act("words"), { "data-act": "words" }),
    ),
  );
}

/** What the buttons of the survey sheet do. */
export interface PaperHost {
  sure(on: string): void;
  change(on: string): void;
}

/** On the survey sheet: buttons on the screen, boxes to tick on paper. wordOf gives the
 *  condition of an item in words. */
export function lookAgainOnPaper(
  openCar: OpenCar,
  host: PaperHost,
  wordOf: (on: string) => string,
): HTMLElement | null {
  const list = openCar.secondLooks.list(openCar.car);
  if (list.length === 0) return null;
  return el(
    "section",
    { class: "sheet-again" },
    el("h2", {}, `Look again: ${entries(list.length)}`),
    el(
      "ul",
      {},
      list.map(({ on, name, text }) =>
        el(
          "li",
          {},
          el("strong", {}, `${name}: ${wordOf(on)}. `),
          text,
          el("span", { class: "sheet-small" }, "☐ yes, it is so  ☐ changed to ____________"),
          el(
            "span",
            { class: "switches no-paper" },
            button("Yes, it is so", () => host.sure(on), { "data-act": "sure" }),
            button("Change it", () => host.change(on), { "data-act": "change" }),
          ),
        ),
      ),
    ),
  );
}
