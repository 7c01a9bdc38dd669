// The bands of "This car": what the engine refused, where the car came from, and what is
// asked before a car is opened or closed.

import { type BandButton, band, brokenBand, notesBand, originBand, pastBand } from "../shared/bands.ts";
import { today } from "../shared/linkcontent.ts";
import type { CarNote, OpenedReply } from "../shared/replies.ts";
import type { Shop } from "../shared/thiscar/context.ts";
import type { Failure } from "../shared/thiscar/gather.ts";
import { fieldOf } from "./notes.ts";
import type { OpenCar } from "./opencar.ts";

/** Faults that no part of the list shows; null where there are none. */
export function faultsBand({ sheet, tally }: OpenCar): HTMLElement | null {
  const rest = (tally?.faults ?? []).filter(
    (f) => !Object.hasOwn(sheet.items, f.on) && !/^looks\[/.test(f.path),
  );
  if (rest.length === 0) return null;
  return band("faults", ["These entries do not count:", ...rest.map((f) => f.text)]);
}

/** The engine refused the whole car or failed; null when it did not answer. */
export function failedBand(reply: Failure | null): HTMLElement {
  if (reply === null)
    return band("refused", [
      "The sums did not answer. What is recorded is safe; the counts follow with the next entry.",
    ]);
  if (reply.kind === "broken") return brokenBand(reply.text);
  return band("refused", [reply.text, "No figure and no count is shown until this is put right."]);
}

export const notReadyBand = (): HTMLElement =>
  band("arrival", ["This car could not be opened: the sums are not ready. Try once more in a moment."]);

/** The bodies that a car file from outside has, as far as it has any. */
function bodiesIn(car: unknown): readonly unknown[] {
  if (typeof car !== "object" || car === null || !("bodies" in car)) return [];
  return Array.isArray(car.bodies) ? car.bodies : [];
}

/** A car that the engine refused. When the customer was not sure of the body, the shop
 *  chooses one, and the other answers stay: take opens the car with it. */
export function refusedBand(
  car: unknown,
  reply: Failure,
  opened: OpenedReply,
  take: (car: unknown) => unknown,
): HTMLElement {
  const bodies = bodiesIn(car);
  if (reply.kind !== "refused" || reply.path !== "bodies" || bodies.length < 2)
    return band("arrival", ["This car could not be opened.", reply.text]);
  return band(
    "arrival",
    ["The customer was not sure of the body. Which is it? The other answers stay."],
    bodies.map((id): BandButton => {
      const name = opened.bodies.find((b) => b.id === id)?.name ?? String(id);
      return [name, () => take(Object.assign({}, car, { bodies: [id] }))];
    }),
  );
}

/** Asks whether a car that is saved nowhere may be lost. */
export const leaveBand = (lose: () => void, stay: () => void): HTMLElement =>
  band(
    "leave",
    ["This car is not kept on this device. Beginning another one loses it."],
    [
      ["Lose it and begin another", lose],
      ["Stay with this car", stay],
    ],
  );

/** The bands of the car that is open, each under its kind; null where one is not needed. */
export function carBands(
  openCar: OpenCar,
  { opened, q }: Shop,
  notes: readonly CarNote[],
  acts: { again(): unknown; answer(field: string): unknown },
): Record<"origin" | "notes" | "past", HTMLElement | null> {
  if (!openCar.hasCar) return { origin: null, notes: null, past: null };
  const { car, from } = openCar;
  const unchecked = (from?.kind === "link" || from?.kind === "file") && !car.answers_checked;
  return {
    origin: from && (unchecked || from.kind === "sample") ? originBand(from, opened, acts) : null,
    notes: notesBand(notes, car, q, (_, path) => acts.answer(fieldOf(path))),
    past: opened.rates.valid_until < today() ? pastBand(opened.rates) : null,
  };
}
