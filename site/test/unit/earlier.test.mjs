// Earlier work, cover and holes: what is typed and pressed, and what it writes into
// the car, without a browser. Members and ids are those of "underpaint car 1".

import assert from "node:assert/strict";
import test from "node:test";
import {
  holeHalves,
  photosOf,
  shownByQuestions,
  withEarlierWork,
  withLook,
  withWorkYear,
} from "../../pages/shared/car.ts";
import { nextStep, stepOfPath } from "../../pages/shared/flow.ts";
import { questions } from "../../pages/shared/questions.ts";
import { workYear, yearsOfWork } from "../../pages/shared/workyear.ts";

const car = Object.freeze({
  format: "underpaint car 1",
  asked_in: 2026,
  bodies: ["two_door_unitary"],
  made: { year: 1967 },
  life: [{ place: "mild", kept: "garage" }],
  standard: "show",
});
const span = yearsOfWork(car);

test("a year as people write it", () => {
  const typed = {
    1998: 1998,
    "about 1998": 1998,
    "c. 1998": 1998,
    "June 1998": 1998,
    "06/1998": 1998,
    "'98": 1998,
    "’98": 1998,
    98: 1998,
    "about 98": 1998,
    "12/98": 1998,
    "'05": 2005,
    26: 2026,
    67: 1967,
    "20 years ago": 2006,
    "about 20 years ago": 2006,
    "1 year ago": 2025,
    " 1967 ": 1967,
    2026: 2026,
    "not sure": null,
    "Not sure.": null,
    "don't know": null,
    "I don’t know": null,
    "?": null,
  };
  for (const [text, year] of Object.entries(typed)) assert.equal(workYear(text, span), year, text);
});

test("what is no year, or none of this car, is refused with what to write", () => {
  for (const text of ["", "1990s", "the 90s", "1998 or 1999", "long ago", "199", "19980"])
    assert.throws(() => workYear(text, span), /^Error: Write one year, such as 2001, or “not sure”\.$/, text);
  assert.throws(
    () => workYear("1966", span),
    /Write 1967 or later, because the car was not made before that\./,
  );
  assert.throws(() => workYear("2027", span), /Write 2026 or earlier\. 2027 is still to come\./);
  assert.throws(
    () => workYear("1959", yearsOfWork({ ...car, made: { decade: 1960 } })),
    /Write 1960 or later, because/,
  );
  assert.throws(
    () => workYear("1919", yearsOfWork({ ...car, made: { not_sure: true } })),
    /Write 1920 or later\./,
  );
});

test("the year goes with the work that it belongs to", () => {
  const dated = withWorkYear(withEarlierWork(car, "patched_here_and_there"), 1998);
  assert.equal(dated.earlier_work_year, 1998);
  assert.equal(withEarlierWork(dated, "stripped_and_restored").earlier_work_year, 1998);
  for (const id of ["not_known_of", "not_sure"])
    assert.equal("earlier_work_year" in withEarlierWork(dated, id), false, id);
  assert.equal("earlier_work_year" in withWorkYear(dated, null), false);
  assert.equal(car.earlier_work, undefined, "the old car is as it was");
});

test("cover comes first after the range; work with a year is asked on, other work is not", () => {
  assert.equal(nextStep("range", ""), "covered");
  assert.equal(nextStep("covered", "yes"), "road");
  for (const id of ["patched_here_and_there", "stripped_and_restored"])
    assert.equal(nextStep("earlier", id, { complete: true }, true), "earlier_year", id);
  for (const id of ["not_known_of", "not_sure"]) assert.equal(nextStep("earlier", id), "hit", id);
  assert.equal(nextStep("earlier_year", "year", { complete: true }, true), "earlier_proof");
  assert.equal(nextStep("seen", "done"), "all_there");
  assert.equal(nextStep("all_there", "in_pieces"), "scope");
  assert.equal(nextStep("earlier_proof", "yes"), "earlier_parts");
  assert.equal(nextStep("earlier_proof", "no"), "hit");
  assert.equal(nextStep("hit", "hard"), "hit_where");
  assert.equal(nextStep("hit", "not_that_i_know"), "seen");
  assert.equal(
    nextStep("earlier_parts", "parts", { complete: true }, true),
    "range",
    "back to the range after a change",
  );
  const steps = {
    covered: "covered",
    earlier_work_year: "earlier_year",
    earlier_work: "earlier",
    all_there: "all_there",
    "life[0].kept": "kept",
    "life[2].kept": "elsewhere",
  };
  for (const [path, step] of Object.entries(steps)) assert.equal(stepOfPath(path), step);
});

