// Saving on this device, without a browser: when a tab writes, when it leaves what another tab
// has written, and what it does when the device refuses.

import assert from "node:assert/strict";
import test from "node:test";
import { Saving } from "../../pages/shared/saving.ts";
import { Store } from "../../pages/shared/storage.ts";

const KEY = "a test";
const stored = new Map();
const listeners = new Set();
let full = false;

globalThis.localStorage = {
  getItem: (key) => stored.get(key) ?? null,
  setItem: (key, text) => {
    if (full) throw new Error("full");
    stored.set(key, text);
  },
  removeItem: (key) => stored.delete(key),
};
globalThis.addEventListener = (name, listener) => {
  if (name === "storage") listeners.add(listener);
};

/** A tab that has the device for itself; other: what it was told of other tabs. */
function tab(more = {}) {
  const other = [];
  const saving = new Saving({ store: new Store(KEY), other: (found) => other.push(found), ...more });
  return { saving, other };
}

/** What another tab does to the entry. heard: whether this tab is told at once. */
function elsewhere(text, { heard = true } = {}) {
  if (text === null) stored.delete(KEY);
  else stored.set(KEY, text);
  if (heard) for (const listener of listeners) listener({ key: KEY });
}

const entry = (car, stamp) => JSON.stringify({ car, when: "2026-06-20T14:02", stamp });
const lies = () => JSON.parse(stored.get(KEY));

test.beforeEach(() => {
  stored.clear();
  listeners.clear();
  full = false;
});

test("nothing is written before somebody asks; then each saving has a stamp of its own", () => {
  const { saving, other } = tab();
  assert.equal(saving.save({ n: 1 }), "off");
  assert.equal(stored.size, 0);
  assert.equal(saving.write({ n: 2 }, { way: "up" }), true);
  const first = lies();
  assert.deepEqual([first.car, first.way], [{ n: 2 }, "up"]);
  assert.match(first.when, /^\d{4}-\d\d-\d\dT\d\d:\d\d$/);
  assert.equal(saving.save({ n: 3 }), "saved");
  assert.deepEqual(lies().car, { n: 3 });
  assert.notEqual(lies().stamp, first.stamp);
  assert.deepEqual(other, []);
});

test("what another tab saved is not written over, whether this tab heard of it or not", () => {
  for (const heard of [true, false]) {
    const { saving, other } = tab();
    saving.write({ n: 1 });
    const theirs = entry({ n: 9 }, "theirs");
    elsewhere(theirs, { heard });
    assert.equal(saving.on, !heard);
    assert.equal(saving.save({ n: 2 }), heard ? "off" : "other");
    assert.equal(saving.on, false);
    assert.equal(stored.get(KEY), theirs);
    assert.deepEqual(
      other.map((found) => found.car),
      [{ n: 9 }],
    );
    assert.equal(saving.write({ n: 3 }), true, "a person may still put this one in its place");
    assert.deepEqual(lies().car, { n: 3 });
    listeners.clear();
  }
});

test("an entry that cannot be read is another's and stays", () => {
  const { saving, other } = tab();
  saving.goOn({ car: {}, when: "2026-06-20" });
  elsewhere("{", { heard: false });
  assert.equal(saving.save({ n: 2 }), "other");
  assert.equal(stored.get(KEY), "{");
  assert.deepEqual(other, ["unreadable"]);
});

test("an entry that another tab erased stops this one; its own event does not", () => {
  const { saving, other } = tab();
  saving.write({ n: 1 });
  elsewhere(stored.get(KEY));
  assert.equal(saving.on, true);
  elsewhere(null);
  assert.equal(saving.on, false);
  assert.deepEqual(other, [null]);
  elsewhere(entry({ n: 9 }, "theirs"));
  assert.deepEqual(other, [null], "a tab that does not save is told nothing");
});

test("a tab goes on from what it found, also when that has no stamp", () => {
  for (const stamp of ["theirs", undefined]) {
    const { saving, other } = tab();
    stored.set(KEY, entry({ n: 1 }, stamp));
    saving.goOn(lies());
    assert.equal(saving.save({ n: 2 }), "saved");
    assert.deepEqual(lies().car, { n: 2 });
    assert.deepEqual(other, []);
    saving.stop();
    assert.equal(saving.save({ n: 3 }), "off");
    assert.deepEqual(lies().car, { n: 2 }, "stopping leaves what is saved");
  }
});

test("a device that refuses: nothing begins, what was saved stays, and the next time may succeed", () => {
  const { saving } = tab();
  full = true;
  assert.equal(saving.write({ n: 1 }), false);
  assert.equal(saving.on, false);
  full = false;
  saving.write({ n: 2 });
  full = true;
  assert.equal(saving.save({ n: 3 }), "refused");
  assert.deepEqual(lies().car, { n: 2 });
  full = false;
  assert.equal(saving.save({ n: 4 }), "saved");
});

test("the state may be elsewhere, and so may the clock", () => {
  let state = { on: true, stamp: "mine" };
  const place = {
    get: () => state,
    set: (next) => {
      state = next;
    },
  };
  const { saving } = tab({ state: place, when: () => "2026-06-20" });
  stored.set(KEY, entry({ n: 1 }, "mine"));
  assert.equal(saving.save({ n: 2 }), "saved");
  assert.equal(lies().when, "2026-06-20");
  assert.equal(lies().stamp, state.stamp);
  state = { on: true, stamp: "of a page that slept" };
  assert.equal(saving.save({ n: 3 }), "other");
  assert.deepEqual(state, { on: false, stamp: "of a page that slept" });
});

test("a store refuses to read what its page could not use", () => {
  const store = new Store(KEY, (thing) => "n" in thing);
  stored.set(KEY, entry({ n: 1 }, "x"));
  assert.deepEqual(store.load().car, { n: 1 });
  stored.set(KEY, entry({ m: 1 }, "x"));
  assert.equal(store.load(), "unreadable");
});
