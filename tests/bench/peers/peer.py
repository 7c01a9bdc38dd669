"""The peer in NumPy: draws and prices imagined cars from a flat file, and nothing else.

Start at the end, then read block(): some thousand imagined cars at once. Every array
runs over the cars of a block; items are taken one after another, so that what is in
hand stays in the processor's cache, and hours are worked out only for the cars that
have them.

Sources of what is computed: the generator and its output function, M. O'Neill, PCG
(2014), as 128-bit PCG-DXSM; normal quantiles, M. J. Wichura, Algorithm AS 241 (1988),
PPND16; three-point figures, C. C. Hadlock and J. E. Bickel, Decision Analysis 14(1)
(2017). The rest is the order of work of the engine's packages damage and work.
"""

import sys
import time

import numpy as np

BLOCK = 2048  # cars at once: the fastest of 512 to 8192 where it was tried
WAYS, TRADES, REPAIRS, FULL, METAL = 6, 5, 3, 4, 0
PATCHED, FILLED, REPLACED = 1, 2, 3
SPREAD = 0x9E3779B97F4A7C15


def read_flat(path):
    with open(path, encoding="ascii") as f:
        lines = f.read().split("\n")
    if lines[0] != "underpaint flat 1":
        raise SystemExit(path + ": not a flat file")
    lists, at = {}, 1
    while at < len(lines) - 1:
        name, n = lines[at].split()
        lists[name] = np.array([float(x) for x in lines[at + 1 : at + 1 + int(n)]])
        at += 1 + int(n)
    return lists


class Stream:
    """One stream for each car of a block; all are at the same place."""

    MUL = 0x2360ED051FC65DA44385DF649FCCF645
    INC = 0x5851F42D4C957F2D14057B7EF767814F
    LOW32, BY32 = np.uint64(0xFFFFFFFF), np.uint64(32)

    def __init__(self, seed, numbers):
        self.hi = np.full(len(numbers), seed, np.uint64)
        self.lo = numbers * np.uint64(SPREAD)
        self.work = [np.empty(len(numbers), np.uint64) for _ in range(5)]

    def upper(self, x):
        """The upper half of x × the lower half of the multiplier."""
        a, b, c, d, _ = self.work
        ml, mh = np.uint64(self.MUL & 0xFFFFFFFF), np.uint64(self.MUL >> 32 & 0xFFFFFFFF)
        np.bitwise_and(x, self.LOW32, out=a)
        np.right_shift(x, self.BY32, out=b)
        np.multiply(a, ml, out=c)
        np.right_shift(c, self.BY32, out=c)
        np.multiply(a, mh, out=a)
        np.bitwise_and(a, self.LOW32, out=d)
        c += d
        np.multiply(b, ml, out=d)
        c += d
        c >>= self.BY32
        a >>= self.BY32
        b *= mh
        b += a
        b += c
        return b

    def uniform(self, out):
        top = self.upper(self.lo)
        mul_lo, mul_hi = np.uint64(self.MUL & 2**64 - 1), np.uint64(self.MUL >> 64)
        inc_lo, inc_hi = np.uint64(self.INC & 2**64 - 1), np.uint64(self.INC >> 64)
        h = self.work[4]
        self.hi *= mul_lo
        self.hi += top
        np.multiply(self.lo, mul_hi, out=h)
        self.hi += h
        self.lo *= mul_lo
        self.lo += inc_lo
        self.hi += inc_hi
        self.hi += self.lo < inc_lo
        np.right_shift(self.hi, self.BY32, out=h)
        h ^= self.hi
        h *= np.uint64(0xDA942042E4DD58B5)
        np.right_shift(h, np.uint64(48), out=self.work[0])
        h ^= self.work[0]
        np.bitwise_or(self.lo, np.uint64(1), out=self.work[0])
        h *= self.work[0]
        h >>= np.uint64(12)
        h |= np.uint64(0x3FF << 52)
        np.subtract(h.view(np.float64), 1 - 2.0**-53, out=out)

    def rows(self, n):
        out = np.empty((n, len(self.lo)))
        for row in out:
            self.uniform(row)
        return out


