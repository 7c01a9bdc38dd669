// What "This car" writes into the car file and in which order it walks, without
// a browser. The members are those of the format line "underpaint car 1".

import assert from "node:assert/strict";
import test from "node:test";
import { withBody, withLook, withWay } from "../../pages/shared/thiscar/carmembers.ts";
import {
  begin,
  contradiction,
  recordAt,
  stageOf,
  standing,
  withCondition,
  withCouldNotSee,
  withFinding,
  withOpened,
  withPanelFit,
  withRecord,
  withRest,
  withSure,
  withText,
} from "../../pages/shared/thiscar/record.ts";
import { dateText, moment, momentText } from "../../pages/shared/timestamp.ts";
import { actOf } from "../../pages/survey/keys.ts";
import { beside, groupsOf, sequence, step, zoneRows } from "../../pages/survey/order.ts";

const car = Object.freeze({ format: "underpaint car 1" });
const closed = { closed: true, box: "sill.left" };

test("a corrected condition keeps what stood there, oldest first, and the old car is untouched", () => {
  const one = withCondition(car, "a", "survey", "sound", "2026-06-20T14:00");
  const two = withCondition(one, "a", "survey", "gone", "2026-06-20T14:01");
  const three = withCouldNotSee(two, "a", "survey", "2026-06-20T14:02");
  assert.deepEqual(three.survey, [
    {
      on: "a",
      stage: "survey",
      could_not_see: true,
      at: "2026-06-20T14:02",
      was: [
        { condition: "sound", at: "2026-06-20T14:00" },
        { condition: "gone", at: "2026-06-20T14:01" },
      ],
    },
  ]);
  assert.deepEqual(one.survey, [{ on: "a", stage: "survey", condition: "sound", at: "2026-06-20T14:00" }]);
  assert.equal(
    withCondition(two, "a", "survey", "gone", "later"),
    two,
    "the same word again changes nothing",
  );
  assert.equal(car.survey, undefined);
});

test("a record that says nothing any more is no record", () => {
  const noted = withText(car, "a", "survey", "note", "soft", "t");
  assert.equal(noted.survey.length, 1);
  assert.equal(withText(noted, "a", "survey", "note", "", "t").survey, undefined);
  assert.equal(withRecord(car, "a", "survey", (r) => r).survey, undefined);
});

test("findings lie in the member that each belongs to", () => {
  const add = (c, f) => withFinding(c, "a", "survey", f, 2, "t");
  let now = add(car, { id: "patch_over_rust" });
  now = add(now, { id: "filler_over_dent" });
  now = add(now, { id: "brazed", priced_only: true });
  now = add(now, { id: "cracked_lead", count: true });
  assert.deepEqual(now.survey, [
    {
      on: "a",
      stage: "survey",
      finding: "patch_over_rust",
      at: "t",
      dent: true,
      also: ["brazed"],
      lead_failed: 1,
    },
  ]);
  now = add(now, { id: "replaced" });
  assert.equal(now.survey[0].finding, "replaced", "one of the four at a time");
  for (const f of [
    { id: "replaced" },
    { id: "filler_over_dent" },
    { id: "brazed", priced_only: true },
    { id: "cracked_lead", count: true },
    { id: "cracked_lead", count: true },
  ])
    now = add(now, f);
  assert.equal(now.survey, undefined);
});

test("a closed part is recorded from outside until its box is opened, then from inside; both stay", () => {
  assert.equal(stageOf(car, closed), "survey");
  const outside = withCondition(car, "a", "survey", "sound", "t");
  const open = withOpened(outside, "sill.left", true, "t");
  assert.equal(stageOf(open, closed), "opening_up");
  const inside = withCondition(open, "a", "opening_up", "gone", "u");
  assert.equal(standing(inside, "a").condition, "gone");
  assert.equal(recordAt(inside, "a", "survey").condition, "sound");
  assert.equal(withOpened(open, "sill.left", false).opened, undefined);
});

test("stages keep their order and their days, also when one is begun late", () => {
  assert.deepEqual(
    begin(car, "opening_up", "2026-06-20").stages,
    [{ stage: "opening_up", on: "2026-06-20" }],
    "no survey is dated that nobody made",
  );
  const opened = begin(begin(car, "survey", "2026-06-20", "ab"), "opening_up", "2026-06-20", "ab");
  assert.deepEqual(
    opened.stages.map((s) => s.stage),
    ["survey", "opening_up"],
  );
  const late = begin(opened, "walk_round", "2026-07-01", "cd");
  assert.deepEqual(
    late.stages.map((s) => [s.stage, s.on]),
    [
      ["walk_round", "2026-06-20"],
      ["survey", "2026-06-20"],
      ["opening_up", "2026-06-20"],
    ],
  );
  assert.deepEqual(begin(late, "survey", "2026-08-01", "ef").stages, late.stages);
});

