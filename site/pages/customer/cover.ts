// "Would this much cover it?": the question comes last, its field is empty at first, and the
// amount is stored nowhere.

import { showError } from "../shared/ask.ts";
import { button, el, freshId, list } from "../shared/dom.ts";
import type { ReplyTo } from "../shared/requests.ts";
import { sec } from "./sec.ts";

const STOPPED = "The sums stopped. Try once more.";

/** "$110,000" and "110 000" mean what the engine reads as 110000. */
const plainSum = (text: string): string => text.replace(/[\s,$£€]/g, "");

/** symbol: of the currency. ask and fits give the engine's replies about an amount. */
export function coverSection(
  symbol: string,
  ask: (sum: string) => Promise<ReplyTo<"cover">>,
  fits: (sum: string) => Promise<ReplyTo<"fits">>,
): HTMLElement {
  const id = freshId("sum");
  const error = el("p", { id: `${id}-error`, class: "error", hidden: true });
  const input = el("input", {
    id,
    type: "text",
    inputmode: "decimal",
    autocomplete: "off",
    maxlength: 16,
    "aria-describedby": `${id}-error`,
  });
  const answer = el("p", { class: "cover-answer", role: "status" });
  const more = el("div", { class: "cover-more", role: "status" });
  const submit = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    error.hidden = true;
    input.removeAttribute("aria-invalid");
    answer.textContent = "";
    more.replaceChildren();
    const reply = await ask(plainSum(input.value)).catch(() => null);
    if (reply?.kind === "cover") {
      answer.textContent = reply.text;
      more.replaceChildren(button("What would fit within it?", () => show(plainSum(input.value))));
    } else showError(input, error, reply?.text ?? STOPPED);
  };
  const show = async (sum: string): Promise<void> => {
    const reply = await fits(sum).catch(() => null);
    if (reply?.kind !== "fits") {
      more.replaceChildren(el("p", { class: "error" }, reply?.text ?? STOPPED));
      return;
    }
    more.replaceChildren(
      el("p", {}, `With ${reply.sum_text}:`),
      list(reply.lines),
      el("p", { class: "hint" }, reply.note),
    );
  };
  return sec(
    "cover",
    "cover-title",
    "Would this much cover it?",
    el(
      "form",
      { novalidate: true, on: { submit } },
      el("label", { for: id }, `A sum you have in mind, in ${symbol}`),
      error,
      el("span", { class: "with-button" }, input, el("button", { type: "submit" }, "Work it out")),
    ),
    answer,
    more,
    el("p", { class: "hint" }, "Not kept, and not put into a link or file."),
  );
}
