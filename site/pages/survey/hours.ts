// The hours really worked on the strip of this car, by trade.

import { el, freshId } from "../shared/dom.ts";
import type { StripTrade } from "../shared/replies.ts";
import { withHours } from "../shared/thiscar/carmembers.ts";
import type { OpenCar } from "./opencar.ts";

/** "6.5" and "6,5"; null for a blank, NaN for a text that is no number of hours. */
function hoursOf(text: string): number | null {
  if (text.trim() === "") return null;
  return /^\d{1,4}([.,]\d{1,2})?$/.test(text.trim()) ? Number(text.trim().replace(",", ".")) : Number.NaN;
}

export function hoursSection(openCar: OpenCar): HTMLElement | null {
  const trades = openCar.sheet.strip_trades;
  if (trades.length === 0) return null;
  return el(
    "section",
    { class: "strip-hours", "aria-labelledby": "hours-title" },
    el("h2", { id: "hours-title" }, "Strip hours really worked"),
    el("p", { class: "hint" }, "Leave blank what is not known yet."),
    el(
      "div",
      { class: "hour-fields" },
      trades.map((trade) => field(openCar, trade)),
    ),
  );
}

function field(openCar: OpenCar, trade: StripTrade): HTMLElement {
  const id = freshId("hours");
  const error = el("p", { id: `${id}-error`, class: "error", hidden: true });
  const input = el("input", {
    id,
    type: "text",
    inputmode: "decimal",
    autocomplete: "off",
    maxlength: 7,
    "data-hours": trade.id,
    "aria-describedby": `${id}-hint ${id}-error`,
    on: {
      change: () => {
        const hours = hoursOf(input.value);
        const wrong = hours === 0 || Number.isNaN(hours);
        error.hidden = !wrong;
        error.textContent = wrong ? "Write hours as a number, such as 6.5." : "";
        if (wrong) input.setAttribute("aria-invalid", "true");
        else input.removeAttribute("aria-invalid");
        if (!wrong)
          openCar.act("hours", withHours(openCar.car, trade.id, hours), {
            stage: hours === null ? null : "survey",
          });
      },
    },
  });
  input.value = String(openCar.car.strip_hours?.[trade.id] ?? "");
  return el(
    "div",
    { class: "typed" },
    el("label", { for: id }, trade.name),
    el("p", { id: `${id}-hint`, class: "hint" }, trade.likely_text),
    error,
    input,
  );
}
