// What is stored on this device, and only after somebody asked for it. The customer's page
// stores one car here; what the shop's pages store is in durablestorage.ts.

import type { CarFile } from "./carfile.ts";

/** An entry as it is stored. T is what is stored under the name "car"; its own members come
 *  from outside and are for the engine to check. More: what belongs to it beside that. */
export type Saved<T, More = object> = Partial<More> & {
  car: T;
  /** The day or the moment at which it was stored: it begins with YYYY-MM-DD. */
  when: string;
  /** Differs with each saving, so that a tab sees when another one has saved. */
  stamp?: string;
  /** Grows with each saving; see durablestorage.ts. */
  count?: number;
};

/** What a store holds: null when nothing is stored, "unreadable" when something is and cannot
 *  be used. */
export type Found<T, More = object> = Saved<T, More> | "unreadable" | null;

/** The stamp of what was found, if it has one. */
export const stampOf = (found: Found<object>): string | undefined =>
  found && found !== "unreadable" ? found.stamp : undefined;

function isSaved(found: unknown): found is Saved<object> {
  if (typeof found !== "object" || found === null || !("car" in found) || !("when" in found)) return false;
  const { car, when } = found;
  return (
    typeof car === "object" &&
    car !== null &&
    !Array.isArray(car) &&
    typeof when === "string" &&
    /^\d{4}-\d\d-\d\d/.test(when) &&
    !Number.isNaN(Date.parse(when.slice(0, 10)))
  );
}

/** One entry of localStorage. */
export class Store<T extends object, More extends object = object> {
  #key: string;
  #fits: (thing: object) => boolean;
  /** fits: whether what is stored has what the page reads without the engine's check. */
  constructor(key: string, fits: (thing: object) => boolean = () => true) {
    this.#key = key;
    this.#fits = fits;
  }
  get key(): string {
    return this.#key;
  }

  load(): Found<T, More> {
    const text = this.text();
    if (text === null) return null;
    try {
      const found: unknown = JSON.parse(text);
      return isSaved(found) && this.#fits(found.car) ? (found as Saved<T, More>) : "unreadable";
    } catch {
      return "unreadable";
    }
  }

  /** The text as it is stored, for a file when it cannot be used. Storage that is switched
   *  off, as in frames of other sites, holds nothing. */
  text(): string | null {
    try {
      return localStorage.getItem(this.#key);
    } catch {
      return null;
    }
  }

  /** Stores a car; false when the device refuses (full, or storage switched off).
   *  more: what else belongs to it. */
  save(car: T, when: string, stamp: string, more?: More): boolean {
    return this.write({ car, when, stamp, ...more });
  }

  protected write(entry: Saved<T>): boolean {
    try {
      localStorage.setItem(this.#key, JSON.stringify(entry));
      return true;
    } catch {
      return false;
    }
  }

  /** Puts a text back as it was stored. */
  restore(text: string): void {
    try {
      localStorage.setItem(this.#key, text);
    } catch {
      // The disk still has it.
    }
  }

  /** True when nothing is left. */
  erase(): boolean {
    try {
      localStorage.removeItem(this.#key);
      return localStorage.getItem(this.#key) === null;
    } catch {
      return true;
    }
  }

  /** Calls tell with what another tab has just saved or erased. */
  whenOtherTabSaves(tell: (found: Found<T, More>) => void): void {
    addEventListener("storage", (event) => {
      if (event.key === this.#key || event.key === null) tell(this.load());
    });
  }
}

export const customerStore = new Store<CarFile>("underpaint kept car 1");
