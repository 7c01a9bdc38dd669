// The open car of "This car" and the replies behind its papers, without a browser: what
// Undo restores, what is asked once a car is closed, and when a paper is complete.

import assert from "node:assert/strict";
import test from "node:test";
import { withHours, withWay } from "../../pages/shared/thiscar/carmembers.ts";
import { Gathered, isDone, isRough } from "../../pages/shared/thiscar/gather.ts";
import { withCondition } from "../../pages/shared/thiscar/record.ts";
import { OpenCar } from "../../pages/survey/opencar.ts";

const file = Object.freeze({ format: "underpaint car 1", bodies: ["pickup"] });
const sheet = { kind: "sheet", items: {} };
const tally = (canonical = "") => ({ kind: "tally", canonical, faults: [] });

/** A car that is open, with what its host was told. answer: of the engine. */
function opened(answer = () => tally()) {
  const told = [];
  const asked = [];
  const openCar = new OpenCar({
    engine: {
      ask: (request) => {
        asked.push(request);
        return Promise.resolve(answer(request));
      },
    },
    codes: () => ({ rates: "ab", figures: "cd" }),
    save: () => told.push("save"),
    told: (what) => told.push(what),
    failed: (reply) => told.push(reply ? reply.text : "no answer"),
  });
  openCar.take(file, sheet, null);
  return { openCar, told, asked };
}

test("an entry begins its stage, and Undo takes both away and gives the old car back", () => {
  const { openCar } = opened();
  const next = withCondition(openCar.car, "a", "survey", "gone", "2026-06-20T14:00");
  assert.equal(openCar.act("survey", next, { stage: "survey", at: "a", said: "gone" }), true);
  assert.deepEqual(
    openCar.car.stages.map((s) => [s.stage, s.rates, s.figures]),
    [["survey", "ab", "cd"]],
  );
  assert.equal(openCar.act("survey", openCar.car), false, "nothing changed, so there is nothing to undo");
  const { at, said } = openCar.undo("survey");
  assert.deepEqual([at, said], ["a", "gone"]);
  assert.deepEqual(openCar.car, file);
  assert.equal(openCar.undo("survey"), null);
});

test("each list has an Undo of its own, and what is typed has none", () => {
  const { openCar } = opened();
  openCar.act("todo", withWay(openCar.car, "a", "patch", "shop"));
  openCar.act("hours", withHours(openCar.car, "metal", 6.5));
  assert.equal(openCar.undo("survey"), null);
  assert.equal(openCar.undo("hours"), null);
  openCar.undo("todo");
  assert.deepEqual(openCar.car, { ...file, strip_hours: { metal: 6.5 } });
});

test("a press is saved before anything else happens", () => {
  const { openCar, told } = opened();
  openCar.act("todo", withWay(openCar.car, "a", "patch", "shop"));
  assert.deepEqual(told, ["save", "car"]);
});

test("a car that is closed while the engine counts is not counted again", async () => {
  const { openCar, told, asked } = opened();
  const counting = openCar.count();
  openCar.close();
  await counting;
  assert.equal(asked.length, 1);
  assert.deepEqual(told, []);
  assert.equal(openCar.hasCar, false);
  assert.throws(() => openCar.car, /no car is open/);
});

test("the car file is the engine's once it has counted this car, and the page's until then", async () => {
  const { openCar } = opened(() => tally("canonical"));
  assert.equal(openCar.text(), JSON.stringify(file));
  await openCar.count();
  assert.equal(openCar.text(), "canonical");
  openCar.act("todo", withWay(openCar.car, "a", "patch", "shop"));
  assert.equal(openCar.text(), JSON.stringify(openCar.car));
});

test("a paper is complete only with answers that are done: no refusal, no failure, nothing rough", () => {
  assert.equal(isDone({ kind: "plan" }), true);
  assert.equal(isDone({ kind: "range", state: "settled" }), true);
  for (const reply of [
    undefined,
    null,
    { kind: "refused", text: "x" },
    { kind: "broken", text: "x" },
    { kind: "range", state: "rough" },
    { kind: "wide", state: "refining" },
  ])
    assert.equal(isDone(reply), false, JSON.stringify(reply));
  assert.equal(isRough({ kind: "wide", state: "budget_ended" }), false);
});

test("replies are asked for once each, and those of another car or a left paper are dropped", async () => {
  const asked = [];
  const ask = (request) => {
    asked.push(request.ask);
    return Promise.resolve({ kind: request.ask });
  };
  const gathered = new Gathered({ ask, refine: ask });
  const wanted = (car) => [
    ["plan", { ask: "plan", car }, false],
    ["wide", { ask: "wide", car }, true],
  ];
  let drawn = 0;
  const draw = () => drawn++;
  assert.equal(await gathered.fetch(file, wanted(file), draw), true);
  assert.equal(await gathered.fetch(file, wanted(file), draw), true);
  assert.deepEqual([asked, drawn], [["plan", "wide"], 2]);
  const other = { ...file };
  const fetching = gathered.fetch(other, wanted(other), draw);
  gathered.leave();
  assert.equal(await fetching, false);
  assert.equal(drawn, 2);
  assert.equal(gathered.about(other).size, 0);
});

test("an engine that does not answer leaves a sentence in the place of its reply", async () => {
  const gathered = new Gathered({ ask: () => Promise.reject(new Error("gone")) });
  await gathered.fetch(file, [["plan", { ask: "plan", car: file }, false]], () => {});
  const reply = gathered.about(file).get("plan");
  assert.equal(reply.kind, "refused");
  assert.match(reply.text, /^The sums did not answer/);
});
