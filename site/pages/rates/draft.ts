// The rates in hand: one object, as the file has it. Members that this page does
// not know stay as they are. What is typed goes in as it was typed; the engine
// says what is wrong with it.

/** "materials[3].how.film" as names and numbers. */
export function steps(path) {
  return path
    .split(/[.[\]]+/)
    .filter(Boolean)
    .map((s) => (/^\d+$/.test(s) ? Number(s) : s));
}

export function valueAt(object, path) {
  return steps(path).reduce((at, step) => at?.[step], object);
}

/** Is a path at or below another? */
export const within = (path, of) => path === of || path.startsWith(`${of}.`) || path.startsWith(`${of}[`);

/** A copy of the object with another value at the path; undefined takes it out. */
function withValue(object, path, value) {
  const copy = structuredClone(object);
  const way = steps(path);
  const last = way.pop();
  const holder = way.reduce((at, step) => (at[step] ??= {}), copy);
  if (value === undefined) delete holder[last];
  else holder[last] = value;
  return copy;
}

const MOST_STEPS_BACK = 100;

export class Draft {
  rates = null;
  /** The text of the rates on the site, or null when they cannot be used, and
   *  their check code. */
  site = null;
  siteCode = "";
  #start = "";
  #back = [];
  #told;

  /** told() after every change */
  constructor(told) {
    this.#told = told;
  }

  begin(rates, { dirty = false } = {}) {
    this.rates = rates;
    this.#start = dirty ? "" : JSON.stringify(rates);
    this.#back = [];
    this.#told();
  }

  get(path) {
    return valueAt(this.rates, path);
  }
  text() {
    return JSON.stringify(this.rates);
  }
  get changed() {
    return this.rates !== null && this.text() !== this.#start;
  }
  /** The last change in words, or "" when there is none to take back. */
  get lastChange() {
    return this.#back.at(-1)?.name ?? "";
  }

  /** name: the change in words, for undoing it. */
  set(path, value, name) {
    if (JSON.stringify(this.get(path)) === JSON.stringify(value)) return;
    this.#change(owned(withValue(this.rates, path, value), path), name);
  }

  insert(path, value, name) {
    this.set(path, [...(this.get(path) ?? []), value], name);
  }

  remove(path, index, name) {
    this.set(
      path,
      this.get(path).filter((_, i) => i !== index),
      name,
    );
  }

  #change(rates, name) {
    this.#back.push({ rates: this.rates, name });
    if (this.#back.length > MOST_STEPS_BACK) this.#back.shift();
    this.rates = rates;
    this.#told();
  }

  undo() {
    const last = this.#back.pop();
    if (!last) return null;
    this.rates = last.rates;
    this.#told();
    return last.name;
  }

  /** This is what was saved: nothing is lost by leaving now. */
  saved() {
    this.#start = this.text();
  }
}

const OWN = "the shop's own figure";
/** A source that no longer holds once the shop has put its own figure there. */
const NOT_OWN = /sample|invented|assum|starting|from memory/;
const NO_FIGURES = ["source", "note", "name"];

/** A figure that is changed is the shop's own, so the group around it no longer
 *  names the sample, or an assumption, as its source. */
function owned(rates, path) {
  const way = steps(path);
  if (way.some((step) => NO_FIGURES.includes(step))) return rates;
  for (let n = way.length - 1; n > 0; n--) {
    const group = way.slice(0, n).reduce((at, step) => at?.[step], rates);
    if (group && !Array.isArray(group) && typeof group.source === "string") {
      if (NOT_OWN.test(group.source)) group.source = OWN;
      return rates;
    }
  }
  return rates;
}
