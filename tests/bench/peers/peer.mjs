// The peer in JavaScript: draws and prices simulated cars from a flat file, and
// nothing else. Start at the end, then read car(): one simulated car from its two
// streams of uniforms. Tables are typed arrays, nothing is allocated per car, and
// the generator is in exact sums of doubles, which V8 keeps in registers.
//
// Sources of what is computed: the generator and its output function, M. O'Neill, PCG
// (2014), as 128-bit PCG-DXSM; normal quantiles, M. J. Wichura, Algorithm AS 241
// (1988), PPND16; three-point figures, C. C. Hadlock and J. E. Bickel, Decision
// Analysis 14(1) (2017); the exponential, P. T. P. Tang, ACM TOMS 15(2) (1989). The
// rest is the order of work of the engine's packages damage and work.

import { readFileSync } from "node:fs";
import { createInterface } from "node:readline";

const CONDITIONS = 6, WAYS = 6, TRADES = 5, CLASSES = 3, FINDINGS = 4;
const LEAVE = 0, FULL = 4, METAL = 0;
const PATCHED = 1, FILLED = 2, REPLACED = 3;
// A car in one of the first three repair states has all its items in the stratum of that
// number; of one restored thoroughly an item is not reached (3) or renewed.
const LOOKS = 2, THOROUGH = 3, REPAIRS = 4, RENEWED = 4, STRATA = 5;
const PAINTED_AGAIN = 1, AS_RENEWED = 2, READINGS = 3; // of the depth

// ---- the flat file ----

function readFlat(path) {
  const lines = readFileSync(path, "latin1").split("\n");
  if (lines[0] !== "underpaint flat 1") throw new Error(`${path}: not a flat file`);
  const lists = new Map();
  for (let at = 1; at < lines.length - 1;) {
    const [name, n] = lines[at++].split(" ");
    lists.set(name, Float64Array.from(lines.slice(at, at + Number(n)), Number));
    at += Number(n);
  }
  return (name) => {
    if (!lists.has(name)) throw new Error(`no list ${name}`);
    return lists.get(name);
  };
}

const reals = readFlat(process.argv[2]);
const wholes = (name) => Int32Array.from(reals(name));
const sums = (counts) => {
  const out = new Int32Array(counts.length + 1);
  counts.forEach((n, i) => { out[i + 1] = out[i] + n; });
  return out;
};
// A list of lists: those of row i run from first[i] to first[i + 1].
const firsts = (name) => sums(reals(`${name}_count`));

const stateUpTo = reals("state_up_to"), groupChance = reals("group_chance"), groupPockets = wholes("group_pockets");
const pocketChance = reals("pocket_chance"), carTerm = reals("car_term"), groupTerm = reals("group_term"), sideTerm = reals("side_term");
const mu = reals("mu"), threshold = reals("threshold"), leadChance = reals("lead_chance");
const itemDrawn = wholes("item_drawn"), pocketItems = wholes("pocket_items"), classOf = wholes("item_class"), isHidden = wholes("item_hidden");
const own = reals("item_own"), joints = wholes("item_lead_joints"), knock = reals("item_knock"), repaired = reals("item_repaired");
const kinds = reals("item_kinds"), dentChance = reals("item_dent"), conditionThen = reals("condition_then");
const spared = reals("item_spared"), sparedThen = reals("item_spared_then"), hurtThen = reals("item_hurt_then"), found = reals("item_found_replaced");
const items = itemDrawn.length, groups = groupPockets.length;
const carLevels = carTerm.length / CLASSES, groupLevels = groupTerm.length / CLASSES, pocketLevels = sideTerm.length / CLASSES;
const kept = reals("item_kept"), hurt = reals("item_hurt");
// The chance that an item of a thoroughly restored car was not reached.
const missed = Float64Array.from({ length: items }, (_, i) => kept[i * STRATA + THOROUGH] / (kept[i * STRATA + THOROUGH] + kept[i * STRATA + RENEWED]));
// The uniform from which on an item has a cause of its own: [level][as the car is, since the work][item].
const hurtFrom = Float64Array.from([...reals("cause_times")].flatMap((times) => Array.from(hurt, (chance) => 1 - chance * times)));

