// The link and what goes into it, without a browser.

import assert from "node:assert/strict";
import test from "node:test";
import { markOf, placesFor, shownByQuestions, withBodies, withMark } from "../../pages/shared/car.ts";
import { carriesCar, crc32, decode, encode, Newer, NotWhole } from "../../pages/shared/carurl.ts";
import { nextStep, stepOfPath } from "../../pages/shared/flow.ts";
import { fromShared, today, toShare } from "../../pages/shared/linkcontent.ts";

const car = {
  format: "underpaint car 1",
  asked_in: 2026,
  bodies: ["pickup"],
  made: { year: 1951 },
  life: [{ place: "salt", kept: "driven_all_year" }],
  standard: "driver",
};

test("the check value of CRC-32 is the published one", () => {
  // "123456789" gives cbf43926: the check value listed for CRC-32/ISO-HDLC (the
  // CRC of RFC 1952) in the catalogue of parametrised CRC algorithms, and the
  // one zlib's crc32 gives.
  assert.equal(crc32(new TextEncoder().encode("123456789")), "cbf43926");
  assert.equal(crc32(new Uint8Array()), "00000000");
});

test("what goes into a link comes out the same", async () => {
  const fragment = await encode(car);
  assert.match(fragment, /^#v1\.[A-Za-z0-9_-]+\.[0-9a-f]{8}$/);
  assert.ok(carriesCar(fragment));
  assert.deepEqual(await decode(fragment), car);
});

test("any letter changed, or any end cut off, is found", async () => {
  const fragment = await encode(car);
  const body = fragment.indexOf(".") + 1;
  for (let i = body; i < fragment.length; i++) {
    const other = fragment[i] === "a" ? "b" : "a";
    const changed = fragment.slice(0, i) + other + fragment.slice(i + 1);
    const result = await decode(changed).then(
      (c) => c,
      (e) => e,
    );
    // The last letter of base64url may carry spare bits that say nothing.
    const inCheck = i > fragment.lastIndexOf(".");
    if (!(result instanceof NotWhole)) {
      assert.ok(!inCheck, `letter ${i} of the check`);
      assert.deepEqual(result, car, `letter ${i}`);
    }
    await assert.rejects(decode(fragment.slice(0, i)), NotWhole, `cut at ${i}`);
  }
});

test("a link that unpacks to far too much is stopped", async () => {
  const huge = await new Response(
    new Blob(["0".repeat(5_000_000)]).stream().pipeThrough(new CompressionStream("deflate-raw")),
  ).arrayBuffer();
  const text = Buffer.from(huge).toString("base64url");
  assert.ok(text.length < 16000, "the test needs a small link");
  await assert.rejects(decode(`#v1.${text}.00000000`), NotWhole);
});

test("other kinds of link are told apart", async () => {
  await assert.rejects(decode("#v2.abc.00000000"), Newer);
  assert.equal(carriesCar("#basis-title"), false);
});

test("the frame around a shared car takes nothing on trust", () => {
  const rates = { date: "2026-06-03", check_code: "a1b2c d3e4f" };
  const reply = { rows: [{ low_text: "$74,000", high_text: "$140,000" }] };
  const { from } = fromShared(toShare(car, reply, rates, "2026-06-04"));
  assert.deepEqual(from.told, { low: "$74,000", high: "$140,000" });
  const forged = fromShared({
    ...toShare(car, reply, rates, "2026-06-04"),
    told: { low: "free, says the shop", high: "$1" },
    entered: "yesterday",
  });
  assert.equal(forged.from.told, null);
  assert.equal(forged.from.entered, null);
  assert.equal(
    fromShared({ ...toShare(car, reply, rates, "2026-06-04"), entered: "2026-99-99" }).from.entered,
    null,
    "a day that there is not",
  );
  assert.throws(() => fromShared({ format: "something else" }));
  assert.throws(() => fromShared(null));
});

test("the day is the visitor's own", () => {
  assert.equal(today(new Date(2026, 0, 9, 23, 59)), "2026-01-09");
});

const place = {
  id: "rockers",
  name: "Rockers",
  left: ["outer_sill.left"],
  right: ["outer_sill.right"],
  look: "bubbles",
};

test("left says nothing about the right, clean says it of both", () => {
  const left = withMark(car, place, "left");
  assert.deepEqual(left.looks, [{ look: "bubbles", on: "outer_sill.left", result: "yes", by: "customer" }]);
  assert.equal(markOf(left, place), "left");
  const clean = withMark(left, place, "clean");
  assert.deepEqual(
    clean.looks.map((l) => [l.on, l.result]),
    [
      ["outer_sill.left", "no"],
      ["outer_sill.right", "no"],
    ],
  );
  assert.equal(withMark(clean, place, null).looks, undefined);
});

test("a look that no answer to a question shows is listed by itself", () => {
  const opened = { bodies: [{ id: "two_door_unitary", customer_places: [place] }] };
  const of = { ...car, bodies: ["two_door_unitary"] };
  const listed = (looks) =>
    looks.filter((l) => !shownByQuestions(opened, { ...of, looks })(l)).map((l) => `${l.look} ${l.on}`);
  const look = (kind, on, result) => ({ look: kind, on, result, by: "customer" });
  assert.deepEqual(
    listed([look("bubbles", "outer_sill.left", "yes"), look("open_hole", "outer_sill.left", "yes")]),
    [],
    "a mark and its hole",
  );
  assert.deepEqual(listed(withMark(of, place, "clean").looks), [], "clean on both sides");
  assert.deepEqual(
    listed([look("open_hole", "outer_sill.left", "yes")]),
    ["open_hole outer_sill.left"],
    "a hole without a mark",
  );
  assert.deepEqual(
    listed([look("bubbles", "outer_sill.right", "no")]),
    ["bubbles outer_sill.right"],
    "one side of a place",
  );
  assert.equal(
    markOf({ ...of, looks: [look("bubbles", "outer_sill.right", "no")] }, place),
    null,
    "is not a clean place",
  );
  assert.deepEqual(listed([look("bubbles", "outer_sill.left", "could_not")]), ["bubbles outer_sill.left"]);
  assert.deepEqual(listed([look("thumb", "quarter.left", "yes")]), ["thumb quarter.left"]);
});

test("another body drops the looks at the old one", () => {
  const marked = withMark(car, place, "both");
  assert.equal(withBodies(marked, ["pickup"]), marked);
  assert.equal(withBodies(marked, ["four_door_saloon"]).looks, undefined);
});

test("with two bodies only parts that both have are asked about", () => {
  const opened = {
    bodies: [
      { id: "a", customer_places: [place, { id: "floor", name: "Floor", whole: ["x"], look: "carpet" }] },
      { id: "b", customer_places: [{ ...place, right: [] }] },
    ],
  };
  const found = placesFor(opened, { bodies: ["a", "b"] });
  assert.deepEqual(
    found.map((p) => [p.id, p.left, p.right]),
    [["rockers", ["outer_sill.left"], []]],
  );
});

test("the order of the questions", () => {
  const walk = (step, answers) => {
    const steps = [step];
    for (const answer of answers) steps.push(nextStep(steps.at(-1), answer));
    return steps;
  };
  assert.deepEqual(walk("body", ["two_door", "shell", "year", "mild", "kept", "show", null]), [
    "body",
    "frame",
    "year",
    "place",
    "kept",
    "standard",
    "range",
    "covered",
  ]);
  assert.deepEqual(walk("elsewhere", ["yes", "pick", "us_ohio", "kept", "years", "no"]), [
    "elsewhere",
    "else_place",
    "else_list",
    "else_kept",
    "else_years",
    "elsewhere",
    "earlier",
  ]);
  assert.equal(nextStep("seen", "done", { marked: true }), "holes");
  assert.equal(nextStep("kept", "driven_all_year", { complete: true }, true), "range");
  assert.equal(nextStep("body", "two_door", { complete: true }, true), "frame");
});

test("a refused path leads to its question", () => {
  const pairs = {
    "made.year": "year",
    "life[0].place": "place",
    "life[1].years": "elsewhere",
    "looks[3]": "seen",
    bodies: "body",
    nothing: null,
  };
  for (const [path, step] of Object.entries(pairs)) assert.equal(stepOfPath(path), step, path);
});
