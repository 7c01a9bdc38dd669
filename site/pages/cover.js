// "Would this much cover it?": asked last, empty, and kept nowhere.

import { el, freshId } from "./dom.js";
import { showError } from "./ask.js";

/** "$110,000" and "110 000" mean what the engine reads as 110000. */
const plainSum = (text) => text.replace(/[\s,$£€]/g, "");

/** ask(text) gives the engine's reply. */
export function coverSection(symbol, ask) {
  const id = freshId("sum");
  const error = el("p", { id: `${id}-error`, class: "error", hidden: true });
  const input = el("input", { id, type: "text", inputmode: "decimal", autocomplete: "off", maxlength: 16, "aria-describedby": `${id}-error` });
  const answer = el("p", { class: "cover-answer", role: "status" });
  const submit = async (event) => {
    event.preventDefault();
    error.hidden = true;
    input.removeAttribute("aria-invalid");
    answer.textContent = "";
    let reply;
    try { reply = await ask(plainSum(input.value)); } catch { reply = { kind: "refused", text: "The sums stopped. Try once more." }; }
    if (reply.kind === "cover") answer.textContent = reply.text;
    else showError(input, error, reply.text);
  };
  return el("section", { class: "cover", "aria-labelledby": "cover-title" },
    el("h2", { id: "cover-title" }, "Would this much cover it?"),
    el("form", { novalidate: true, on: { submit } },
      el("label", { for: id }, `A sum you have in mind, in ${symbol}`), error,
      el("span", { class: "with-button" }, input, el("button", { type: "submit" }, "Work it out"))),
    answer,
    el("p", { class: "hint" }, "Not kept, and not put into a link or file."));
}