test("looked at again: only beside a condition, and gone with the next word", () => {
  const one = withCondition(car, "a", "survey", "sound", "t");
  const sure = withSure(one, "a");
  assert.deepEqual(sure.survey, [{ on: "a", stage: "survey", condition: "sound", at: "t", sure: true }]);
  assert.equal(withSure(sure, "a"), sure, "a second time changes nothing");
  assert.equal(withSure(car, "a"), car, "nothing is recorded");
  const unseen = withCouldNotSee(car, "a", "survey", "t");
  assert.equal(withSure(unseen, "a"), unseen, "nothing was seen");
  assert.equal(withCondition(sure, "a", "survey", "gone", "u").survey[0].sure, undefined);
  assert.equal(withCouldNotSee(sure, "a", "survey", "u").survey[0].sure, undefined);
  const inside = withCondition(withOpened(sure, "sill.left", true, "t"), "a", "opening_up", "gone", "u");
  assert.deepEqual(
    withSure(inside, "a").survey.map((r) => [r.stage, r.sure]),
    [
      ["survey", true],
      ["opening_up", true],
    ],
    "the record that stands",
  );
});

const MISSING = { id: "missing", priced_only: true };

test("missing takes the place of a condition and of what was found, and gives way to one", () => {
  const brazed = withFinding(car, "a", "survey", { id: "brazed", priced_only: true }, 0, "t0");
  const gone = withCondition(
    withRecord(brazed, "a", "survey", (r) => ({ ...r, dent: true })),
    "a",
    "survey",
    "gone",
    "t1",
  );
  const missing = withFinding(gone, "a", "survey", MISSING, 0, "t2");
  assert.deepEqual(missing.survey, [
    { on: "a", stage: "survey", at: "t2", was: [{ condition: "gone", at: "t1" }], also: ["missing"] },
  ]);
  const [sound] = withCondition(missing, "a", "survey", "sound", "t3").survey;
  assert.deepEqual([sound.condition, sound.also], ["sound", undefined]);
  assert.deepEqual(
    withFinding(withFinding(car, "a", "survey", MISSING, 0, "t"), "a", "survey", MISSING, 0, "t").survey,
    undefined,
  );
});

test("nothing is found on a part that is missing, in words", () => {
  const [missing] = withFinding(car, "a", "survey", MISSING, 0, "t").survey;
  assert.match(contradiction(missing, "brazed"), /nothing can be found on it/);
  const [sound] = withCondition(car, "a", "survey", "sound", "t").survey;
  for (const [record, next] of [
    [missing, "missing"],
    [sound, "brazed"],
    [sound, "missing"],
    [null, "missing"],
  ])
    assert.equal(contradiction(record, next), "", next);
});

test("how a new panel fits stands beside the condition, and is taken out again", () => {
  const one = withPanelFit(withCondition(car, "a", "survey", "gone", "t1"), "a", "survey", "wrong", "t2");
  assert.deepEqual(one.survey, [
    { on: "a", stage: "survey", condition: "gone", at: "t1", panel_fit: "wrong" },
  ]);
  assert.equal(withPanelFit(one, "a", "survey", "", "t3").survey[0].panel_fit, undefined);
  assert.equal(
    withPanelFit(withPanelFit(car, "a", "survey", "fits", "t"), "a", "survey", "", "t").survey,
    undefined,
  );
});

test("the rest leaves alone what is recorded", () => {
  const one = withCondition(car, "b", "survey", "gone", "t");
  const all = withRest(one, ["a", "b", "c"], "sound", "t");
  assert.deepEqual(
    all.survey.map((r) => [r.on, r.condition]),
    [
      ["b", "gone"],
      ["a", "sound"],
      ["c", "sound"],
    ],
  );
});

test("the customer's look and the shop's lie side by side; a way is taken back whole", () => {
  const both = withLook(withLook(car, "bubbles", "a", "customer", "yes"), "bubbles", "a", "shop", "no");
  assert.deepEqual(withLook(both, "bubbles", "a", "shop", null).looks, [
    { look: "bubbles", on: "a", result: "yes", by: "customer" },
  ]);
  assert.equal(withWay(withWay(car, "a", "patch", "shop"), "a", null).ways, undefined);
});