const wayChance = reals("way_chance"), instead = wholes("way_instead"), firstLine = sums(reals("way_lines")), lineTrade = wholes("way_line_trade");
const lineHours = reals("way_line_hours"), price = reals("way_price"), likelyMetal = reals("way_likely_metal");
const once = wholes("item_once"), leftOut = wholes("item_left_out"), findingHours = reals("finding_hours");
const ifFirst = firsts("opening_if"), ifItem = wholes("opening_if"), ifLeast = wholes("opening_at_least");
const unlessFirst = firsts("opening_unless"), unlessItem = wholes("opening_unless"), unlessLeast = wholes("opening_unless_at_least");
const raiseFirst = firsts("opening_raise"), raiseItem = wholes("opening_raise"), raiseTo = wholes("opening_raise_to");
const coversFirst = firsts("covers"), coversItem = wholes("covers"), panels = wholes("panels"), panelTimes = reals("panel_times")[0], panelMoney = reals("panel_money");
const seam = wholes("seams"), above = wholes("above"), aboveHours = reals("above_hours");
const accessFirst = firsts("access_items"), accessItem = wholes("access_items"), accessUnlessFirst = firsts("access_unless"), accessUnless = wholes("access_unless");
const accessCoversFirst = firsts("access_covers"), accessCovers = wholes("access_covers"), accessRule = wholes("access_rule");
const accessHours = reals("access_hours"), accessPrice = reals("access_price"), accesses = accessFirst.length - 1;
const nutTrade = wholes("nut_trade"), nutHours = reals("nut_hours"), nutChance = reals("nut_chance"), liftedInStrip = wholes("lifted_in_strip")[0];
const stripRule = wholes("strip_rule"), stripHours = reals("strip_hours"), strips = stripRule.length / 4, afterTrade = wholes("after_trade"), afterHours = reals("after_hours");
const rate = reals("rate"), sent = reals("sent_price"), sentIn = wholes("sent_in_strip"), handling = reals("handling");
const supplies = reals("supplies"), tax = reals("tax"), fixed = reals("fixed"), faces = reals("faces")[0], itemFaces = reals("item_faces"), primers = reals("primers"), newParts = reals("new_parts"), wire = reals("wire_week_wait");
const [sdMetal, sdOther, rho, rhoRest, seamShare, q90] = reals("whole_car");

// ---- uniforms ----

// high is the upper 32 bits of the product of two 32-bit words, from their halves.
function high(al, ah, bl, bh) {
  const m = (Math.imul(ah, bl) + (Math.imul(al, bl) >>> 16)) | 0;
  const n = (Math.imul(al, bh) + (m & 0xffff)) | 0;
  return (Math.imul(ah, bh) + (m >>> 16) + (n >>> 16)) | 0;
}

// The state of the generator is six limbs of 24 bits (the last of 8) held as doubles:
// products of limbs and the sums of six of them are exact, and a carry is a floor.
const limb = new Float64Array(6);

// start sets the state to seed × 2^64 + number × 0x9e3779b97f4a7c15, the seed in two
// halves.
function start(seedLow, seedHigh, number) {
  const low = Math.imul(number, 0x7f4a7c15);
  const next = (high(number & 0xffff, number >>> 16, 0x7c15, 0x7f4a) + Math.imul(number, 0x9e3779b9)) | 0;
  limb[0] = low & 0xffffff;
  limb[1] = (low >>> 24) | ((next & 0xffff) << 8);
  limb[2] = (next >>> 16) | ((seedLow & 0xff) << 16);
  limb[3] = seedLow >>> 8;
  limb[4] = seedHigh & 0xffffff;
  limb[5] = seedHigh >>> 24;
}

const UP = 2 ** 24, DOWN = 2 ** -24;

