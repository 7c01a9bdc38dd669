// Second looks: which entries are still to be looked at again, given what the engine
// named, without a browser.

import assert from "node:assert/strict";
import test from "node:test";
import { withCondition, withCouldNotSee, withSure } from "../../pages/shared/thiscar/record.ts";
import { SecondLooks } from "../../pages/survey/secondlook.ts";

const record = (car, on, condition) => withCondition(car, on, "survey", condition, "t");
const car = record(record({ format: "underpaint car 1" }, "a", "sound"), "b", "gone");
const text = "Very unlike the rest of this car. Check it again?";
const reply = (...on) => ({
  kind: "look_again",
  look_again: on.map((id) => ({ on: id, name: id.toUpperCase(), text })),
});
const named = (...on) => {
  const again = new SecondLooks();
  again.took(reply(...on), car);
  return again;
};

test("entries are named until they are changed or the estimator is sure", () => {
  const again = named("a", "b");
  assert.deepEqual(
    again.list(car).map(({ on, name, text: t }) => [on, name, t]),
    [
      ["a", "A", text],
      ["b", "B", text],
    ],
  );
  assert.deepEqual(
    again.list(withSure(car, "a")).map((one) => one.on),
    ["b"],
  );
  assert.deepEqual(
    again.list(record(car, "a", "light_pitting")).map((one) => one.on),
    ["b"],
  );
  assert.deepEqual(
    again.list(withCouldNotSee(car, "b", "survey", "u")).map((one) => one.on),
    ["a"],
  );
  assert.equal(again.at(car, "a").text, text);
  assert.equal(again.at(withSure(car, "a"), "a"), null);
  assert.equal(again.at(car, "c"), null);
});

test("the newest list counts; another car has none", () => {
  const again = named("a", "b");
  again.took(reply("b"), car);
  assert.deepEqual(
    again.list(car).map((one) => one.on),
    ["b"],
  );
  again.took(reply(), car);
  assert.deepEqual(again.list(car), []);
  again.took(reply("a"), car);
  again.forget();
  assert.deepEqual(again.list(car), []);
});

test("a part that is not recorded cannot be looked at again", () => {
  assert.deepEqual(named("c").list(car), []);
});
