/* The peer in C: draws and prices imagined cars from a flat file, and nothing else.
 *
 * Start with main, then car(): one imagined car from its two streams of uniforms.
 * The flat file is read into tables once; nothing is allocated per car. Logarithms
 * and exponentials are the platform's, and the compiler may fuse multiply-adds: what
 * must agree with the engine is the money in minor units, the hours in thousandths
 * and what the items have been through, which the race compares car by car.
 *
 * Sources of what is computed: the generator and its output function, M. O'Neill,
 * PCG (2014), as 128-bit PCG-DXSM; normal quantiles, M. J. Wichura, Algorithm AS 241
 * (1988), PPND16; three-point figures, C. C. Hadlock and J. E. Bickel, Decision
 * Analysis 14(1) (2017). Everything else is the order of work of the engine's
 * packages damage and work. */

#include <inttypes.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { CONDITIONS = 6, WAYS = 6, TRADES = 5, CLASSES = 3, FINDINGS = 4, MOST = 256 };
enum { LEAVE, TREAT, PATCH, SECTION, FULL };
enum { METAL };
enum { NONE, PATCHED, FILLED, REPLACED };
/* A car in one of the first three repair states has all its items in the stratum of that
 * number; of one restored thoroughly an item is not reached or renewed. */
enum { LOOKS = 2, THOROUGH, REPAIRS, NOT_REACHED = THOROUGH, RENEWED, STRATA };
enum { AS_IT_IS, PAINTED_AGAIN, AS_RENEWED, READINGS }; /* of the depth */

/* ---- the flat file ---- */

static void stop(const char *what, const char *name) {
    fprintf(stderr, "peer.c: %s%s\n", what, name);
    exit(1);
}

typedef struct {
    char name[40];
    int n;
    double *v;
} list;

static list lists[128];
static int listed;

static void read_flat(const char *path) {
    FILE *f = fopen(path, "r");
    char line[64];
    if (!f || !fgets(line, sizeof line, f) || strcmp(line, "underpaint flat 1\n")) stop("not a flat file: ", path);
    while (fgets(line, sizeof line, f)) {
        if (listed == 128) stop("too many lists: ", path);
        list *l = &lists[listed++];
        if (sscanf(line, "%39s %d", l->name, &l->n) != 2) stop("expected a name and a number: ", line);
        l->v = malloc((l->n + 1) * sizeof *l->v);
        for (int i = 0; i < l->n; i++) {
            if (!fgets(line, sizeof line, f)) stop("too short: ", l->name);
            l->v[i] = strtod(line, NULL);
        }
    }
    fclose(f);
}

static list *get(const char *name) {
    for (int i = 0; i < listed; i++)
        if (!strcmp(lists[i].name, name)) return &lists[i];
    stop("no list ", name);
    return NULL;
}

static double *reals(const char *name) { return get(name)->v; }
static int size(const char *name) { return get(name)->n; }

static int *wholes(const char *name) {
    list *l = get(name);
    int *out = malloc((l->n + 1) * sizeof *out);
    for (int i = 0; i < l->n; i++) out[i] = (int)l->v[i];
    return out;
}

/* a list of lists: those of row i run from first[i] to first[i+1] */
typedef struct {
    int n, *first, *item;
} ragged;

static ragged raggeds(const char *name) {
    char count[64];
    snprintf(count, sizeof count, "%s_count", name);
    list *l = get(count);
    ragged r = {l->n, malloc((l->n + 1) * sizeof(int)), wholes(name)};
    r.first[0] = 0;
    for (int i = 0; i < l->n; i++) r.first[i + 1] = r.first[i] + (int)l->v[i];
    return r;
}

/* ---- uniforms, quantiles, three-point figures ---- */

typedef unsigned __int128 u128;
typedef struct {
    u128 state;
} stream;

static inline stream new_stream(uint64_t seed, uint64_t index) { return (stream){(u128)seed << 64 | index}; }

static inline double uniform(stream *s) {
    const u128 mul = (u128)2549297995355413924u << 64 | 4865540595714422341u;
    const u128 inc = (u128)6364136223846793005u << 64 | 1442695040888963407u;
    s->state = s->state * mul + inc;
    uint64_t hi = s->state >> 64, lo = (uint64_t)s->state;
    hi ^= hi >> 32;
    hi *= 0xda942042e4dd58b5u;
    hi ^= hi >> 48;
    hi *= lo | 1;
    uint64_t bits = (uint64_t)0x3ff << 52 | hi >> 12;
    double v;
    memcpy(&v, &bits, sizeof v);
    return v - (1 - 0x1p-53);
}