// fill writes n uniforms. The limbs of the multiplier 0x2360ed05 1fc65da4 4385df64
// 9fccf645 and of the increment 0x5851f42d 4c957f2d 14057b7e f767814f are written out
// in decimals, the words of the output's multiplier 0xda942042 e4dd58b5 in halves.
function fill(out, n) {
  let s0 = limb[0], s1 = limb[1], s2 = limb[2], s3 = limb[3], s4 = limb[4], s5 = limb[5];
  for (let i = 0; i < n; i++) {
    const t0 = s0 * 13432389 + 6783311;
    const t1 = s0 * 14640287 + s1 * 13432389 + 8093431;
    const t2 = s0 * 10765189 + s1 * 14640287 + s2 * 13432389 + 2954245;
    const t3 = s0 * 2082397 + s1 * 10765189 + s2 * 14640287 + s3 * 13432389 + 5019007;
    const t4 = s0 * 6352133 + s1 * 2082397 + s2 * 10765189 + s3 * 14640287 + s4 * 13432389 + 5370925;
    const t5 = s0 * 35 + s1 * 6352133 + s2 * 2082397 + s3 * 10765189 + s4 * 14640287 + s5 * 13432389 + 88;
    const c0 = Math.floor(t0 * DOWN), u1 = t1 + c0, c1 = Math.floor(u1 * DOWN), u2 = t2 + c1, c2 = Math.floor(u2 * DOWN);
    const u3 = t3 + c2, c3 = Math.floor(u3 * DOWN), u4 = t4 + c3, c4 = Math.floor(u4 * DOWN), u5 = t5 + c4;
    s0 = t0 - c0 * UP;
    s1 = u1 - c1 * UP;
    s2 = u2 - c2 * UP;
    s3 = u3 - c3 * UP;
    s4 = u4 - c4 * UP;
    s5 = u5 - Math.floor(u5 * (1 / 256)) * 256;
    // The output function on 32-bit words, and its upper 52 bits between 0 and 1.
    const i1 = s1 | 0, i2 = s2 | 0, w0 = (s0 | 0) | (i1 << 24), w1 = (i1 >>> 8) | (i2 << 16), w3 = (s4 | 0) | ((s5 | 0) << 24);
    const y = (i2 >>> 16) | ((s3 | 0) << 8), x = y ^ w3;
    const z1 = (high(x & 0xffff, x >>> 16, 0x58b5, 0xe4dd) + Math.imul(x, 0xda942042 | 0) + Math.imul(w3, 0xe4dd58b5 | 0)) | 0;
    const z0 = Math.imul(x, 0xe4dd58b5 | 0) ^ (z1 >>> 16), odd = w0 | 1;
    const r1 = (high(z0 & 0xffff, z0 >>> 16, odd & 0xffff, odd >>> 16) + Math.imul(z0, w1) + Math.imul(z1, odd)) | 0;
    out[i] = (r1 >>> 0) * 2 ** -32 + ((Math.imul(z0, odd) >>> 12) + 0.5) * 2 ** -52;
  }
}

// ---- quantiles and three-point figures ----

function tailQuantile(q, tail) {
  let r = Math.sqrt(-Math.log(tail)), x = 0;
  if (r > 5) {
    r -= 5;
    x = (((((((2.01033439929228813265e-7 * r + 2.71155556874348757815e-5) * r + 1.24266094738807843860e-3) * r + 2.65321895265761230930e-2) * r + 2.96560571828504891230e-1) * r + 1.78482653991729133580e0) * r + 5.46378491116411436990e0) * r + 6.65790464350110377720e0) /
      (((((((2.04426310338993978564e-15 * r + 1.42151175831644588870e-7) * r + 1.84631831751005468180e-5) * r + 7.86869131145613259100e-4) * r + 1.48753612908506148525e-2) * r + 1.36929880922735805310e-1) * r + 5.99832206555887937690e-1) * r + 1);
  } else {
    r -= 1.6;
    x = (((((((7.74545014278341407640e-4 * r + 2.27238449892691845833e-2) * r + 2.41780725177450611770e-1) * r + 1.27045825245236838258e0) * r + 3.64784832476320460504e0) * r + 5.76949722146069140550e0) * r + 4.63033784615654529590e0) * r + 1.42343711074968357734e0) /
      (((((((1.05075007164441684324e-9 * r + 5.47593808499534494600e-4) * r + 1.51986665636164571966e-2) * r + 1.48103976427480074590e-1) * r + 6.89767334985100004550e-1) * r + 1.67638483018380384940e0) * r + 2.05319162663775882187e0) * r + 1);
  }
  return q < 0 ? -x : x;
}

function quantile(p) {
  const q = p - 0.5;
  if (Math.abs(q) > 0.425) return tailQuantile(q, q > 0 ? 1 - p : p);
  const r = 0.180625 - q * q;
  return q * (((((((2.5090809287301226727e3 * r + 3.3430575583588128105e4) * r + 6.7265770927008700853e4) * r + 4.5921953931549871457e4) * r + 1.3731693765509461125e4) * r + 1.9715909503065514427e3) * r + 1.3314166789178437745e2) * r + 3.3871328727963666080e0) /
    (((((((5.2264952788528545610e3 * r + 2.8729085735721942674e4) * r + 3.9307895800092710610e4) * r + 2.1213794301586595867e4) * r + 5.3941960214247511077e3) * r + 6.8718700749205790830e2) * r + 4.2313330701600911252e1) * r + 1);
}

// exp by 32nds of a power of two: V8's own is a call out of compiled code. Good to
// two units in the last place for |x| < 40, which is far beyond what hours reach.
const roots = Float64Array.from({ length: 32 }, (_, j) => 2 ** (j / 32));
const powers = Float64Array.from({ length: 128 }, (_, m) => 2 ** (m - 64));

const LN2_HIGH = 0x162e42fee / 2 ** 33, LN2_LOW = 1.9082149292705877e-10; // together ln 2

