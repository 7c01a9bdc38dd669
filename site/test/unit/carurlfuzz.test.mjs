// Links that were changed by accident or on purpose, without a browser: every letter,
// every byte below the letters, ends cut off, pieces put in. Whatever comes, the page
// gets the car that was sent or a refusal of a known kind, never another car.

import assert from "node:assert/strict";
import test from "node:test";
import { crc32, decode, encode, MOST_CHARACTERS, Newer, NotWhole } from "../../pages/shared/carurl.ts";
import { fromShared, toShare } from "../../pages/shared/linkcontent.ts";

const car = {
  format: "underpaint car 1",
  asked_in: 2026,
  bodies: ["pickup"],
  made: { year: 1951 },
  life: [
    { place: "salt", kept: "driven_all_year" },
    { place: "dry", kept: "dry_or_heated_garage", years: 12 },
  ],
  standard: "driver",
  looks: [{ look: "bubbles", on: "outer_sill.left", result: "yes", by: "customer" }],
};
const shared = toShare(
  car,
  { rows: [{ low_text: "$74,000", high_text: "$140,000" }] },
  { date: "2026-06-03", check_code: "a1b2c d3e4f" },
  "2026-06-04",
);
const text = JSON.stringify(shared);
const LETTERS = "ABZaz09-_.#+/=% \n\u0000\u00e9\u{1f600}";

/** Numbers that look random and are the same in every run: the minimal standard
 *  generator of Park and Miller, Communications of the ACM 31(10), 1988. */
function minimal(seed) {
  let state = seed;
  return (below) => {
    state = (state * 48271) % 2147483647;
    return state % below;
  };
}

const base64url = (bytes) => Buffer.from(bytes).toString("base64url");
const plainly = (bytes, check = crc32(bytes)) => `#p1.${base64url(bytes)}.${check}`;
const bytesOf = (json) => new TextEncoder().encode(json);

/** The links of one car in both kinds, with the bytes below their letters. */
async function kinds() {
  const packed = await encode(shared);
  const [, body, check] = packed.slice(1).split(".");
  return [
    { link: packed, bytes: Buffer.from(body, "base64url"), check, kind: "v1" },
    { link: plainly(bytesOf(text)), bytes: Buffer.from(text), check: crc32(bytesOf(text)), kind: "p1" },
  ];
}

/** The car that was sent, or a refusal: true if it came through. */
async function sameOrRefused(link, what) {
  const result = await decode(link).then(
    (object) => ({ object }),
    (error) => ({ error }),
  );
  if (result.error) {
    assert.ok(
      result.error instanceof NotWhole || result.error instanceof Newer,
      `${what}: ${result.error.stack}`,
    );
    return false;
  }
  assert.equal(JSON.stringify(result.object), text, what);
  return true;
}

test("every letter of a link changed into others", async () => {
  const random = minimal(1);
  let through = 0,
    tried = 0;
  for (const { link, kind } of await kinds()) {
    assert.ok(await sameOrRefused(link, kind), "the link as it was");
    for (let i = 1; i < link.length; i++) {
      const tries = new Set(
        [...LETTERS]
          .filter(() => random(4) === 0)
          .concat(link[i] === "A" ? "B" : "A", String.fromCharCode(link.charCodeAt(i) ^ 32)),
      );
      for (const other of tries) {
        if (other === link[i]) continue;
        tried++;
        through += await sameOrRefused(
          link.slice(0, i) + other + link.slice(i + 1),
          `${kind}, letter ${i} as ${JSON.stringify(other)}`,
        );
      }
    }
  }
  // Spare bits of the last letter of base64url may say the same thing; nothing else may.
  assert.ok(tried > 4000 && through <= 4, `${through} of ${tried} came through`);
});

test("every byte below the letters changed, with the check of the car that was sent", async () => {
  const random = minimal(2);
  for (const { bytes, check, kind } of await kinds()) {
    for (let i = 0; i < bytes.length; i++) {
      for (const other of new Set([0, 255, bytes[i] ^ 1, bytes[i] ^ 128, random(256)])) {
        if (other === bytes[i]) continue;
        const changed = Buffer.from(bytes);
        changed[i] = other;
        await sameOrRefused(`#${kind}.${base64url(changed)}.${check}`, `${kind}, byte ${i} as ${other}`);
      }
    }
  }
});

