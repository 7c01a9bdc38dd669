// The rates that are being edited: one object, just like the file. Members that this page
// does not know stay as they are. What somebody types is stored as typed; the engine says
// what is wrong with it.

import { type DraftRates, isObject } from "../shared/ratesfile.ts";

type Step = string | number;

/** "materials[3].how.film" as names and numbers. */
function steps(path: string): Step[] {
  return path
    .split(/[.[\]]+/)
    .filter(Boolean)
    .map((s) => (/^\d+$/.test(s) ? Number(s) : s));
}

/** What an object has at the end of a path; undefined where the path leads nowhere. */
export function valueAt(object: unknown, path: string): unknown {
  return follow(object, steps(path));
}

function follow(object: unknown, way: readonly Step[]): unknown {
  return way.reduce<unknown>((at, step) => (isObject(at) ? at[step] : undefined), object);
}

/** Is a path at or below another? */
export const within = (path: string, of: string): boolean =>
  path === of || path.startsWith(`${of}.`) || path.startsWith(`${of}[`);

/** A copy with another value at the path; undefined removes the member. */
function withValue(rates: DraftRates, path: string, value: unknown): DraftRates {
  const copy = structuredClone(rates);
  const way = steps(path);
  const last = way.pop();
  const holder = way.reduce<unknown>((at, step) => {
    if (!isObject(at)) return at;
    at[step] ??= {};
    return at[step];
  }, copy);
  if (last === undefined || !isObject(holder)) throw new Error(`nothing can be put at "${path}"`);
  if (value === undefined) delete holder[last];
  else holder[last] = value;
  return copy;
}

const MOST_STEPS_BACK = 100;

export class Draft {
  rates: DraftRates | null = null;
  /** The text of the rates on the site, or null when they cannot be used, and
   *  their check code. */
  site: string | null = null;
  siteCode = "";
  #start = "";
  #back: { rates: DraftRates; name: string }[] = [];
  #told: () => void;

  /** told is called after every change. */
  constructor(told: () => void) {
    this.#told = told;
  }

  begin(rates: DraftRates, { dirty = false } = {}): void {
    this.rates = rates;
    this.#start = dirty ? "" : JSON.stringify(rates);
    this.#back = [];
    this.#told();
  }

  /** The rates, for whoever works only while some are open. */
  get current(): DraftRates {
    if (!this.rates) throw new Error("no rates are open");
    return this.rates;
  }

  get(path: string): unknown {
    return valueAt(this.rates, path);
  }
  /** The list at a path; empty where there is none. */
  list(path: string): unknown[] {
    const value = this.get(path);
    return Array.isArray(value) ? value : [];
  }
  text(): string {
    return JSON.stringify(this.rates);
  }
  get changed(): boolean {
    return this.rates !== null && this.text() !== this.#start;
  }
  /** The last change in words, or "" when there is none to undo. */
  get lastChange(): string {
    return this.#back.at(-1)?.name ?? "";
  }

  /** name: the change in words, for undoing it. */
  set(path: string, value: unknown, name: string): void {
    if (JSON.stringify(this.get(path)) === JSON.stringify(value)) return;
    const before = this.current;
    this.rates = owned(withValue(before, path, value), path);
    this.#back.push({ rates: before, name });
    if (this.#back.length > MOST_STEPS_BACK) this.#back.shift();
    this.#told();
  }

  insert(path: string, value: unknown, name: string): void {
    this.set(path, [...this.list(path), value], name);
  }

  remove(path: string, index: number, name: string): void {
    this.set(
      path,
      this.list(path).filter((_, i) => i !== index),
      name,
    );
  }

  /** Undoes the last change and gives its name; null when there is none. */
  undo(): string | null {
    const last = this.#back.pop();
    if (!last) return null;
    this.rates = last.rates;
    this.#told();
    return last.name;
  }

  /** The draft was saved just now: closing the page loses nothing. */
  saved(): void {
    this.#start = this.text();
  }
}

const OWN = "the shop's own figure";
/** A source that no longer holds once the shop has put its own figure there. */
const NOT_OWN = /sample|invented|assum|starting|from memory/;
const NO_FIGURES: Step[] = ["source", "note", "name"];

/** A figure that somebody changes is the shop's own, so the group around it no longer
 *  names the sample, or an assumption, as its source. */
function owned(rates: DraftRates, path: string): DraftRates {
  const way = steps(path);
  if (way.some((step) => NO_FIGURES.includes(step))) return rates;
  for (let n = way.length - 1; n > 0; n--) {
    const group = follow(rates, way.slice(0, n));
    if (isObject(group) && !Array.isArray(group) && typeof group.source === "string") {
      if (NOT_OWN.test(group.source)) group.source = OWN;
      return rates;
    }
  }
  return rates;
}