function exp(x) {
  if (!(x > -40 && x < 40)) return Math.exp(x);
  const whole = Math.floor(x * 46.16624130844683 + 0.5);
  const k = whole | 0;
  const r = (x - whole * (LN2_HIGH / 32)) - whole * (LN2_LOW / 32);
  const p = r + r * r * (0.5 + r * (1 / 6 + r * (1 / 24 + r * (1 / 120 + r * (1 / 720)))));
  const root = roots[k & 31];
  return (root + root * p) * powers[(k >> 5) + 64];
}

// at is the figure at place n of a table (likely, h, m, m², k, sign) for the score s.
function at(t, n, s) {
  n *= 6;
  return t[n] * exp(t[n + 1] * s + t[n + 5] * (Math.sqrt(t[n + 3] + t[n + 4] * (s * s)) - t[n + 2]));
}

const thousandths = (h) => Math.floor(h * 1000 + 0.5);
const minor = (v) => Math.floor(v + 0.5);
const score = (u) => quantile(u) / q90;

// share is a × b ÷ divisor, half away from zero, exact below 2^53.
function share(a, b, divisor) {
  const v = Math.floor((Math.abs(a) * b + divisor / 2) / divisor);
  return a < 0 ? -v : v;
}

// ---- drawing ----

const joined = joints.reduce((a, b) => a + b, 0);
const damaged = new Float64Array(1 + groups + pocketItems.length + 5 * items + joined);
const condition = new Uint8Array(items), finding = new Uint8Array(items), dent = new Uint8Array(items), lead = new Uint8Array(items), ownCause = new Uint8Array(items);
const groupAt = new Int32Array(groups), pocketAt = new Int32Array(pocketItems.length), luck = new Float64Array(CLASSES);

function find(upTo, u) {
  let low = 0, end = upTo.length - 1;
  while (low < end) {
    const mid = (low + end) >> 1;
    if (u < upTo[mid]) end = mid;
    else low = mid + 1;
  }
  return low;
}

// ladders turns rows of chances into running sums in place, with no upper end from the
// last possible level on, and says for each of so many even steps of a uniform where
// to begin to seek.
const RUNGS = 64;

function ladders(chance, levels) {
  const start = new Int32Array((chance.length / levels) * RUNGS);
  for (let row = 0; row * levels < chance.length; row++) {
    const first = row * levels;
    let last = levels - 1;
    while (last > 0 && chance[first + last] === 0) last--;
    for (let k = 1; k < levels; k++) chance[first + k] += chance[first + k - 1];
    for (let k = last; k < levels; k++) chance[first + k] = 2;
    for (let k = 0, n = 0; k < RUNGS; k++) {
      while (chance[first + n] <= k / RUNGS) n++;
      start[row * RUNGS + k] = n;
    }
  }
  return start;
}
const groupStart = ladders(groupChance, groupLevels), pocketStart = ladders(pocketChance, pocketLevels);

function pickLevel(upTo, start, row, levels, u) {
  let n = start[row * RUNGS + ((u * RUNGS) | 0)];
  while (u >= upTo[row * levels + n]) n++;
  return n;
}

// pickSix picks from running sums (see runUp).
function pickSix(upTo, from, u) {
  let k = 0;
  while (k < 5 && u >= upTo[from + k]) k++;
  return k;
}

// runUp turns rows of six chances into running sums, with no upper end from the last
// possible one on.
function runUp(p) {
  for (let from = 0; from < p.length; from += 6) {
    let last = 0;
    for (let k = 0; k < 6; k++) if (p[from + k] > 0) last = k;
    for (let k = 1; k < 6; k++) p[from + k] += p[from + k - 1];
    for (let k = last; k < 6; k++) p[from + k] = 2;
  }
}
runUp(wayChance);
runUp(conditionThen);
runUp(hurtThen);
runUp(sparedThen);

// Quantiles at even steps of the uniform, a little below and above: where both ends of
// a step give one condition, as they mostly do, the exact quantile is not needed.
const CELLS = 256;
const below = Float64Array.from({ length: CELLS }, (_, k) => (k === 0 ? -39 : quantile(k / CELLS) - 1e-9));
const over = Float64Array.from({ length: CELLS }, (_, k) => (k === CELLS - 1 ? 39 : quantile((k + 1) / CELLS) + 1e-9));

function step(th, y) {
  let k = 0;
  while (k < 5 && y >= threshold[th + k]) k++;
  return k;
}

function conditionOf(i, x, uniform) {
  const th = 5 * isHidden[i], cell = (uniform * CELLS) | 0, k = step(th, x + own[i] * below[cell]);
  if (k === 5 || x + own[i] * over[cell] < threshold[th + k]) return k;
  return step(th, x + own[i] * quantile(uniform));
}

