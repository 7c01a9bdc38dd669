// How to reach the shop: the button opens the person's own mail or phone. The page itself
// sends nothing, and nothing is agreed here.

import { button, el } from "../shared/dom.ts";
import type { OpenedReply } from "../shared/replies.ts";

/** Longest address that mail programs take; a longer one goes without the link. */
const MOST_MAIL = 1800;

/** address gives the link to these answers. */
export function askShop(opened: OpenedReply, address: () => Promise<string>): HTMLElement {
  const href = opened.shop.contact_href ?? "";
  const hint = (text: string): HTMLElement => el("p", { class: "hint" }, text);
  if (/^tel:/.test(href))
    return el(
      "div",
      { class: "ask-shop" },
      el("p", {}, el("a", { href }, "Ring the shop about strip and survey")),
      hint("Opens your own phone. Nothing is agreed on this page."),
    );
  if (!/^mailto:/.test(href))
    return el(
      "div",
      { class: "ask-shop" },
      el(
        "p",
        {},
        "To ask about strip and survey: ",
        /^https:/.test(href)
          ? el("a", { href, rel: "noopener" }, opened.shop.contact_text)
          : opened.shop.contact_text,
      ),
    );
  const mail = async (): Promise<void> => {
    const link = await address().catch(() => "");
    const body = `I would like to ask about strip and survey.\n\nMy answers and the range that I saw:\n${link}\n`;
    const whole = `${href}?subject=${encodeURIComponent("Strip and survey")}&body=${encodeURIComponent(body)}`;
    location.href =
      whole.length <= MOST_MAIL ? whole : `${href}?subject=${encodeURIComponent("Strip and survey")}`;
  };
  return el(
    "div",
    { class: "ask-shop" },
    button("Ask the shop about strip and survey", mail, { class: "go" }),
    hint(
      "Opens your own mail with the link to these answers in it; you send it, not this page. Nothing is agreed here.",
    ),
  );
}
