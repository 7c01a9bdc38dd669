// What is stored on this device beside the cars: past jobs, and the cars that still wait to
// become jobs.

import type { CarFile } from "../shared/carfile.ts";
import { DurableStore } from "../shared/durablestorage.ts";
import { isObject } from "../shared/ratesfile.ts";

/** A car from a file that still has to be completed to a job. name: of the file. */
export interface WaitingCar {
  name: string;
  car: CarFile;
}

/** A stored file of past jobs. The engine reads it before any of it counts. */
export interface StoredJobs {
  jobs?: unknown;
}

/** What is stored beside the file, and comes back unchecked. */
export interface StoredExtra {
  waiting: unknown;
}

/** The file is stored under the name "car" that all stores have. */
export const jobsStore = new DurableStore<StoredJobs, StoredExtra>("underpaint past jobs 1");

/** The waiting cars in what was stored. The engine checks each car with its job. */
export function waitingIn(stored: unknown): WaitingCar[] {
  return Array.isArray(stored) ? stored.filter(isWaiting) : [];
}

function isWaiting(value: unknown): value is WaitingCar {
  return isObject(value) && typeof value.name === "string" && isObject(value.car);
}