// afterCause is what a cause of its own, likely from a uniform on, makes of rust k.
function afterCause(i, k, from, u) {
  ownCause[i] = 0;
  if (u < spared[i]) return pickSix(sparedThen, i * CONDITIONS, u / spared[i]);
  if (u < from) return k;
  const worse = pickSix(hurtThen, i * CONDITIONS, (u - from) / (1 - from));
  if (worse <= k) return k;
  ownCause[i] = 1;
  return worse;
}

function drawItem(i, from, level, over, repair) {
  let of = i * STRATA + repair, reading = repair === LOOKS ? PAINTED_AGAIN : 0, since = 0, uRepair = damaged[from + 2], knocked = knock[of];
  dent[i] = damaged[from + 4] < dentChance[of] ? 1 : 0;
  if (uRepair < knocked) {
    finding[i] = REPLACED;
    condition[i] = pickSix(conditionThen, REPLACED * CONDITIONS, damaged[from + 3]);
    ownCause[i] = 0;
    return;
  }
  if (repair === THOROUGH) {
    uRepair = (uRepair - knocked) / (1 - knocked);
    knocked = 0;
    if (uRepair < missed[i]) {
      uRepair /= missed[i];
    } else {
      uRepair = (uRepair - missed[i]) / (1 - missed[i]);
      of = i * STRATA + RENEWED;
      reading = AS_RENEWED;
      since = 1;
      dent[i] = damaged[from + 4] < dentChance[of] ? 1 : 0;
    }
  }
  const rust = conditionOf(i, mu[(level * READINGS + reading) * items + i] + over, damaged[from]);
  const k = afterCause(i, rust, hurtFrom[(level * 2 + since) * items + i], damaged[from + 1]);
  finding[i] = since === 1 && uRepair < found[of] ? REPLACED : 0;
  condition[i] = k;
  if (k < 3 || since === 1) return;
  let u = (uRepair - knocked) / (1 - knocked);
  if (u >= repaired[of]) return;
  u /= repaired[of];
  let f = PATCHED;
  for (; f < REPLACED && u >= kinds[of * FINDINGS + f]; f++) u -= kinds[of * FINDINGS + f];
  finding[i] = f;
  condition[i] = pickSix(conditionThen, f * CONDITIONS, damaged[from + 3]);
  ownCause[i] = 0;
}

function drawShared() {
  let at = 1, pocket = 0;
  for (let g = 0; g < groups; g++) {
    groupAt[g] = pickLevel(groupChance, groupStart, g, groupLevels, damaged[at++]);
    for (let n = groupPockets[g]; n > 0; n--, pocket++) pocketAt[pocket] = pickLevel(pocketChance, pocketStart, pocket, pocketLevels, damaged[at++]);
  }
  return at;
}

// draw fills in one simulated car and returns its history level.
function draw() {
  const state = find(stateUpTo, damaged[0]), repair = state % REPAIRS, above = (state / REPAIRS) | 0;
  const level = (above / carLevels) | 0, carLevel = above % carLevels;
  let from = drawShared(), pocket = 0, drawn = 0;
  for (let g = 0; g < groups; g++) {
    for (let n = groupPockets[g]; n > 0; n--, pocket++) {
      for (let k = 0; k < CLASSES; k++) {
        luck[k] = carTerm[k * carLevels + carLevel] + groupTerm[k * groupLevels + groupAt[g]] + sideTerm[k * pocketLevels + pocketAt[pocket]];
      }
      for (const last = drawn + pocketItems[pocket]; drawn < last; drawn++, from += 5) {
        const i = itemDrawn[drawn];
        drawItem(i, from, level, luck[classOf[i]], repair);
      }
    }
  }
  const failed = leadChance[level];
  for (let i = 0; i < items; i++) {
    let count = 0;
    for (let n = joints[i]; n > 0; n--) if (damaged[from++] < failed) count++;
    lead[i] = count;
  }
  return level;
}

// ---- what is done ----

// Where each kind of uniform of the work begins.
const WIRE = 2, WEEK = 3, WAIT = 4, OF_WAY = 5, OF_HOURS = OF_WAY + items, OF_PRICE = OF_HOURS + items, OF_SENT = OF_PRICE + items;
const OF_STRIP = OF_SENT + sentIn.length, OF_ACCESS = OF_STRIP + strips, OF_PAY = OF_ACCESS + accesses, OF_NUT = OF_PAY + accesses;
const OF_NUT_HOURS = OF_NUT + nutTrade.length, OF_AFTER = OF_NUT_HOURS + nutTrade.length;
const u = new Float64Array(OF_AFTER + afterTrade.length);
const way = new Uint8Array(items), covered = new Uint8Array(items), credit = new Uint8Array(items);
const after = new Float64Array(TRADES), strip = new Float64Array(TRADES), billed = new Float64Array(TRADES), factor = new Float64Array(TRADES);
let partsIn = 0;