test("another body drops everything that was recorded on the old one", () => {
  const full = {
    ...car,
    bodies: ["pickup"],
    standard: "show",
    options: ["outside_fenders"],
    looks: [1],
    stages: [1],
    survey: [1],
    opened: [1],
    whole_car: [1],
    strip_hours: {},
    ways: [1],
    answers_checked: "2026-01-01",
  };
  assert.deepEqual(withBody(full, "four_door_saloon"), {
    ...car,
    standard: "show",
    bodies: ["four_door_saloon"],
  });
  assert.equal(withBody(full, "pickup"), full);
});

const zone = {
  id: "z",
  name: "Z",
  rows: [
    { part: "skin", name: "Skin", lines: [{ label: "", left: "skin.l", right: "skin.r", whole: "" }] },
    { part: "tray", name: "Tray", lines: [{ label: "", left: "", right: "", whole: "tray" }] },
    {
      part: "foot",
      name: "Foot",
      lines: [
        { label: "front", left: "ff.l", right: "ff.r", whole: "" },
        { label: "rear", left: "fr.l", right: "fr.r", whole: "" },
      ],
    },
  ],
};
const next = {
  id: "y",
  name: "Y",
  rows: [{ part: "lid", name: "Lid", lines: [{ label: "", left: "", right: "", whole: "lid" }] }],
};

test("across and down one side reach every part once", () => {
  const rows = zoneRows(zone);
  assert.deepEqual(sequence(rows, false), ["skin.l", "skin.r", "tray", "ff.l", "ff.r", "fr.l", "fr.r"]);
  assert.deepEqual(sequence(rows, true), ["skin.l", "tray", "ff.l", "fr.l", "skin.r", "ff.r", "fr.r"]);
  const groups = groupsOf({ zones: [zone, next] }, false);
  assert.equal(step(groups, "fr.r", 1, false), "lid");
  assert.equal(step(groups, "lid", 1, false), null);
  assert.equal(step(groups, "fr.l", 1, true), "skin.r");
});

test("arrows move by row and column and stop at the edges", () => {
  const rows = zoneRows(zone);
  const moves = [
    ["skin.r", 1, 0, "tray"],
    ["tray", 1, 0, "ff.l"],
    ["ff.r", 1, 0, "fr.r"],
    ["fr.r", 1, 0, "fr.r"],
    ["skin.l", 0, 1, "skin.r"],
    ["skin.l", 0, -1, "skin.l"],
    ["tray", 0, 1, "tray"],
  ];
  for (const [from, row, column, to] of moves)
    assert.equal(beside(rows, from, row, column), to, `${from} ${row} ${column}`);
});

test("letters by character; with Ctrl, Alt or turned off they are not ours", () => {
  const setup = {
    conditions: [{ id: "sound", key: "s" }],
    findings: [{ id: "patch", key: "p" }],
    letters: true,
    finding: false,
  };
  const key = (k, more = {}) => ({
    key: k,
    ctrlKey: false,
    metaKey: false,
    altKey: false,
    shiftKey: false,
    ...more,
  });
  assert.equal(actOf(key("S", { shiftKey: true }), setup)[0], "condition");
  assert.equal(actOf(key("s", { ctrlKey: true }), setup), null);
  assert.equal(actOf(key("s"), { ...setup, letters: false }), null);
  assert.deepEqual(actOf(key("ArrowUp"), { ...setup, letters: false }), ["beside", -1, 0]);
  assert.deepEqual(actOf(key("z", { metaKey: true }), setup), ["undo"]);
  assert.equal(actOf(key("p"), { ...setup, finding: true })[0], "found");
  assert.equal(actOf(key("s"), { ...setup, finding: true })[0], "not_found");
  assert.equal(actOf(key("Tab"), setup), null);
});

test("moments are the shop's own clock", () => {
  assert.equal(moment(new Date(2026, 5, 20, 14, 5)), "2026-06-20T14:05");
  assert.equal(momentText("2026-06-20T14:05", "2026-06-20T18:00"), "14:05");
  assert.equal(momentText("2026-06-20T14:05", "2026-07-01T09:00"), "June 20, 2026, 14:05");
});

test("a day is written as the shop's words write it", () => {
  const before = globalThis.document;
  try {
    for (const [lang, want] of [
      ["en-US", "June 3, 2026"],
      ["en-GB", "3 June 2026"],
      ["en", "June 3, 2026"],
    ]) {
      globalThis.document = { documentElement: { lang } };
      assert.equal(dateText("2026-06-03"), want);
    }
  } finally {
    globalThis.document = before;
  }
});
