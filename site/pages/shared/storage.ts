// What is kept on this device, and only after it was asked for: one car of the
// customer's page here; what the shop keeps is in survey/lasting.js.

export class Store {
  #key;
  constructor(key) {
    this.#key = key;
  }
  get key() {
    return this.#key;
  }

  /** null when nothing is kept; "unreadable" when something is and cannot be used. */
  load() {
    // Storage that is switched off, as in frames of other sites, holds nothing.
    const text = this.text();
    if (text === null) return null;
    try {
      const found = JSON.parse(text);
      const sound =
        found?.car &&
        typeof found.car === "object" &&
        !Array.isArray(found.car) &&
        typeof found.when === "string" &&
        /^\d{4}-\d\d-\d\d/.test(found.when) &&
        !Number.isNaN(Date.parse(found.when.slice(0, 10)));
      return sound ? found : "unreadable";
    } catch {
      return "unreadable";
    }
  }

  /** The text as it lies there, for a file when it cannot be used. */
  text() {
    try {
      return localStorage.getItem(this.#key);
    } catch {
      return null;
    }
  }

  /** Keeps a car; false when the device refuses (full, or storage switched off).
   *  more: what else belongs to it. */
  save(car, when, stamp, more = {}) {
    try {
      localStorage.setItem(this.#key, JSON.stringify({ car, when, stamp, ...more }));
      return true;
    } catch {
      return false;
    }
  }

  /** Puts a text back as it was kept. */
  restore(text) {
    try {
      localStorage.setItem(this.#key, text);
    } catch {
      /* It stays where it is. */
    }
  }

  /** True when nothing is left. */
  erase() {
    try {
      localStorage.removeItem(this.#key);
      return localStorage.getItem(this.#key) === null;
    } catch {
      return true;
    }
  }

  /** Calls back with what another tab has just kept or erased. */
  whenOtherTabSaves(tell) {
    addEventListener("storage", (event) => {
      if (event.key === this.#key || event.key === null) tell(this.load());
    });
  }
}

export const customerStore = new Store("underpaint kept car 1");