function anyAtLeast(item, first, row, least) {
  for (let n = first[row]; n < first[row + 1]; n++) if (way[item[n]] >= least) return true;
  return false;
}

function drawWays() {
  covered.fill(0);
  credit.fill(0);
  for (let i = 0; i < items; i++) {
    way[i] = leftOut[i] ? LEAVE : instead[i * WAYS + pickSix(wayChance, (i * CONDITIONS + condition[i]) * WAYS, u[OF_WAY + i])];
  }
}

function raiseWays() {
  for (let changed = true; changed;) {
    changed = false;
    for (let k = 0; k < ifLeast.length; k++) {
      if (!anyAtLeast(ifItem, ifFirst, k, ifLeast[k]) || anyAtLeast(unlessItem, unlessFirst, k, unlessLeast[k])) continue;
      for (let n = raiseFirst[k]; n < raiseFirst[k + 1]; n++) {
        const i = raiseItem[n], to = instead[i * WAYS + raiseTo[n]];
        if (way[i] < raiseTo[n] && way[i] < to) {
          way[i] = to;
          changed = true;
        }
      }
    }
  }
}

function needed(k) {
  const least = accessRule[5 * k], exactly = accessRule[5 * k + 1];
  if (anyAtLeast(accessUnless, accessUnlessFirst, k, accessRule[5 * k + 2])) return false;
  for (let n = accessFirst[k]; n < accessFirst[k + 1]; n++) {
    const w = way[accessItem[n]];
    if (w === least || (!exactly && w > least)) return true;
  }
  return false;
}

// What the pieces of a full panel cost, at the edges of cells of the uniforms that set
// it: that settles nearly every comparison before any of them is worked out.
const COST_CELLS = 4 + 14 + 4, EDGES = COST_CELLS + 1;
const labourEnds = new Float64Array(items * WAYS * EDGES), partEnds = new Float64Array(items * WAYS * EDGES);

function costCell(v) {
  if (v < 1 / 16) return Math.trunc(v * 64);
  return v < 15 / 16 ? 3 + Math.trunc(v * 16) : 18 + Math.trunc((v - 15 / 16) * 64);
}

function costEdge(k) {
  if (k < 4) return k / 64;
  return k < 18 ? (k - 3) / 16 : 15 / 16 + (k - 18) / 64;
}

function labourCost(of, s) {
  let sum = 0;
  for (let n = firstLine[of]; n < firstLine[of + 1]; n++) sum += panelMoney[lineTrade[n]] * at(lineHours, n, s);
  return sum;
}

function partCost(of, s) { return price[6 * of] > 0 ? panelMoney[TRADES] * at(price, of, s) : 0; }

function setEnds(i) {
  for (let of = i * WAYS; of < (i + 1) * WAYS; of++) {
    for (let k = 1; k < COST_CELLS; k++) {
      labourEnds[of * EDGES + k] = labourCost(of, score(costEdge(k)));
      partEnds[of * EDGES + k] = partCost(of, score(costEdge(k)));
    }
    labourEnds[of * EDGES + COST_CELLS] = firstLine[of] < firstLine[of + 1] ? Infinity : 0;
    partEnds[of * EDGES + COST_CELLS] = price[6 * of] > 0 ? Infinity : 0;
  }
}

for (const p of panels) {
  setEnds(p);
  for (let n = coversFirst[p]; n < coversFirst[p + 1]; n++) setEnds(coversItem[n]);
}

// end is what a way on an item costs at the lower (0) or upper (1) end of its cells.
function end(i, w, upper) {
  if (w === LEAVE) return 0;
  const row = (i * WAYS + w) * EDGES + upper;
  return labourEnds[row + costCell(u[OF_HOURS + i])] + partEnds[row + costCell(u[OF_PRICE + i])];
}

function costAt(i, w) {
  const of = i * WAYS + w;
  return labourCost(of, score(u[OF_HOURS + i])) + partCost(of, score(u[OF_PRICE + i]));
}

function piecesCostMore(p) {
  const from = coversFirst[p], to = coversFirst[p + 1];
  let least = end(p, way[p], 0), most = end(p, way[p], 1);
  for (let n = from; n < to; n++) {
    const i = coversItem[n];
    if (covered[i]) continue;
    least += end(i, way[i], 0);
    most += end(i, way[i], 1);
  }
  if (most <= end(p, FULL, 0) * panelTimes) return false;
  if (least > end(p, FULL, 1) * panelTimes) return true;
  let sum = costAt(p, way[p]);
  for (let n = from; n < to; n++) if (!covered[coversItem[n]]) sum += costAt(coversItem[n], way[coversItem[n]]);
  return sum > costAt(p, FULL) * panelTimes;
}

