// The table of keys, for "?".

import { button, el } from "../shared/dom.ts";
import type { SheetReply } from "../shared/replies.ts";
import { keyTable } from "./keys.ts";

/** Shows the table. closed is called when somebody closes it. */
export function showKeys(sheet: SheetReply, closed: () => void): void {
  const close = button("Back to the list", () => dialog.close(), { class: "go" });
  const dialog: HTMLDialogElement = el(
    "dialog",
    { class: "keys", "aria-label": "Keys" },
    el("h2", {}, "Keys, while the list has the focus"),
    el(
      "table",
      {},
      el(
        "tbody",
        {},
        keyTable(sheet.conditions, sheet.findings).map(([key, does]) =>
          el("tr", {}, el("th", { scope: "row" }, key), el("td", {}, does)),
        ),
      ),
    ),
    close,
  );
  dialog.addEventListener("close", () => {
    dialog.remove();
    closed();
  });
  document.body.append(dialog);
  dialog.showModal();
  close.focus();
}