CENTRE = (
    (2.5090809287301226727e3, 3.3430575583588128105e4, 6.7265770927008700853e4, 4.5921953931549871457e4, 1.3731693765509461125e4, 1.9715909503065514427e3, 1.3314166789178437745e2, 3.3871328727963666080e0),
    (5.2264952788528545610e3, 2.8729085735721942674e4, 3.9307895800092710610e4, 2.1213794301586595867e4, 5.3941960214247511077e3, 6.8718700749205790830e2, 4.2313330701600911252e1, 1.0),
)
TAIL = (
    (7.74545014278341407640e-4, 2.27238449892691845833e-2, 2.41780725177450611770e-1, 1.27045825245236838258e0, 3.64784832476320460504e0, 5.76949722146069140550e0, 4.63033784615654529590e0, 1.42343711074968357734e0),
    (1.05075007164441684324e-9, 5.47593808499534494600e-4, 1.51986665636164571966e-2, 1.48103976427480074590e-1, 6.89767334985100004550e-1, 1.67638483018380384940e0, 2.05319162663775882187e0, 1.0),
)
FAR = (
    (2.01033439929228813265e-7, 2.71155556874348757815e-5, 1.24266094738807843860e-3, 2.65321895265761230930e-2, 2.96560571828504891230e-1, 1.78482653991729133580e0, 5.46378491116411436990e0, 6.65790464350110377720e0),
    (2.04426310338993978564e-15, 1.42151175831644588870e-7, 1.84631831751005468180e-5, 7.86869131145613259100e-4, 1.48753612908506148525e-2, 1.36929880922735805310e-1, 5.99832206555887937690e-1, 1.0),
)


def ratio(r, of):
    num, den = of[0][0] * r, of[1][0] * r
    for a, b in zip(of[0][1:-1], of[1][1:-1]):
        num += a
        num *= r
        den += b
        den *= r
    num += of[0][-1]
    den += of[1][-1]
    num /= den
    return num


def quantile(p):
    q = p - 0.5
    x = ratio(0.180625 - q * q, CENTRE)
    x *= q
    far = np.flatnonzero(np.abs(q) > 0.425)
    if len(far):
        qf = q[far]
        r = np.sqrt(-np.log(np.where(qf > 0, 1 - p[far], p[far])))
        v = ratio(r - 1.6, TAIL)
        v = np.where(r > 5, ratio(r - 5, FAR), v)
        x[far] = np.where(qf < 0, -v, v)
    return x


def at(figure, s):
    likely, h, m, m2, k, sign = figure
    return likely * np.exp(h * s + sign * (np.sqrt(m2 + k * (s * s)) - m))


def thousandths(h):
    return (h * 1000 + 0.5).astype(np.int64)


def minor(v):
    return (v + 0.5).astype(np.int64)


