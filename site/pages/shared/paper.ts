// What is only on paper: the head and the foot of the customer's sheet. The rest of the sheet
// is the screen itself, laid out by the styles for print.

import { el } from "./dom.ts";
import { today } from "./linkcontent.ts";
import type { OpenedReply, RangeReply } from "./replies.ts";
import { dateText } from "./timestamp.ts";

export function paperHead(opened: OpenedReply, reply: RangeReply): HTMLElement {
  const rough = reply.state === "rough" || reply.state === "refining";
  return el(
    "div",
    { class: "paper" },
    rough && el("p", { class: "paper-rough" }, "Rough figure, still being worked out"),
    el("p", {}, `${opened.shop.contact_text} · printed on ${dateText(today())}`),
  );
}

/** address: the link that opens these answers again. code: the same to scan, or null. */
export function paperFoot(
  opened: OpenedReply,
  reply: RangeReply,
  address: string,
  code: Node | null = null,
): HTMLElement {
  return el(
    "div",
    { class: "paper" },
    code,
    opened.terms?.map((text) => el("p", {}, text)),
    el(
      "p",
      {},
      `Rates check code ${opened.rates.check_code} · ${reply.imagined_cars_text} simulated cars · seed ${reply.seed} · figures code ${opened.figures_code} · sums version ${opened.version}`,
    ),
    el("p", { class: "paper-link" }, "To open these answers again: ", address),
  );
}

/** Opens what is folded while the page prints, where paper needs it. */
export function unfoldForPaper(root: HTMLElement): void {
  const opened: HTMLDetailsElement[] = [];
  addEventListener("beforeprint", () => {
    for (const fold of root.querySelectorAll<HTMLDetailsElement>("details[data-paper]"))
      if (!fold.open) {
        fold.open = true;
        opened.push(fold);
      }
  });
  addEventListener("afterprint", () => {
    for (const fold of opened.splice(0)) fold.open = false;
  });
}
