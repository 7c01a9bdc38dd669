// Strip hours really worked, by trade: what the stage took on this car.

import { el, freshId } from "../shared/dom.ts";
import { withHours } from "../shared/thiscar/record.ts";

/** "6.5" and "6,5"; null for a blank, NaN for what is no number of hours. */
function hoursOf(text) {
  if (text.trim() === "") return null;
  return /^\d{1,4}([.,]\d{1,2})?$/.test(text.trim()) ? Number(text.trim().replace(",", ".")) : NaN;
}

export function hoursSection(job) {
  const trades = job.sheet.strip_trades ?? [];
  if (trades.length === 0) return null;
  return el(
    "section",
    { class: "strip-hours", "aria-labelledby": "hours-title" },
    el("h2", { id: "hours-title" }, "Strip hours really worked"),
    el("p", { class: "hint" }, "Leave blank what is not known yet."),
    el(
      "div",
      { class: "hour-fields" },
      trades.map((trade) => field(job, trade)),
    ),
  );
}

function field(job, trade) {
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
        const wrong = Number.isNaN(hours) || hours === 0;
        error.hidden = !wrong;
        error.textContent = wrong ? "Write hours as a number, such as 6.5." : "";
        if (wrong) input.setAttribute("aria-invalid", "true");
        else input.removeAttribute("aria-invalid");
        if (!wrong)
          job.act("hours", withHours(job.car, trade.id, hours), { stage: hours === null ? null : "survey" });
      },
    },
  });
  input.value = job.car.strip_hours?.[trade.id] ?? "";
  return el(
    "div",
    { class: "typed" },
    el("label", { for: id }, trade.name),
    el("p", { id: `${id}-hint`, class: "hint" }, trade.likely_text),
    error,
    input,
  );
}
