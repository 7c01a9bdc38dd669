// Entries that are very unlike the rest of the car, as the engine names them. The
// newest answer of the engine counts. An entry is off the list as soon as it is
// changed or the estimator says that it is so.

import { button, el } from "../shared/dom.ts";
import { standing } from "../shared/thiscar/record.ts";

export class SecondLooks {
  #named = [];

  /** reply: any answer about this car; those without such a list change nothing. */
  took(reply, car) {
    if (!Array.isArray(reply?.look_again)) return;
    this.#named = reply.look_again.map((one) => ({ ...one, condition: standing(car, one.on)?.condition }));
  }

  forget() {
    this.#named = [];
  }

  /** [{on, name, text}] of the entries that still stand as they were named. */
  list(car) {
    return this.#named.filter(({ on, condition }) => {
      const record = standing(car, on);
      return record?.condition && record.condition === condition && !record.sure;
    });
  }

  at(car, on) {
    return this.list(car).find((one) => one.on === on) ?? null;
  }
}

const entries = (n) => (n === 1 ? "1 entry" : `${n} entries`);

/** Under the list: how many there are, and the way to the first. go(on) */
export function lookAgainLine(job, go) {
  const list = job.again.list(job.car);
  if (list.length === 0) return null;
  return el(
    "p",
    { class: "look-again-line" },
    `${entries(list.length)} to look at again. First: `,
    button(list[0].name, () => go(list[0].on), { class: "quiet", "data-key": "look-again" }),
  );
}

/** At the part itself. act(name): "sure" or "words". */
export function lookAgainHere(job, on, act) {
  const one = job.again.at(job.car, on);
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

/** On the survey sheet: buttons on the screen, boxes to tick on paper. host: sure(on),
 *  change(on) */
export function lookAgainOnPaper(job, host, wordOf) {
  const list = job.again.list(job.car);
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