test("ends cut off, pieces put in, taken out, doubled and swapped", async () => {
  const random = minimal(3);
  for (const { link, kind } of await kinds()) {
    for (let i = 0; i < link.length; i++) {
      await assert.rejects(
        decode(link.slice(0, i)),
        (e) => e instanceof NotWhole || e instanceof Newer,
        `${kind}, cut at ${i}`,
      );
      const letter = [...LETTERS][random(LETTERS.length - 1)];
      const j = i + 1 + random(8);
      for (const changed of [
        link.slice(0, i) + letter + link.slice(i),
        link.slice(0, i) + link.slice(j),
        link.slice(0, j) + link.slice(i),
        link.slice(0, i) + (link[i + 1] ?? "") + link[i] + link.slice(i + 2),
      ]) {
        if (changed !== link) await sameOrRefused(changed, `${kind}, at ${i}: ${changed.slice(i, i + 20)}`);
      }
    }
    for (const tail of ["A", ".", ".00000000", "=", "&x=1", "?", "#"])
      await assert.rejects(decode(link + tail), NotWhole, `${kind} with ${tail} behind it`);
  }
});

test("a forged link with a right check is taken as data and as nothing more", async () => {
  const random = minimal(4);
  const original = bytesOf(text);
  for (let n = 0; n < 4000; n++) {
    const changed = Buffer.from(original);
    for (let k = 0; k <= random(3); k++) changed[random(changed.length)] = random(256);
    const link = plainly(changed);
    let object;
    try {
      object = await decode(link);
    } catch (error) {
      assert.ok(error instanceof NotWhole, String(error.stack));
      continue;
    }
    try {
      const { from } = fromShared(object);
      assert.ok(
        from.told === null || /^.{1,40}$/.test(from.told.low + from.told.high),
        "what is shown of it",
      );
    } catch (error) {
      assert.ok(
        error instanceof Error && !(error instanceof TypeError) && !(error instanceof RangeError),
        String(error.stack),
      );
    }
  }
  for (const hostile of [
    '{"__proto__":{"format":"underpaint shared car 1","car":{}}}',
    '{"constructor":{"prototype":{"polluted":1}}}',
    "null",
    "[]",
    "1",
    '"x"',
    "true",
    "{}",
    '{"format":null}',
    `${"[".repeat(60)}${"]".repeat(60)}`,
  ]) {
    const object = await decode(plainly(bytesOf(hostile)));
    assert.throws(
      () => fromShared(object),
      (e) => !(e instanceof RangeError),
      hostile.slice(0, 40),
    );
    assert.equal({}.polluted, undefined);
    assert.equal({}.format, undefined);
  }
});

test("a link nested deeper than any file of ours is refused, whatever marks its texts have", async () => {
  const nested = (n) =>
    JSON.stringify({ car: { note: '[[{"\\"[', deep: 0 } }).replace(
      '"deep":0',
      `"deep":${"[".repeat(n)}${"]".repeat(n)}`,
    );
  assert.equal((await decode(plainly(bytesOf(nested(60))))).car.note, '[[{"\\"[');
  for (const n of [65, 6000]) await assert.rejects(decode(plainly(bytesOf(nested(n)))), NotWhole, String(n));
});

test("a link that is too long, or unpacks to too much, is refused before it is unpacked", async () => {
  await assert.rejects(decode(`#p1.${"A".repeat(MOST_CHARACTERS)}.00000000`), NotWhole);
  // As many zero bytes as fit a link once packed: 1,000 times what is read of them.
  const packed = Buffer.from(
    await new Response(
      new Blob([new Uint8Array(12_000_000)]).stream().pipeThrough(new CompressionStream("deflate-raw")),
    ).arrayBuffer(),
  );
  const link = `#v1.${base64url(packed)}.00000000`;
  assert.ok(link.length <= MOST_CHARACTERS, "the test needs a link that is short enough");
  await assert.rejects(decode(link), /too large/);
});
