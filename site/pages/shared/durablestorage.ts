// What the shop keeps must outlast a battery that dies. Browsers write localStorage
// to the disk late: Chromium after five seconds, and after up to a minute when it is
// written often. So each keeping is also put into IndexedDB with strict durability,
// which is on the disk when it is done (Indexed Database API 3.0, durability hints).
//
// localStorage comes first, at once and in the press itself, since it outlives a tab
// that dies. Which of the two is the newer is told by a count.

import { Store } from "./storage.ts";

const NAME = "underpaint kept 1";
const TABLE = "shelves";
/** A disk that does not answer must not keep a page from beginning. */
const WAIT_MS = 3000;
let opened = null;

function database() {
  opened ??= new Promise((done, failed) => {
    const asked = indexedDB.open(NAME, 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(TABLE);
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => failed(asked.error);
  });
  return opened;
}

/** Without it, as where storage is switched off, what is in localStorage has to do. */
async function put(key, value) {
  try {
    (await database())
      .transaction(TABLE, "readwrite", { durability: "strict" })
      .objectStore(TABLE)
      .put(value, key);
  } catch {
    /* See above. */
  }
}

/** Opens nothing that is not there: before Keep nothing lies on the device. */
async function get(key) {
  try {
    if (!opened && !(await indexedDB.databases()).some(({ name }) => name === NAME)) return null;
    const asked = (await database()).transaction(TABLE).objectStore(TABLE).get(key);
    return await new Promise((done) => {
      asked.onsuccess = () => done(asked.result ?? null);
      asked.onerror = () => done(null);
    });
  } catch {
    return null;
  }
}

export class DurableStore extends Store {
  #count = 0;

  load() {
    const found = super.load();
    if (found?.count > this.#count) this.#count = found.count;
    return found;
  }

  save(car, when, stamp, more = {}) {
    const count = this.#count + 1;
    const done = super.save(car, when, stamp, { ...more, count });
    if (done) {
      this.#count = count;
      put(this.key, { count, text: this.text() });
    }
    return done;
  }

  erase() {
    put(this.key, { count: ++this.#count, text: null });
    return super.erase();
  }

  /** Before anything is offered: takes what the disk has newer. What lies in
   *  localStorage and cannot be read, or has no count, is left for a person. */
  async settle() {
    const found = this.load();
    const lasting = await Promise.race([
      get(this.key),
      new Promise((late) => setTimeout(() => late(null), WAIT_MS)),
    ]);
    if (!lasting || (found && !(found.count < lasting.count))) return;
    this.#count = lasting.count;
    if (lasting.text === null) super.erase();
    else super.restore(lasting.text);
  }
}

/** The shop's "This car". */
export const shopStore = new DurableStore("underpaint this car 1");