static double quantile_tail(double q, double tail) {
    double r = sqrt(-log(tail)), x;
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

static inline double quantile(double p) {
    double q = p - 0.5;
    if (fabs(q) > 0.425) return quantile_tail(q, q > 0 ? 1 - p : p);
    double r = 0.180625 - q * q;
    return q * (((((((2.5090809287301226727e3 * r + 3.3430575583588128105e4) * r + 6.7265770927008700853e4) * r + 4.5921953931549871457e4) * r + 1.3731693765509461125e4) * r + 1.9715909503065514427e3) * r + 1.3314166789178437745e2) * r + 3.3871328727963666080e0) /
           (((((((5.2264952788528545610e3 * r + 2.8729085735721942674e4) * r + 3.9307895800092710610e4) * r + 2.1213794301586595867e4) * r + 5.3941960214247511077e3) * r + 6.8718700749205790830e2) * r + 4.2313330701600911252e1) * r + 1);
}

typedef struct {
    double likely, h, m, m2, k, sign; /* likely 0 = there is none */
} figure;

static inline double at(const figure *t, double s) {
    return t->likely * exp(t->h * s + t->sign * (sqrt(t->m2 + t->k * (s * s)) - t->m));
}

static inline int64_t thousandths(double h) { return (int64_t)(h * 1000 + 0.5); }
static inline int64_t minor(double v) { return (int64_t)(v + 0.5); }

/* a × b ÷ divisor, half away from zero */
static inline int64_t share(int64_t a, int64_t b, int64_t divisor) {
    __int128 p = (__int128)a * b;
    return (int64_t)(p < 0 ? -((-p + divisor / 2) / divisor) : (p + divisor / 2) / divisor);
}

/* ---- the tables ---- */

static int states, groups, group_levels, pocket_levels, car_levels, items, nuts, accesses, strips, afters, sents, openings, seams, aboves, panels, per_car;
static double *state_up_to, *group_chance, *pocket_chance, *car_term, *group_term, *side_term, *mu, *threshold, *lead_chance;
static double *own, *knock, *repaired, *kinds, *dent_chance, *found, *then, *missed, *hurt_from, *spared, *hurt_then, *spared_then;
static int *group_pockets, *item_drawn, *pocket_items, *class_of, *is_hidden, *joints;
static double *way_chance, *likely_metal, *handling, *supplies, *fixed, *whole, *nut_chance, *rate, *tax, *faces, *item_faces, *primers, *new_parts;
static int primer_count, new_part_count;
static double *panel_times, *panel_money;
static int *instead, *lines, *first_line, *line_trade, *once, *left_out, *opening_least, *opening_unless_least, *raise_to, *panel, *seam, *above, *access_rule, *nut_trade, *strip_rule, *after_trade, *sent_in;
static figure *line_hours, *price, *finding_hours, *above_hours, *access_hours, *access_price, *nut_hours, *strip_hours, *after_hours, *sent, *wire;
static ragged opening_if, opening_unless, opening_raise, covers, access_items, access_unless, access_covers;
static int lifted_in_strip;

static figure *figures(const char *name) { return (figure *)reals(name); }

static void set_damage(void) {
    state_up_to = reals("state_up_to"), states = size("state_up_to");
    group_pockets = wholes("group_pockets"), groups = size("group_pockets"), group_chance = reals("group_chance");
    pocket_items = wholes("pocket_items");
    pocket_chance = reals("pocket_chance"), pocket_levels = size("pocket_chance") / size("pocket_items");
    car_term = reals("car_term"), car_levels = size("car_term") / CLASSES, group_levels = size("group_term") / CLASSES;
    group_term = reals("group_term"), side_term = reals("side_term"), mu = reals("mu"), threshold = reals("threshold"), lead_chance = reals("lead_chance");
    item_drawn = wholes("item_drawn"), items = size("item_drawn");
    class_of = wholes("item_class"), is_hidden = wholes("item_hidden"), joints = wholes("item_lead_joints");
    own = reals("item_own"), knock = reals("item_knock"), repaired = reals("item_repaired"), kinds = reals("item_kinds");
    dent_chance = reals("item_dent"), found = reals("item_found_replaced"), then = reals("condition_then");
    spared = reals("item_spared"), hurt_then = reals("item_hurt_then"), spared_then = reals("item_spared_then");
    if (items > MOST) stop("too many items", "");
}

/* the chance that a thoroughly restored car's item was not reached, and the uniforms from
 * which on an item has a cause of its own: [level][as the car is, since the work][item] */
static void set_chances(void) {
    double *kept = reals("item_kept"), *hurt = reals("item_hurt"), *times = reals("cause_times");
    int rows = size("cause_times");
    missed = malloc(items * sizeof *missed), hurt_from = malloc(rows * items * sizeof *hurt_from);
    for (int i = 0; i < items; i++) missed[i] = kept[i * STRATA + NOT_REACHED] / (kept[i * STRATA + NOT_REACHED] + kept[i * STRATA + RENEWED]);
    for (int row = 0; row < rows; row++)
        for (int i = 0; i < items; i++) hurt_from[row * items + i] = 1 - hurt[i] * times[row];
}

static void set_items(void) {
    way_chance = reals("way_chance"), instead = wholes("way_instead"), lines = wholes("way_lines"), line_trade = wholes("way_line_trade");
    line_hours = figures("way_line_hours"), price = figures("way_price"), likely_metal = reals("way_likely_metal");
    once = wholes("item_once"), left_out = wholes("item_left_out"), finding_hours = figures("finding_hours");
    first_line = malloc((items * WAYS + 1) * sizeof *first_line), first_line[0] = 0;
    for (int i = 0; i < items * WAYS; i++) first_line[i + 1] = first_line[i] + lines[i];
    opening_if = raggeds("opening_if"), opening_unless = raggeds("opening_unless"), opening_raise = raggeds("opening_raise"), openings = opening_if.n;
    opening_least = wholes("opening_at_least"), opening_unless_least = wholes("opening_unless_at_least"), raise_to = wholes("opening_raise_to");
    covers = raggeds("covers"), panel = wholes("panels"), panels = size("panels"), panel_times = reals("panel_times"), panel_money = reals("panel_money"), seam = wholes("seams"), seams = size("seams") / 2;
    above = wholes("above"), aboves = size("above") / 4, above_hours = figures("above_hours");
}

static void set_rest(void) {
    access_items = raggeds("access_items"), access_unless = raggeds("access_unless"), access_covers = raggeds("access_covers"), accesses = access_items.n;
    access_rule = wholes("access_rule"), access_hours = figures("access_hours"), access_price = figures("access_price");
    nut_trade = wholes("nut_trade"), nuts = size("nut_trade"), nut_hours = figures("nut_hours"), nut_chance = reals("nut_chance");
    lifted_in_strip = wholes("lifted_in_strip")[0];
    strip_rule = wholes("strip_rule"), strips = size("strip_rule") / 4, strip_hours = figures("strip_hours");
    after_trade = wholes("after_trade"), afters = size("after_trade"), after_hours = figures("after_hours");
    rate = reals("rate"), sent = figures("sent_price"), sent_in = wholes("sent_in_strip"), sents = size("sent_in_strip");
    handling = reals("handling"), supplies = reals("supplies"), tax = reals("tax"), fixed = reals("fixed"), wire = figures("wire_week_wait"), whole = reals("whole_car");
    faces = reals("faces"), item_faces = reals("item_faces"), primers = reals("primers"), primer_count = size("primers") / 3;
    new_parts = reals("new_parts"), new_part_count = size("new_parts") / 3;
    per_car = (int)whole[6];
    if (strips > MOST || nuts > MOST || accesses > MOST || sents > MOST || afters > MOST) stop("too many lines", "");
}

/* ---- drawing ---- */

typedef struct {
    int level;
    uint8_t condition[MOST], finding[MOST], dent[MOST], own_cause[MOST], lead[MOST];
} imagined;

static inline int find(const double *up_to, int n, double u) {
    int low = 0, high = n - 1;
    while (low < high) {
        int mid = (low + high) / 2;
        if (u < up_to[mid]) high = mid;
        else low = mid + 1;
    }
    return low;
}

/* Running sums in place, with no upper end from the last possible level on, and for each
 * of so many even steps of a uniform the level from which on to seek. */
enum { RUNGS = 64 };
typedef struct {
    const double *up_to;
    int from[RUNGS];
} ladder;

static ladder *group_ladder, *pocket_ladder;

static ladder *ladders(double *chance, int rows, int levels) {
    ladder *all = malloc(rows * sizeof *all);
    for (ladder *l = all; rows > 0; rows--, chance += levels, l++) {
        int last = levels - 1, n = 0;
        while (last > 0 && chance[last] == 0) last--;
        for (int i = 1; i < levels; i++) chance[i] += chance[i - 1];
        for (int i = last; i < levels; i++) chance[i] = 2;
        for (int k = 0; k < RUNGS; l->from[k++] = n)
            while (chance[n] <= (double)k / RUNGS) n++;
        l->up_to = chance;
    }
    return all;
}

static inline int pick_level(const ladder *l, double u) {
    int n = l->from[(int)(u * RUNGS)];
    while (u >= l->up_to[n]) n++;
    return n;
}

/* six chances to running sums, with no upper end from the last possible one on */
static void run_up(double *p, int rows) {
    for (; rows > 0; rows--, p += 6) {
        int last = 0;
        for (int k = 0; k < 6; k++)
            if (p[k] > 0) last = k;
        for (int k = 1; k < 6; k++) p[k] += p[k - 1];
        for (int k = last; k < 6; k++) p[k] = 2;
    }
}

static inline int pick_six(const double *up_to, double u) { return (u >= up_to[0]) + (u >= up_to[1]) + (u >= up_to[2]) + (u >= up_to[3]) + (u >= up_to[4]); }

/* Quantiles at even steps of the uniform: where both ends of a step give one condition,
 * as they mostly do, the exact quantile is not needed. The ends lie a little outside. */
enum { CELLS = 256 };
static double between[CELLS][2];

static void set_between(void) {
    between[0][0] = -39, between[CELLS - 1][1] = 39;
    for (int k = 1; k < CELLS; k++) {
        double x = quantile((double)k / CELLS);
        between[k - 1][1] = x + 1e-9, between[k][0] = x - 1e-9;
    }
}

static inline int step(const double *th, double y) { return (y >= th[0]) + (y >= th[1]) + (y >= th[2]) + (y >= th[3]) + (y >= th[4]); }

static inline int condition_of(int i, double x, double u) {
    const double *th = threshold + 5 * is_hidden[i], *near = between[(int)(u * CELLS)];
    int k = step(th, x + own[i] * near[0]);
    if (k == 5 || x + own[i] * near[1] < th[k]) return k;
    return step(th, x + own[i] * quantile(u));
}

/* what a cause of its own makes of rust k */
static inline int after_cause(imagined *c, int i, int k, double from, double u) {
    c->own_cause[i] = 0;
    if (u < spared[i]) return pick_six(spared_then + i * CONDITIONS, u / spared[i]);
    if (u < from) return k;
    int worse = pick_six(hurt_then + i * CONDITIONS, (u - from) / (1 - from));
    if (worse <= k) return k;
    c->own_cause[i] = 1;
    return worse;
}

/* the rows of a level: medians by reading, where causes begin as the car is and since the work */
typedef struct {
    const double *mu[READINGS], *hurt_from[2];
} rows;

static inline void draw_item(stream *s, imagined *c, const rows *at, int i, double luck, int repair) {
    double u_rust = uniform(s), u_cause = uniform(s), u_repair = uniform(s), u_then = uniform(s), u_dent = uniform(s);
    int of = i * STRATA + repair, reading = repair == LOOKS ? PAINTED_AGAIN : AS_IT_IS, since = 0;
    double k0 = knock[of];
    c->dent[i] = u_dent < dent_chance[of];
    if (u_repair < k0) {
        c->finding[i] = REPLACED, c->condition[i] = pick_six(then + REPLACED * CONDITIONS, u_then), c->own_cause[i] = 0;
        return;
    }
    if (repair == THOROUGH) {
        u_repair = (u_repair - k0) / (1 - k0), k0 = 0;
        if (u_repair < missed[i]) {
            u_repair /= missed[i];
        } else {
            u_repair = (u_repair - missed[i]) / (1 - missed[i]);
            of = i * STRATA + RENEWED, reading = AS_RENEWED, since = 1;
            c->dent[i] = u_dent < dent_chance[of];
        }
    }
    int k = after_cause(c, i, condition_of(i, at->mu[reading][i] + luck, u_rust), at->hurt_from[since][i], u_cause);
    c->finding[i] = since && u_repair < found[of] ? REPLACED : NONE, c->condition[i] = k;
    if (k < 3 || since) return;
    double u = (u_repair - k0) / (1 - k0);
    if (u >= repaired[of]) return;
    u /= repaired[of];
    int f = PATCHED;
    for (const double *of_kind = kinds + of * FINDINGS; f < REPLACED && u >= of_kind[f]; f++) u -= of_kind[f];
    c->finding[i] = f, c->condition[i] = pick_six(then + f * CONDITIONS, u_then), c->own_cause[i] = 0;
}

static void draw(stream *s, imagined *c) {
    static int p[MOST], q[MOST];
    int state = find(state_up_to, states, uniform(s)), pocket = 0, drawn = 0;
    for (int g = 0; g < groups; g++) {
        p[g] = pick_level(&group_ladder[g], uniform(s));
        for (int n = 0; n < group_pockets[g]; n++, pocket++)
            q[pocket] = pick_level(&pocket_ladder[pocket], uniform(s));
    }
    int repair = state % REPAIRS, car_level = state / REPAIRS % car_levels;
    c->level = state / REPAIRS / car_levels;
    rows at;
    for (int r = 0; r < READINGS; r++) at.mu[r] = mu + (c->level * READINGS + r) * items;
    for (int r = 0; r < 2; r++) at.hurt_from[r] = hurt_from + (c->level * 2 + r) * items;
    pocket = 0;
    for (int g = 0; g < groups; g++)
        for (int n = 0; n < group_pockets[g]; n++, pocket++) {
            double luck[CLASSES];
            for (int k = 0; k < CLASSES; k++)
                luck[k] = car_term[k * car_levels + car_level] + group_term[k * group_levels + p[g]] + side_term[k * pocket_levels + q[pocket]];
            for (int last = drawn + pocket_items[pocket]; drawn < last; drawn++) {
                int i = item_drawn[drawn];
                draw_item(s, c, &at, i, luck[class_of[i]], repair);
            }
        }
    double failed = lead_chance[c->level];
    for (int i = 0; i < items; i++) {
        c->lead[i] = 0;
        for (int n = joints[i]; n > 0; n--) c->lead[i] += uniform(s) < failed;
    }
}

/* ---- what is done ---- */

typedef struct {
    double car[2], wire, week, wait;
    double way[MOST], hours[MOST], price[MOST], sent[MOST], strip[MOST], access[MOST], pay[MOST], nut[MOST], nut_hours[MOST], after[MOST];
} uniforms;

static inline void fill(stream *s, double *v, int n) {
    for (int i = 0; i < n; i++) v[i] = uniform(s);
}

static void fill_all(stream *s, uniforms *u) {
    fill(s, u->car, 2);
    u->wire = uniform(s), u->week = uniform(s), u->wait = uniform(s);
    fill(s, u->way, items), fill(s, u->hours, items), fill(s, u->price, items);
    fill(s, u->sent, sents), fill(s, u->strip, strips), fill(s, u->access, accesses), fill(s, u->pay, accesses);
    fill(s, u->nut, nuts), fill(s, u->nut_hours, nuts), fill(s, u->after, afters);
}

typedef struct {
    uint8_t way[MOST], covered[MOST], credit[MOST];
    int64_t after[TRADES], strip[TRADES], billed[TRADES], parts;
    double factor[TRADES], new_area;
} bill;

static inline int any_at_least(const bill *b, const ragged *r, int row, int least) {
    for (int n = r->first[row]; n < r->first[row + 1]; n++)
        if (b->way[r->item[n]] >= least) return 1;
    return 0;
}

static void draw_ways(const imagined *c, const uniforms *u, bill *b) {
    memset(b->covered, 0, items), memset(b->credit, 0, items);
    for (int i = 0; i < items; i++)
        b->way[i] = left_out[i] ? LEAVE : instead[i * WAYS + pick_six(way_chance + (i * CONDITIONS + c->condition[i]) * WAYS, u->way[i])];
}

static void raise_ways(bill *b) {
    for (int changed = 1; changed;) {
        changed = 0;
        for (int k = 0; k < openings; k++) {
            if (!any_at_least(b, &opening_if, k, opening_least[k]) || any_at_least(b, &opening_unless, k, opening_unless_least[k])) continue;
            for (int n = opening_raise.first[k]; n < opening_raise.first[k + 1]; n++) {
                int i = opening_raise.item[n], to = instead[i * WAYS + raise_to[n]];
                if (b->way[i] < raise_to[n] && b->way[i] < to) b->way[i] = to, changed = 1;
            }
        }
    }
}

static int needed(const bill *b, int k) {
    const int *rule = access_rule + 5 * k;
    if (any_at_least(b, &access_unless, k, rule[2])) return 0;
    for (int n = access_items.first[k]; n < access_items.first[k + 1]; n++) {
        int way = b->way[access_items.item[n]];
        if (way == rule[0] || (!rule[1] && way > rule[0])) return 1;
    }
    return 0;
}

/* What the pieces of a full panel cost, at the edges of cells of the uniforms that set
   it: that settles nearly every comparison before any of them is worked out. */
enum { COST_CELLS = 4 + 14 + 4 };
typedef struct {
    double labour[WAYS][COST_CELLS + 1], part[WAYS][COST_CELLS + 1];
    int made;
} brackets;
static brackets bracket[MOST];

static inline int cost_cell(double u) { return u < 1. / 16 ? (int)(u * 64) : u < 15. / 16 ? 3 + (int)(u * 16) : 18 + (int)((u - 15. / 16) * 64); }
static double cost_edge(int k) { return k < 4 ? k / 64. : k < 18 ? (k - 3) / 16. : 15. / 16 + (k - 18) / 64.; }

static double labour_cost(int way, double s) {
    double sum = 0;
    for (int n = first_line[way]; n < first_line[way + 1]; n++) sum += panel_money[line_trade[n]] * at(&line_hours[n], s);
    return sum;
}

static double part_cost(int way, double s) { return price[way].likely > 0 ? panel_money[TRADES] * at(&price[way], s) : 0; }

static void set_bracket(int i) {
    brackets *x = &bracket[i];
    if (x->made) return;
    x->made = 1;
    for (int w = 0; w < WAYS; w++) {
        for (int k = 1; k < COST_CELLS; k++) {
            double s = quantile(cost_edge(k)) / whole[5];
            x->labour[w][k] = labour_cost(i * WAYS + w, s), x->part[w][k] = part_cost(i * WAYS + w, s);
        }
        x->labour[w][COST_CELLS] = lines[i * WAYS + w] ? INFINITY : 0;
        x->part[w][COST_CELLS] = price[i * WAYS + w].likely > 0 ? INFINITY : 0;
    }
}

static void set_panels(void) {
    for (int k = 0; k < panels; k++) {
        set_bracket(panel[k]);
        for (int n = covers.first[panel[k]]; n < covers.first[panel[k] + 1]; n++) set_bracket(covers.item[n]);
    }
}

static inline void add_bracket(const uniforms *u, int i, int w, double *low, double *high) {
    int h = cost_cell(u->hours[i]), p = cost_cell(u->price[i]);
    *low += bracket[i].labour[w][h] + bracket[i].part[w][p], *high += bracket[i].labour[w][h + 1] + bracket[i].part[w][p + 1];
}

static double cost_at(const uniforms *u, int i, int w) {
    return labour_cost(i * WAYS + w, quantile(u->hours[i]) / whole[5]) + part_cost(i * WAYS + w, quantile(u->price[i]) / whole[5]);
}

static int pieces_cost_more(const uniforms *u, const bill *b, int p) {
    double least = 0, most = 0, low = 0, high = 0, times = panel_times[0];
    int from = covers.first[p], to = covers.first[p + 1];
    if (b->way[p] > LEAVE) add_bracket(u, p, b->way[p], &least, &most);
    for (int n = from; n < to; n++) {
        int i = covers.item[n];
        if (b->way[i] > LEAVE && !b->covered[i]) add_bracket(u, i, b->way[i], &least, &most);
    }
    add_bracket(u, p, FULL, &low, &high);
    if (most <= low * times) return 0;
    if (least > high * times) return 1;
    double sum = cost_at(u, p, b->way[p]);
    for (int n = from; n < to; n++) {
        int i = covers.item[n];
        if (!b->covered[i]) sum += cost_at(u, i, b->way[i]);
    }
    return sum > cost_at(u, p, FULL) * times;
}

static void drop_covered(const uniforms *u, bill *b) {
    int any = 0;
    for (int i = 0; i < items; i++)
        if (b->way[i] == FULL)
            for (int n = covers.first[i]; n < covers.first[i + 1]; n++) b->covered[covers.item[n]] = 1, any = 1;
    for (int k = 0; k < panels; k++) {
        int p = panel[k];
        if (b->way[p] >= FULL || b->covered[p] || !pieces_cost_more(u, b, p)) continue;
        b->way[p] = FULL;
        for (int n = covers.first[p]; n < covers.first[p + 1]; n++) b->covered[covers.item[n]] = 1, any = 1;
    }
    for (int k = 0; k < accesses; k++)
        if (access_covers.first[k] < access_covers.first[k + 1] && needed(b, k))
            for (int n = access_covers.first[k]; n < access_covers.first[k + 1]; n++) b->covered[access_covers.item[n]] = 1, any = 1;
    if (!any) return;
    for (int i = 0; i < items; i++)
        if (b->covered[i] && !(once[i] && b->way[i] == FULL)) b->way[i] = LEAVE;
}

static void replaced_area(bill *b) {
    b->new_area = 0;
    for (int i = 0; i < items; i++)
        if (b->covered[i] || b->way[i] >= FULL) b->new_area += item_faces[i];
}

static void credit_seams(bill *b) {
    for (int n = 0; n < seams; n++) {
        int x = seam[2 * n], y = seam[2 * n + 1];
        if (b->way[x] < FULL + once[x] || b->way[y] < FULL + once[y]) continue;
        b->credit[likely_metal[x * WAYS + b->way[x]] < likely_metal[y * WAYS + b->way[y]] ? x : y] = 1;
    }
}

/* ---- hours and money ---- */

static void set_factors(const uniforms *u, bill *b) {
    double metal = quantile(u->car[0]), other = whole[2] * metal + whole[3] * quantile(u->car[1]);
    double rest = exp(whole[1] * other);
    for (int t = 0; t < TRADES; t++) b->factor[t] = rest;
    b->factor[METAL] = exp(whole[0] * metal);
}

static inline void add(bill *b, int trade, double hours) { b->after[trade] += thousandths(hours * b->factor[trade]); }

static void work_items(const imagined *c, const uniforms *u, bill *b) {
    double q90 = whole[5], kept = 1 - whole[4];
    for (int i = 0; i < items; i++) {
        if (b->covered[i]) continue;
        int way = i * WAYS + b->way[i];
        int extra = b->way[i] < FULL && !left_out[i] && (c->finding[i] == PATCHED || c->finding[i] == FILLED || c->dent[i] || c->lead[i]);
        if (lines[way] == 0 && !extra) continue;
        double s = quantile(u->hours[i]) / q90;
        for (int n = first_line[way]; n < first_line[way + 1]; n++) {
            double h = at(&line_hours[n], s);
            if (b->credit[i] && line_trade[n] == METAL) h *= kept;
            add(b, line_trade[n], h);
        }
        if (extra) {
            if (c->finding[i] == PATCHED || c->finding[i] == FILLED) add(b, METAL, at(&finding_hours[c->finding[i] - PATCHED], s));
            if (c->dent[i]) add(b, METAL, at(&finding_hours[2], s));
            for (int n = c->lead[i]; n > 0; n--) add(b, METAL, at(&finding_hours[3], s));
        }
        if (price[way].likely > 0) b->parts += minor(at(&price[way], quantile(u->price[i]) / q90));
    }
    for (int k = 0; k < aboves; k++) {
        int brace = above[4 * k], floor = above[4 * k + 1];
        if (b->way[brace] >= above[4 * k + 2] && !b->covered[brace] && b->way[floor] <= above[4 * k + 3] && !b->covered[floor])
            add(b, METAL, at(&above_hours[k], quantile(u->hours[brace]) / q90));
    }
}

static void work_car(const imagined *c, const uniforms *u, bill *b) {
    double q90 = whole[5];
    int lifted = lifted_in_strip;
    for (int k = 0; k < accesses; k++) {
        if (!needed(b, k)) continue;
        lifted |= access_rule[5 * k + 4];
        add(b, access_rule[5 * k + 3], at(&access_hours[k], quantile(u->access[k]) / q90));
        if (access_price[k].likely > 0) b->parts += minor(at(&access_price[k], quantile(u->pay[k]) / q90));
    }
    for (int k = 0; lifted && k < nuts; k++)
        if (u->nut[k] < nut_chance[c->level]) add(b, nut_trade[k], at(&nut_hours[k], quantile(u->nut_hours[k]) / q90));
    for (int k = 0; k < afters; k++) add(b, after_trade[k], at(&after_hours[k], quantile(u->after[k]) / q90));
    for (int k = 0; k < strips; k++) {
        const int *rule = strip_rule + 4 * k; /* trade, ceiling, left to the customer, charged as worked */
        if (rule[2]) continue;
        int64_t worked = thousandths(at(&strip_hours[k], quantile(u->strip[k]) / q90) * b->factor[rule[0]]);
        b->strip[rule[0]] += worked;
        if (rule[3]) b->billed[rule[0]] += rule[1] >= 0 && worked > rule[1] ? rule[1] : worked;
    }
}

static int64_t coats(const double *list, int n, double area) {
    int64_t sum = 0;
    for (int k = 0; k < n; k++) sum += share((int64_t)list[3 * k + 1], (int64_t)(list[3 * k] * area + 0.5), (int64_t)list[3 * k + 2]);
    return sum;
}

typedef struct {
    int64_t total, tax, hours, weeks, replaced, own_cause;
} priced;

static priced set_price(const uniforms *u, const bill *b) {
    double q90 = whole[5];
    int64_t divisor = rate[TRADES], labour = 0, as_worked = 0, hours = 0, in = 0, out = 0;
    for (int t = 0; t < TRADES; t++) {
        as_worked += share(rate[t], b->billed[t], divisor);
        labour += share(rate[t], b->after[t], divisor);
        hours += b->strip[t] + b->after[t];
    }
    int64_t least = fixed[3] > hours ? share(rate[METAL], (int64_t)fixed[3] - hours, divisor) : 0;
    for (int k = 0; k < sents; k++)
        if (sent[k].likely > 0) *(sent_in[k] ? &in : &out) += minor(at(&sent[k], quantile(u->sent[k]) / q90));
    in += share(handling[1], in, 100000000), out += share(handling[1], out, 100000000);
    int64_t used = 0, parts = b->parts + share(handling[0], b->parts, 100000000);
    if (wire[0].likely > 0) used = minor(at(&wire[0], quantile(u->wire) / q90) * fixed[4] * b->after[METAL] / 1000);
    int64_t all_labour = labour + fixed[0] + as_worked + least, small = 0;
    if (supplies[0] > 0) small = share(supplies[1], all_labour, 100000000);
    if (supplies[2] > 0 && small > supplies[3]) small = supplies[3];
    int64_t kind[5] = {all_labour, (int64_t)fixed[1] + (int64_t)fixed[2] + used + coats(primers, primer_count, faces[0] - b->new_area) + coats(new_parts, new_part_count, b->new_area), parts, small, in + out}, base = 0;
    priced x = {.hours = hours};
    for (int k = 0; k < 5; k++) {
        x.total += kind[k];
        if (tax[1 + k] > 0) base += kind[k];
    }
    x.tax = share(tax[0], base, 100000000);
    double weeks = (double)hours / 1000 / at(&wire[1], quantile(u->week) / q90);
    if (wire[2].likely > 0) weeks += at(&wire[2], quantile(u->wait) / q90);
    x.weeks = (int64_t)(weeks * 1000 + 0.5);
    return x;
}

static void count_items(const imagined *c, priced *x) {
    int replaced = 0, own_cause = 0;
    for (int i = 0; i < items; i++) replaced += c->finding[i] == REPLACED, own_cause += c->own_cause[i];
    x->replaced = replaced, x->own_cause = own_cause;
}

static priced car(uint64_t seed, int n) {
    const uint64_t spread = 0x9E3779B97F4A7C15u;
    static imagined c;
    static uniforms u;
    static bill b;
    stream damaged = new_stream(seed, (2 * (uint64_t)n + 1) * spread), work = new_stream(seed, (2 * (uint64_t)n + 2) * spread);
    draw(&damaged, &c);
    fill_all(&work, &u);
    memset(b.after, 0, sizeof b.after), memset(b.strip, 0, sizeof b.strip), memset(b.billed, 0, sizeof b.billed), b.parts = 0;
    draw_ways(&c, &u, &b);
    raise_ways(&b);
    drop_covered(&u, &b);
    replaced_area(&b);
    credit_seams(&b);
    set_factors(&u, &b);
    work_items(&c, &u, &b);
    work_car(&c, &u, &b);
    priced x = set_price(&u, &b);
    count_items(&c, &x);
    return x;
}

/* ---- requests ---- */

static int64_t now(void) {
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (int64_t)t.tv_sec * 1000000000 + t.tv_nsec;
}

static void show(const priced *x) {
    printf("%" PRId64 " %" PRId64 " %" PRId64 " %" PRId64 " %" PRId64 " %" PRId64 "\n", x->total, x->tax, x->hours, x->weeks, x->replaced, x->own_cause);
}

int main(int argc, char **argv) {
    if (argc != 2) stop("expected a flat file", "");
    read_flat(argv[1]);
    set_between(), set_damage(), set_chances(), set_items(), set_rest(), set_panels();
    run_up(way_chance, items * CONDITIONS), run_up(then, FINDINGS), run_up(hurt_then, items), run_up(spared_then, items);
    group_ladder = ladders(group_chance, groups, group_levels), pocket_ladder = ladders(pocket_chance, size("pocket_items"), pocket_levels);
    char line[64], what[8];
    uint64_t seed;
    int n;
    while (fgets(line, sizeof line, stdin)) {
        if (sscanf(line, "%7s %" SCNu64 " %d", what, &seed, &n) != 3) stop("expected show or time: ", line);
        priced sum = {0};
        int64_t begun = now();
        for (int k = 0; k < n; k++) {
            priced x = car(seed, k);
            if (what[0] == 's') show(&x);
            sum.total += x.total, sum.hours += x.hours, sum.weeks += x.weeks, sum.replaced += x.replaced, sum.own_cause += x.own_cause;
        }
        if (what[0] == 't')
            printf("%" PRId64 " %" PRId64 " %" PRId64 " %" PRId64 " %" PRId64 " %" PRId64 "\n", now() - begun, sum.total, sum.hours, sum.weeks, sum.replaced, sum.own_cause);
        fflush(stdout);
    }
}
