// The three invented cars on which the shop sees what its figures do.

import { ofBuild } from "./address.ts";
import type { CarFile } from "./carfile.ts";

const CARS = [
  ["two-door-dry", "Two-door, dry state"],
  ["hardtop", "Hardtop on a frame, mixed life"],
  ["convertible", "Convertible, road salt"],
] as const;

export interface SampleCar {
  name: string;
  car: CarFile;
}

let loaded: Promise<SampleCar[]> | null = null;

/** The cars with their names; fetched once, and again only after a failure. */
export async function sampleCars(): Promise<SampleCar[]> {
  loaded ??= Promise.all(
    CARS.map(async ([file, name]) => ({
      name,
      car: await (await fetch(ofBuild(`samples/${file}.json`))).json(),
    })),
  );
  try {
    return await loaded;
  } catch (error) {
    loaded = null;
    throw error;
  }
}