def share(a, b, divisor):
    """a × b ÷ divisor, half away from zero; b is not negative, and exact in 63 bits."""
    v = (abs(a) * b + divisor // 2) // divisor
    return -v if a < 0 else v


def steps(p):
    """Running sums, with no upper end from the last possible one on."""
    out = np.cumsum(p, axis=-1)
    for row, of in zip(out.reshape(-1, p.shape[-1]), p.reshape(-1, p.shape[-1])):
        possible = np.flatnonzero(of)
        row[possible[-1] if len(possible) else 0 :] = np.inf
    return out


class Tables:
    def __init__(self, flat):
        self.flat = flat
        self.n = n = len(flat["item_drawn"])
        self.whole = lambda name: flat[name].astype(np.int64)
        self.set_damage(flat, n)
        self.set_items(flat, n)
        self.set_lines(flat)

    def ragged(self, name):
        ends = np.cumsum(self.whole(name + "_count"))
        return np.split(self.whole(name), ends[:-1])

    def figures(self, name):
        return [tuple(x) for x in self.flat[name].reshape(-1, 6).tolist()]

    def set_damage(self, flat, n):
        self.root = flat["root_up_to"]
        self.group_pockets = self.whole("group_pockets")
        self.group = steps(flat["group_chance"].reshape(len(self.group_pockets), -1))
        self.pocket_items = self.whole("pocket_items")
        self.pocket = steps(flat["pocket_chance"].reshape(len(self.pocket_items), -1))
        self.car_term, self.group_term = flat["car_term"], flat["group_term"]
        self.side_term, self.mu = flat["side_term"].reshape(2, -1), flat["mu"].reshape(-1, n).T.copy()
        self.threshold, self.lead_chance = flat["threshold"].reshape(2, 5), flat["lead_chance"]
        self.drawn, self.closed, self.hidden = self.whole("item_drawn"), self.whole("item_closed"), self.whole("item_hidden")
        self.own, self.joints = flat["item_own"], self.whole("item_lead_joints")
        self.knock, self.repaired = flat["item_knock"].reshape(n, REPAIRS), flat["item_repaired"].reshape(n, REPAIRS)
        self.kinds, self.dent = flat["item_kinds"].reshape(n, REPAIRS, 4), flat["item_dent"].reshape(n, REPAIRS)
        self.then = steps(flat["condition_then"].reshape(4, 6))

    def set_items(self, flat, n):
        self.ways = steps(flat["way_chance"].reshape(n, 6, WAYS))
        self.instead = self.whole("way_instead").reshape(n, WAYS)
        ends = np.cumsum(self.whole("way_lines"))
        pairs = list(zip(self.whole("way_line_trade").tolist(), self.figures("way_line_hours")))
        self.lines = [pairs[a:b] for a, b in zip([0, *ends[:-1]], ends)]
        if any(p[0] and not n for p, n in zip(self.figures("way_price"), self.lines)):
            raise SystemExit("a part without work: not foreseen here")
        self.price, self.metal = self.figures("way_price"), flat["way_likely_metal"].reshape(n, WAYS)
        self.once, self.left_out = self.whole("item_once"), self.whole("item_left_out")
        self.finding = self.figures("finding_hours")
        self.opening = list(zip(self.ragged("opening_if"), self.whole("opening_at_least"), self.ragged("opening_unless"), self.whole("opening_unless_at_least"), self.ragged("opening_raise")))
        to, self.raises = iter(self.whole("opening_raise_to").tolist()), []
        for rule in self.opening:
            self.raises.append([(i, t, self.instead[i, t]) for i, t in ((i, next(to)) for i in rule[4])])
        self.covers, self.seams = self.ragged("covers"), self.whole("seams").reshape(-1, 2)
        self.seams = [(a, b) for a, b in self.seams if not self.once[a] and not self.once[b]]
        self.above = list(zip(self.whole("above").reshape(-1, 4), self.figures("above_hours")))

    def set_lines(self, flat):
        rules = self.whole("access_rule").reshape(-1, 5)
        self.access = list(zip(rules, self.ragged("access_items"), self.ragged("access_unless"), self.ragged("access_covers"), self.figures("access_hours"), self.figures("access_price")))
        self.nut, self.nut_chance = list(zip(self.whole("nut_trade"), self.figures("nut_hours"))), flat["nut_chance"]
        self.lifted = bool(flat["lifted_in_strip"][0])
        self.strip = list(zip(self.whole("strip_rule").reshape(-1, 4), self.figures("strip_hours")))
        self.after = list(zip(self.whole("after_trade"), self.figures("after_hours")))
        self.rate, self.handling = self.whole("rate").tolist(), self.whole("handling").tolist()
        self.sent = list(zip(self.whole("sent_in_strip"), self.figures("sent_price")))
        self.supplies, self.tax, self.fixed = (self.whole(x).tolist() for x in ("supplies", "tax", "fixed"))
        self.wire, self.week, self.wait = self.figures("wire_week_wait")
        self.sd_metal, self.sd_other, self.rho, self.rho_rest, self.seam, self.q90, _ = flat["whole_car"].tolist()


class Cars:
    """A block of imagined cars."""

    def __init__(self, t, seed, first, count):
        self.t, self.count = t, count
        numbers = np.arange(first, first + count, dtype=np.uint64) * np.uint64(2)
        self.draw(Stream(seed, numbers + np.uint64(1)))
        self.u = Stream(seed, numbers + np.uint64(2))
        self.car, self.wire, self.week, self.wait = self.u.rows(2), *self.u.rows(3)
        self.of_way, self.of_hours, self.of_price = (self.u.rows(t.n) for _ in range(3))

    def draw(self, s):
        t, u = self.t, np.empty(self.count)
        s.uniform(u)
        root = np.searchsorted(t.root, u, "right")
        self.repair, above = root % REPAIRS, root // REPAIRS
        self.level, of_car = above // len(t.car_term), t.car_term[above % len(t.car_term)]
        over, side, pocket = [], [], 0
        for g, n in enumerate(t.group_pockets):
            s.uniform(u)
            over.append(of_car + t.group_term[np.searchsorted(t.group[g], u, "right")])
            for _ in range(n):
                s.uniform(u)
                side.append((g, np.searchsorted(t.pocket[pocket], u, "right")))
                pocket += 1
        self.condition = np.zeros((t.n, self.count), np.int64)
        self.finding, self.dent, self.lead = (np.zeros((t.n, self.count), np.int8) for _ in range(3))
        four, drawn = np.empty((4, self.count)), iter(t.drawn)
        for (g, q), n in zip(side, t.pocket_items):
            for _, i in zip(range(n), drawn):
                for row in four:
                    s.uniform(row)
                self.draw_item(i, t.mu[i][self.level] + over[g] + t.side_term[t.closed[i]][q], *four)
        failed = t.lead_chance[self.level]
        for i in np.flatnonzero(t.joints):
            for _ in range(t.joints[i]):
                s.uniform(u)
                self.lead[i] += u < failed

    def draw_item(self, i, x, u_rust, u_repair, u_then, u_dent):
        t, r = self.t, self.repair
        knock = t.knock[i][r]
        x += t.own[i] * quantile(u_rust)
        k = np.searchsorted(t.threshold[t.hidden[i]], x, "right")
        kind = np.zeros(self.count, np.int8)
        knocked = u_repair < knock
        holed = np.flatnonzero((k >= 3) & ~knocked)
        v = (u_repair[holed] - knock[holed]) / (1 - knock[holed])
        repaired = t.repaired[i][r[holed]]
        mended = v < repaired
        holed, v = holed[mended], v[mended] / repaired[mended]
        first, then = (t.kinds[i][r[holed], f] for f in (PATCHED, FILLED))
        kind[holed] = np.where(v < first, PATCHED, np.where(v - first < then, FILLED, REPLACED))
        kind[knocked] = REPLACED
        for f in (PATCHED, FILLED, REPLACED):
            of = np.flatnonzero(kind == f)
            k[of] = np.searchsorted(t.then[f], u_then[of], "right")
        self.condition[i], self.finding[i], self.dent[i] = k, kind, u_dent < t.dent[i][r]

    def any_at_least(self, items, least):
        found = np.zeros(self.count, bool)
        for i in items:
            found |= self.way[i] >= least
        return found

    def needed(self, access):
        (way, exactly, unless_least, _, _), items, unless = access[:3]
        found = np.zeros(self.count, bool)
        for i in items:
            found |= (self.way[i] == way) if exactly else (self.way[i] >= way)
        return found & ~self.any_at_least(unless, unless_least)

    def set_ways(self):
        t = self.t
        self.way = np.zeros((t.n, self.count), np.int8)
        for i in np.flatnonzero(t.left_out == 0):
            up_to, u = t.ways[i][self.condition[i]], self.of_way[i]
            self.way[i] = t.instead[i][(up_to <= u[:, None]).sum(axis=1)]
        changed = True
        while changed:
            changed = False
            for (when, least, unless, unless_least, _), raises in zip(t.opening, t.raises):
                holds = self.any_at_least(when, least) & ~self.any_at_least(unless, unless_least)
                for i, to, instead in raises:
                    up = holds & (self.way[i] < min(to, instead))
                    if up.any():
                        self.way[i][up], changed = instead, True

    def set_covered(self):
        t = self.t
        self.covered, self.credit = (np.zeros((t.n, self.count), bool) for _ in range(2))
        for c, covers in enumerate(t.covers):
            for i in covers:
                self.covered[i] |= self.way[c] == FULL
        for a in t.access:
            if len(a[3]):
                self.covered[a[3]] |= self.needed(a)
        for i in range(t.n):
            drop = self.covered[i] & (self.way[i] != FULL) if t.once[i] else self.covered[i]
            self.way[i][drop] = 0
        new = self.way >= FULL
        for a, b in t.seams:
            both = np.flatnonzero(new[a] & new[b])
            if len(both):
                first = t.metal[a][self.way[a][both]] < t.metal[b][self.way[b][both]]
                self.credit[a][both[first]] = True
                self.credit[b][both[~first]] = True

    def add(self, trade, hours, cars=slice(None)):
        self.worked[trade][cars] += thousandths(hours * self.factor[trade][cars])

    def work(self):
        t = self.t
        metal = quantile(self.car[0])
        rest = np.exp(t.sd_other * (t.rho * metal + t.rho_rest * quantile(self.car[1])))
        self.factor = [np.exp(t.sd_metal * metal)] + [rest] * (TRADES - 1)
        self.worked, self.in_strip, self.billed = (np.zeros((TRADES, self.count), np.int64) for _ in range(3))
        self.parts = np.zeros(self.count, np.int64)
        for i in range(t.n):
            self.work_item(i)
        for (brace, floor, least, most), hours in t.above:
            cars = np.flatnonzero((self.way[brace] >= least) & ~self.covered[brace] & (self.way[floor] <= most) & ~self.covered[floor])
            self.add(METAL, at(hours, self.score(self.of_hours[brace][cars])), cars)

    def score(self, u):
        return quantile(u) / self.t.q90

    def work_item(self, i):
        t, way = self.t, self.way[i]
        s = self.score(self.of_hours[i])
        for w in range(WAYS):
            lines, price = t.lines[i * WAYS + w], t.price[i * WAYS + w]
            if not lines:
                continue
            cars = np.flatnonzero((way == w) & ~self.covered[i])
            if not len(cars):
                continue
            one = s[cars]
            for trade, figure in lines:
                h = at(figure, one)
                if trade == METAL and w >= FULL:
                    h[self.credit[i][cars]] *= 1 - t.seam
                self.add(trade, h, cars)
            if price[0]:
                self.parts[cars] += minor(at(price, self.score(self.of_price[i][cars])))
        if not t.left_out[i]:
            self.work_findings(i, s, (way < FULL) & ~self.covered[i])

    def work_findings(self, i, s, extra):
        t, f = self.t, self.finding[i]
        for figure, found in zip(t.finding, (f == PATCHED, f == FILLED, self.dent[i], self.lead[i])):
            cars = np.flatnonzero(extra & (found > 0))
            if len(cars):
                n = thousandths(at(figure, s[cars]) * self.factor[METAL][cars])
                self.worked[METAL][cars] += n * found[cars]

    def work_car(self):
        t, count = self.t, self.count
        of_sent, of_strip, of_access, of_pay = (self.u.rows(len(x)) for x in (t.sent, t.strip, t.access, t.access))
        of_nut, of_nut_hours, of_after = (self.u.rows(len(x)) for x in (t.nut, t.nut, t.after))
        lifted = np.full(count, t.lifted)
        for a, u, pay in zip(t.access, of_access, of_pay):
            need = self.needed(a)
            cars = np.flatnonzero(need)
            if a[0][4]:
                lifted |= need
            self.add(a[0][3], at(a[4], self.score(u[cars])), cars)
            if a[5][0]:
                self.parts[cars] += minor(at(a[5], self.score(pay[cars])))
        for (trade, hours), u, v in zip(t.nut, of_nut, of_nut_hours):
            cars = np.flatnonzero(lifted & (u < t.nut_chance[self.level]))
            self.add(trade, at(hours, self.score(v[cars])), cars)
        for (trade, hours), u in zip(t.after, of_after):
            self.add(trade, at(hours, self.score(u)))
        for ((trade, ceiling, customer, as_worked), hours), u in zip(t.strip, of_strip):
            if customer:
                continue
            worked = thousandths(at(hours, self.score(u)) * self.factor[trade])
            self.in_strip[trade] += worked
            if as_worked:
                self.billed[trade] += np.minimum(worked, ceiling) if ceiling >= 0 else worked
        self.sent = [np.zeros(count, np.int64), np.zeros(count, np.int64)]
        for (in_strip, price), u in zip(t.sent, of_sent):
            if price[0]:
                self.sent[in_strip] += minor(at(price, self.score(u)))

    def price(self):
        """Total, tax, hours and weeks of every car."""
        t, by, percent = self.t, self.t.rate[TRADES], 100000000
        labour = sum(share(t.rate[k], self.worked[k], by) + share(t.rate[k], self.billed[k], by) for k in range(TRADES))
        hours = self.worked.sum(axis=0) + self.in_strip.sum(axis=0)
        labour += t.fixed[0] + share(t.rate[METAL], np.maximum(t.fixed[3] - hours, 0), by)
        away = sum(v + share(t.handling[1], v, percent) for v in self.sent)
        materials = np.full(self.count, t.fixed[1] + t.fixed[2])
        if t.wire[0]:
            materials += minor(at(t.wire, self.score(self.wire)) * t.fixed[4] * self.worked[METAL] / 1000)
        parts = self.parts + share(t.handling[0], self.parts, percent)
        small = share(t.supplies[1], labour, percent) if t.supplies[0] else np.zeros(self.count, np.int64)
        if t.supplies[2]:
            small = np.minimum(small, t.supplies[3])
        kinds = (labour, materials, parts, small, away)
        tax = share(t.tax[0], sum(v for v, on in zip(kinds, t.tax[1:]) if on) + np.zeros(self.count, np.int64), percent)
        weeks = hours / 1000 / at(t.week, self.score(self.week))
        if t.wait[0]:
            weeks += at(t.wait, self.score(self.wait))
        return np.array([sum(kinds), tax, hours, thousandths(weeks)])


def block(t, seed, first, count):
    cars = Cars(t, seed, first, count)
    cars.set_ways()
    cars.set_covered()
    cars.work()
    cars.work_car()
    return cars.price()


def main():
    t = Tables(read_flat(sys.argv[1]))
    for line in sys.stdin:
        what, seed, n = line.split()
        begun, sums = time.perf_counter_ns(), np.zeros(4, np.int64)
        for first in range(0, int(n), BLOCK):
            out = block(t, int(seed), first, min(BLOCK, int(n) - first))
            sums += out.sum(axis=1)
            if what == "show":
                sys.stdout.write("".join("%d %d %d %d\n" % tuple(car) for car in out.T))
        if what == "time":
            print(time.perf_counter_ns() - begun, sums[0], sums[2], sums[3])
        sys.stdout.flush()


main()