function cover(i) {
  for (let n = coversFirst[i]; n < coversFirst[i + 1]; n++) covered[coversItem[n]] = 1;
}

function dropCovered() {
  for (let i = 0; i < items; i++) if (way[i] === FULL) cover(i);
  for (let k = 0; k < panels.length; k++) {
    const p = panels[k];
    if (way[p] >= FULL || covered[p] || !piecesCostMore(p)) continue;
    way[p] = FULL;
    cover(p);
  }
  for (let k = 0; k < accesses; k++) {
    if (accessCoversFirst[k] === accessCoversFirst[k + 1] || !needed(k)) continue;
    for (let n = accessCoversFirst[k]; n < accessCoversFirst[k + 1]; n++) covered[accessCovers[n]] = 1;
  }
  for (let i = 0; i < items; i++) if (covered[i] && !(once[i] && way[i] === FULL)) way[i] = LEAVE;
}

let newArea = 0; // of the parts replaced, m²

function replacedArea() {
  newArea = 0;
  for (let i = 0; i < items; i++) if (covered[i] || way[i] >= FULL) newArea += itemFaces[i];
}

function coats(list, area) {
  let sum = 0;
  for (let n = 0; n < list.length; n += 3) sum += share(list[n + 1], Math.floor(list[n] * area + 0.5), list[n + 2]);
  return sum;
}

function creditSeams() {
  for (let n = 0; n < seam.length; n += 2) {
    const x = seam[n], y = seam[n + 1];
    if (way[x] < FULL + once[x] || way[y] < FULL + once[y]) continue;
    credit[likelyMetal[x * WAYS + way[x]] < likelyMetal[y * WAYS + way[y]] ? x : y] = 1;
  }
}

// ---- hours and money ----

function setFactors() {
  const metal = quantile(u[0]), other = rho * metal + rhoRest * quantile(u[1]);
  factor.fill(exp(sdOther * other));
  factor[METAL] = exp(sdMetal * metal);
}

function add(trade, hours) { after[trade] += thousandths(hours * factor[trade]); }

function workItem(i) {
  const of = i * WAYS + way[i], f = finding[i];
  const extra = way[i] < FULL && !leftOut[i] && (f === PATCHED || f === FILLED || dent[i] !== 0 || lead[i] !== 0);
  if (firstLine[of] === firstLine[of + 1] && !extra) return;
  const s = score(u[OF_HOURS + i]);
  for (let n = firstLine[of]; n < firstLine[of + 1]; n++) {
    const trade = lineTrade[n];
    let h = at(lineHours, n, s);
    if (credit[i] && trade === METAL) h *= 1 - seamShare;
    add(trade, h);
  }
  if (extra) {
    if (f === PATCHED || f === FILLED) add(METAL, at(findingHours, f - PATCHED, s));
    if (dent[i]) add(METAL, at(findingHours, 2, s));
    for (let n = lead[i]; n > 0; n--) add(METAL, at(findingHours, 3, s));
  }
  if (price[6 * of] > 0) partsIn += minor(at(price, of, score(u[OF_PRICE + i])));
}

function workItems() {
  for (let i = 0; i < items; i++) if (!covered[i]) workItem(i);
  for (let k = 0; 4 * k < above.length; k++) {
    const brace = above[4 * k], floor = above[4 * k + 1];
    if (way[brace] < above[4 * k + 2] || covered[brace] || way[floor] > above[4 * k + 3] || covered[floor]) continue;
    add(METAL, at(aboveHours, k, score(u[OF_HOURS + brace])));
  }
}

function getIn(level) {
  let lifted = liftedInStrip !== 0;
  for (let k = 0; k < accesses; k++) {
    if (!needed(k)) continue;
    lifted ||= accessRule[5 * k + 4] !== 0;
    add(accessRule[5 * k + 3], at(accessHours, k, score(u[OF_ACCESS + k])));
    if (accessPrice[6 * k] > 0) partsIn += minor(at(accessPrice, k, score(u[OF_PAY + k])));
  }
  if (!lifted) return;
  for (let k = 0; k < nutTrade.length; k++) {
    if (u[OF_NUT + k] < nutChance[level]) add(nutTrade[k], at(nutHours, k, score(u[OF_NUT_HOURS + k])));
  }
}