test("five ways of keeping a car in both places, and cover in the words of each country", () => {
  for (const words of ["us", "uk"]) {
    const q = questions(words);
    const ids = [
      "driven_all_year",
      "driven_in_summer",
      "garage",
      "dry_or_heated_garage",
      "open_shed_or_outside",
      "not_sure",
    ];
    for (const step of ["kept", "else_kept"])
      assert.deepEqual(
        q[step].answers.map((a) => a.id),
        ids,
        step,
      );
    assert.deepEqual(
      q.covered.answers.map((a) => a.id),
      ["yes", "no", "not_sure"],
    );
    assert.equal(q.covered.apply(car, "no").covered, "no");
    assert.deepEqual(
      q.all_there.answers.map((a) => a.id),
      ["all_there", "some_parts_off", "in_pieces", "not_sure"],
    );
    assert.equal(q.all_there.apply(car, "in_pieces").all_there, "in_pieces");
    assert.match(
      q.covered.title + q.covered.hint,
      words === "uk" ? /underseal.*underseal/ : /undercoat.*undercoat/,
    );
  }
});

const places = [
  {
    id: "rockers",
    name: "Rockers",
    look: "bubbles",
    left: ["outer_sill.left"],
    right: ["outer_sill.right"],
    whole: [],
  },
  { id: "glass", name: "Glass", look: "open_hole", left: [], right: [], whole: ["rear_window.whole"] },
  {
    id: "floors",
    name: "Floor",
    look: "carpet",
    left: ["front_floor.left", "rear_floor.left"],
    right: [],
    whole: [],
  },
];
const opened = { bodies: [{ id: "two_door_unitary", customer_places: places }] };

test("a hole can be said of a rusty place and of any other; a place that is a hole itself has no second question", () => {
  const rusty = withLook(car, "bubbles", ["outer_sill.left"], "yes");
  const said = withLook(rusty, "open_hole", ["front_floor.left", "rear_floor.left"], "yes");
  assert.deepEqual(
    holeHalves(said, places).map((h) => [h.name, h.side, h.marked, h.hole]),
    [
      ["Rockers", "left", true, null],
      ["Rockers", "right", false, null],
      ["Floor", "left", false, "yes"],
    ],
  );
  const half = withLook(rusty, "open_hole", ["front_floor.left"], "yes");
  assert.equal(
    holeHalves(half, places)[2].hole,
    null,
    "a hole in one part of a place was found in another way",
  );
  const both = withLook(
    withLook(rusty, "bubbles", ["outer_sill.right"], "yes"),
    "open_hole",
    ["outer_sill.right"],
    "no",
  );
  assert.deepEqual(
    holeHalves(both, places)
      .slice(0, 2)
      .map((h) => [h.marked, h.hole]),
    [
      [true, null],
      [true, "no"],
    ],
  );
});

test("what the questions show can be taken back there; everything else is for the list of checks", () => {
  const restored = withEarlierWork(car, "stripped_and_restored");
  const photos = { look: "photos", on: "outer_sill.left", result: "yes", by: "customer" };
  const hole = (on, result) => ({ look: "open_hole", on, result, by: "customer" });
  const shown = (c, l) => shownByQuestions(opened, { ...c, looks: [l] })(l);
  assert.equal(shown(restored, photos), true);
  assert.equal(
    shown({ ...car, earlier_work: "not_sure" }, photos),
    false,
    "nobody asks for photographs of work that is not known of",
  );
  assert.equal(shown(restored, { ...photos, result: "no" }), false);
  const rusty = (result) =>
    shownByQuestions(opened, {
      ...car,
      looks: [{ ...hole("outer_sill.right", "yes"), look: "bubbles" }, hole("outer_sill.right", result)],
    })(hole("outer_sill.right", result));
  assert.deepEqual(["yes", "no", "could_not"].map(rusty), [true, true, false], "where a mark is");
  assert.equal(shown(car, hole("outer_sill.right", "yes")), false, "where none is");
  assert.equal(shown(car, hole("roof_skin.whole", "yes")), false);
  assert.deepEqual(
    photosOf({
      looks: [
        photos,
        { ...photos, result: "no", on: "a" },
        { ...photos, by: "shop", on: "b" },
        { ...photos, look: "tap", on: "c" },
      ],
    }),
    ["outer_sill.left"],
  );
});
