// What the shop stores must survive a battery that runs out. Browsers write localStorage to
// the disk late: Chromium after five seconds, and after up to a minute when it is written
// often. So each entry also goes into IndexedDB with strict durability, which is on the disk
// once the transaction is complete (Indexed Database API 3.0, durability hints).
//
// localStorage comes first, at once and within the press itself, because it survives a tab
// that crashes. A count tells which of the two is newer.

import type { CarFile, Teller } from "./carfile.ts";
import type { Origin } from "./linkcontent.ts";
import { type Found, Store } from "./storage.ts";

const NAME = "underpaint kept 1";
const TABLE = "shelves";
/** A page begins without a disk that does not answer within this time. */
const WAIT_MS = 3000;

/** What is on the disk: the text of localStorage, null once it was erased. */
interface OnDisk {
  count: number;
  text: string | null;
}

let opened: Promise<IDBDatabase> | null = null;

function database(): Promise<IDBDatabase> {
  opened ??= new Promise((done, failed) => {
    const asked = indexedDB.open(NAME, 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(TABLE);
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => failed(asked.error);
  });
  return opened;
}

/** Where the database cannot be used, as where storage is switched off, localStorage has to do. */
async function put(key: string, value: OnDisk): Promise<void> {
  try {
    (await database())
      .transaction(TABLE, "readwrite", { durability: "strict" })
      .objectStore(TABLE)
      .put(value, key);
  } catch {
    // See above.
  }
}

/** Opens no database that is not there yet: nothing is on the device before somebody saves. */
async function get(key: string): Promise<OnDisk | null> {
  try {
    if (!opened && !(await indexedDB.databases()).some(({ name }) => name === NAME)) return null;
    const asked: IDBRequest<OnDisk | undefined> = (await database())
      .transaction(TABLE)
      .objectStore(TABLE)
      .get(key);
    return await new Promise((done) => {
      asked.onsuccess = () => done(asked.result ?? null);
      asked.onerror = () => done(null);
    });
  } catch {
    return null;
  }
}

/** The count of what was found; NaN, which is less than nothing, where it has none. */
const countOf = (found: Found<object>): number =>
  found === null || found === "unreadable" ? Number.NaN : (found.count ?? Number.NaN);

export class DurableStore<T extends object, More extends object = object> extends Store<T, More> {
  #count = 0;

  override load(): Found<T, More> {
    const found = super.load();
    const count = countOf(found);
    if (count > this.#count) this.#count = count;
    return found;
  }

  override save(car: T, when: string, stamp: string, more?: More): boolean {
    const count = this.#count + 1;
    const done = this.write({ car, when, stamp, ...more, count });
    if (done) {
      this.#count = count;
      put(this.key, { count, text: this.text() });
    }
    return done;
  }

  override erase(): boolean {
    put(this.key, { count: ++this.#count, text: null });
    return super.erase();
  }

  /** Takes what is newer on the disk; to be called before anything is offered. What is in
   *  localStorage and cannot be read, or has no count, is left for a person to decide. */
  async settle(): Promise<void> {
    const found = this.load();
    const onDisk = await Promise.race([
      get(this.key),
      new Promise<null>((late) => setTimeout(() => late(null), WAIT_MS)),
    ]);
    if (!onDisk || (found && !(countOf(found) < onDisk.count))) return;
    this.#count = onDisk.count;
    if (onDisk.text === null) super.erase();
    else super.restore(onDisk.text);
  }
}

/** What "This car" stores beside the car. */
export interface SurveyExtra {
  /** How the estimator works through the list, and who decides the ways. */
  ways: { down: boolean; keys: boolean; range: boolean; by: Teller };
  from: Origin | null;
}

/** The shop's "This car". */
export const shopStore = new DurableStore<CarFile, SurveyExtra>("underpaint this car 1");
