// The car that the talk is about, and where it came from: the address, this tab before a
// reload, "This car" as stored on the device, or the invented sample.

import { ofBuild } from "../shared/address.ts";
import type { CarFile } from "../shared/carfile.ts";
import { encode } from "../shared/carurl.ts";
import { shopStore } from "../shared/durablestorage.ts";
import { type LinkOrigin, type Origin, today, toShare } from "../shared/linkcontent.ts";
import type { RatesName, SheetReply } from "../shared/replies.ts";
import { dateText, momentText } from "../shared/timestamp.ts";

/** Where this page has a car from. */
export type Source =
  | { kind: "sample" }
  | { kind: "file" }
  /** fragment: the part of the address that held it, while it still holds this car. */
  | (LinkOrigin & { fragment?: string | undefined })
  /** when: the moment at which "This car" stored it; first: where that page had it from. */
  | { kind: "shelf"; when: string; first: Origin | null };

/** A car from outside; the engine has yet to check it. */
export interface Arrival {
  car: unknown;
  from: Source;
}

/** The car that is open. */
export interface Hand {
  car: CarFile;
  from: Source;
  sheet: SheetReply;
}

/** What "This car" has stored on this device. */
export async function storedCar(): Promise<Arrival | "unreadable" | null> {
  await shopStore.settle();
  const found = shopStore.load();
  if (!found || found === "unreadable") return found;
  return { car: found.car, from: { kind: "shelf", when: found.when, first: found.from ?? null } };
}

export async function sampleCar(): Promise<Arrival> {
  const response = await fetch(ofBuild("samples/two-door.json"));
  if (!response.ok) throw new Error(`sample: ${response.status}`);
  return { car: await response.json(), from: { kind: "sample" } };
}

/** Who entered the answers, for the head of the paper. */
export const enteredFrom = (from: Source): Origin | null => (from.kind === "shelf" ? from.first : from);

/** One line that says which car this is and who vouches for its answers. carLine: the car
 *  in the engine's words, once there are any. */
export function handLine({ car, sheet, from }: Hand, carLine: string | undefined): string {
  const name = carLine ?? sheet.body_name;
  const source = enteredFrom(from);
  const unchecked =
    !car.answers_checked && (source?.kind === "link" || source?.kind === "file")
      ? ", not checked by the shop"
      : "";
  switch (from.kind) {
    case "sample":
      return `The sample car, invented: ${name}`;
    case "shelf":
      return `This car, as kept on this device (${momentText(from.when)})${unchecked}: ${name}`;
    case "file":
      return `From a file${unchecked}: ${name}`;
    case "link":
      return `From a link${from.entered ? ` of ${dateText(from.entered)}` : ""}${unchecked}: ${name}`;
  }
}

/** The address of "This car", with the car in it where that page would not find it. */
export async function surveyAddress({ car, from }: Hand, rates: RatesName): Promise<string> {
  const page = "../survey/";
  if (from.kind === "sample" || from.kind === "shelf") return page;
  const fragment = from.kind === "link" ? from.fragment : undefined;
  try {
    return page + (fragment ?? (await encode(toShare(car, null, rates, today()))));
  } catch {
    return page;
  }
}
