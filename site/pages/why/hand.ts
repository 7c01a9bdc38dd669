// The car that the talk is about, and where it came from: the address, this tab
// before a reload, "This car" kept on the device, or the invented sample.

import { ofBuild } from "../shared/address.ts";
import { encode } from "../shared/carurl.ts";
import { dateText, toShare, today } from "../shared/linkcontent.ts";
import { shopStore } from "../shared/durablestorage.ts";
import { momentText } from "../shared/timestamp.ts";

/** What lies on this device as "This car": {car, from} or "unreadable" or null. */
export async function keptCar() {
  await shopStore.settle();
  const found = shopStore.load();
  if (!found || found === "unreadable") return found;
  return { car: found.car, from: { kind: "shelf", when: found.when, first: found.from ?? null } };
}

export async function sampleCar() {
  const response = await fetch(ofBuild("samples/two-door.json"));
  if (!response.ok) throw new Error(`sample: ${response.status}`);
  return { car: await response.json(), from: { kind: "sample" } };
}

/** For the head of the paper: who entered the answers. */
export const entered = (from) => (from?.kind === "shelf" ? from.first : from);

/** One line that says which car this is and who stands for its answers. */
export function handLine({ car, sheet, from }, carLine) {
  const name = carLine ?? sheet.body_name;
  const source = entered(from);
  const unchecked =
    !car.answers_checked && (source?.kind === "link" || source?.kind === "file")
      ? ", not checked by the shop"
      : "";
  if (from.kind === "sample") return `The sample car, invented: ${name}`;
  if (from.kind === "shelf")
    return `This car, as kept on this device (${momentText(from.when)})${unchecked}: ${name}`;
  if (from.kind === "file") return `From a file${unchecked}: ${name}`;
  return `From a link${from.entered ? ` of ${dateText(from.entered)}` : ""}${unchecked}: ${name}`;
}

/** The way to "This car": with the car, where that page would not find it. */
export async function surveyAddress({ car, from }, rates) {
  const page = "../survey/";
  if (from.kind === "sample" || from.kind === "shelf") return page;
  try {
    return page + (from.fragment ?? (await encode(toShare(car, null, rates, today()))));
  } catch {
    return page;
  }
}
