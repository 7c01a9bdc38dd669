// The columns of the large dots. What must hold follows from what the picture says: a dot is
// full inside the range and hollow outside, and no dot covers another.

import assert from "node:assert/strict";
import test from "node:test";
import { placeDots } from "../../pages/customer/bigdots.ts";

/** A row of numbers from 0 to 1 that repeats (Lehmer's generator, Park and Miller 1988). */
function numbers(seed) {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}

/** Twenty prices, of which the first two are below the range and the last two above. */
function twenty(next) {
  const all = Array.from({ length: 20 }, () => next() ** 2).sort((a, b) => a - b);
  const dots = all.map((exact, i) => ({ exact, inside: i >= 2 && i < 18 }));
  return { dots, low: (all[1] + all[2]) / 2, high: (all[17] + all[18]) / 2 };
}

test("no dot stands on the wrong side of an end, and none covers another", () => {
  const next = numbers(20261);
  for (let run = 0; run < 400; run++) {
    const { dots, low, high } = twenty(next);
    const [length, size] = [280 + next() * 900, 14 + next() * 32];
    const placed = placeDots(dots, low, high, length, size);
    assert.equal(placed.length, 20);
    // A range narrower than a dot cannot hold a whole one: then its middle counts.
    const radius = (high - low) * length >= size ? size / 2 : 0;
    for (const [i, { x, inside }] of placed.entries()) {
      if (inside) assert.ok(x - radius >= low * length - 1e-9 && x + radius <= high * length + 1e-9);
      else assert.ok(i < 2 ? x + size / 2 <= low * length + 1e-9 : x - size / 2 >= high * length - 1e-9);
      assert.ok(
        Math.abs(x - dots[i].exact * length) <= Math.max(size, (high - low) * length),
        "near its price",
      );
    }
    for (const [i, a] of placed.entries())
      for (const b of placed.slice(0, i)) {
        const apart = Math.hypot(a.x - b.x, (a.stack - b.stack) * size);
        assert.ok(apart >= size - 1e-9 || radius === 0, `${apart} apart, ${size} wide`);
      }
  }
});

test("a rounded end that lies beyond a price outside does not draw it inside", () => {
  const dots = [0.29, 0.305, 0.5, 0.695].map((exact) => ({ exact, inside: exact === 0.5 }));
  assert.deepEqual(
    placeDots(dots, 0.3, 0.69, 1000, 40).map((d) => d.x),
    [280, 280, 300 + (4.5 * 390) / 9, 710],
  );
});

test("two prices in one column stand on each other", () => {
  const dots = [0.505, 0.51, 0.9].map((exact) => ({ exact, inside: exact < 0.8 }));
  assert.deepEqual(placeDots(dots, 0.5, 0.6, 1000, 50), [
    { x: 525, stack: 1, inside: true },
    { x: 525, stack: 2, inside: true },
    { x: 925, stack: 1, inside: false },
  ]);
});