function workCar() {
  for (let k = 0; k < afterTrade.length; k++) add(afterTrade[k], at(afterHours, k, score(u[OF_AFTER + k])));
  for (let k = 0; k < strips; k++) {
    const trade = stripRule[4 * k], ceiling = stripRule[4 * k + 1];
    if (stripRule[4 * k + 2]) continue; // left to the customer
    const worked = thousandths(at(stripHours, k, score(u[OF_STRIP + k])) * factor[trade]);
    strip[trade] += worked;
    if (stripRule[4 * k + 3]) billed[trade] += ceiling >= 0 && worked > ceiling ? ceiling : worked;
  }
}

const out = { total: 0, tax: 0, hours: 0, weeks: 0, replaced: 0, ownCause: 0 }; // of the last car
const HUNDRED = 1e8; // millionths of a per cent in the whole

function setPrice() {
  const divisor = rate[TRADES];
  let labour = 0, asWorked = 0, hours = 0, sentFirst = 0, sentThen = 0;
  for (let t = 0; t < TRADES; t++) {
    asWorked += share(rate[t], billed[t], divisor);
    labour += share(rate[t], after[t], divisor);
    hours += strip[t] + after[t];
  }
  const least = fixed[3] > hours ? share(rate[METAL], fixed[3] - hours, divisor) : 0;
  for (let k = 0; k < sentIn.length; k++) {
    if (sent[6 * k] === 0) continue;
    const v = minor(at(sent, k, score(u[OF_SENT + k])));
    if (sentIn[k]) sentFirst += v;
    else sentThen += v;
  }
  const away = sentFirst + share(handling[1], sentFirst, HUNDRED) + sentThen + share(handling[1], sentThen, HUNDRED);
  const used = wire[0] > 0 ? minor(at(wire, 0, score(u[WIRE])) * fixed[4] * after[METAL] / 1000) : 0;
  const parts = partsIn + share(handling[0], partsIn, HUNDRED), materials = fixed[1] + fixed[2] + used + coats(primers, faces - newArea) + coats(newParts, newArea);
  labour += fixed[0] + asWorked + least;
  let small = supplies[0] ? share(supplies[1], labour, HUNDRED) : 0;
  if (supplies[2] && small > supplies[3]) small = supplies[3];
  out.total = labour + materials + parts + small + away;
  out.tax = share(tax[0], (tax[1] ? labour : 0) + (tax[2] ? materials : 0) + (tax[3] ? parts : 0) + (tax[4] ? small : 0) + (tax[5] ? away : 0), HUNDRED);
  out.hours = hours;
  let weeks = hours / 1000 / at(wire, 1, score(u[WEEK]));
  if (wire[12] > 0) weeks += at(wire, 2, score(u[WAIT]));
  out.weeks = thousandths(weeks);
}

function countItems() {
  let replaced = 0, own = 0;
  for (let i = 0; i < items; i++) {
    replaced += finding[i] === REPLACED ? 1 : 0;
    own += ownCause[i];
  }
  out.replaced = replaced;
  out.ownCause = own;
}

function car(seedLow, seedHigh, n) {
  start(seedLow, seedHigh, 2 * n + 1);
  fill(damaged, damaged.length);
  start(seedLow, seedHigh, 2 * n + 2);
  fill(u, u.length);
  const level = draw();
  after.fill(0);
  strip.fill(0);
  billed.fill(0);
  partsIn = 0;
  drawWays();
  raiseWays();
  dropCovered();
  replacedArea();
  creditSeams();
  setFactors();
  workItems();
  getIn(level);
  workCar();
  setPrice();
  countItems();
}

// ---- requests ----

function answer(line) {
  const [what, seed, count] = line.split(" ");
  const low = Number(seed) | 0, top = Math.floor(Number(seed) / 2 ** 32) | 0, n = Number(count), lines = [];
  if (what === "show") {
    for (let k = 0; k < n; k++) {
      car(low, top, k);
      lines.push(`${out.total} ${out.tax} ${out.hours} ${out.weeks} ${out.replaced} ${out.ownCause}`);
    }
    return lines.join("\n");
  }
  if (what !== "time") throw new Error(`expected show or time, found ${what}`);
  let totals = 0, hours = 0, weeks = 0, replaced = 0, own = 0;
  const begun = process.hrtime.bigint();
  for (let k = 0; k < n; k++) {
    car(low, top, k);
    totals += out.total;
    hours += out.hours;
    weeks += out.weeks;
    replaced += out.replaced;
    own += out.ownCause;
  }
  return `${process.hrtime.bigint() - begun} ${totals} ${hours} ${weeks} ${replaced} ${own}`;
}

for await (const line of createInterface({ input: process.stdin })) process.stdout.write(`${answer(line)}\n`);
