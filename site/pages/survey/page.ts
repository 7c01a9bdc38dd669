// The shop's page "This car": ties the car in hand, the engine and the views
// together. Read record.js for what is recorded and list.js for how.

import "../shared/trustedtypes.ts";
import "../shared/refuseframing.ts";
import { EngineClient } from "../shared/engineclient.ts";
import { Frame } from "../shared/frame.ts";
import {
  band,
  brokenBand,
  mistakeBand,
  notesBand,
  originBand,
  pastBand,
  restartedBand,
} from "../shared/bands.ts";
import { questions } from "../shared/questions.ts";
import { toShare, today } from "../shared/linkcontent.ts";
import { MOST_CHARACTERS as MOST_LINK, carriesCar, encode } from "../shared/carurl.ts";
import { whenDropped } from "../shared/files.ts";
import { openShop } from "../shared/openshop.ts";
import { startOffline, watchConnection } from "../shared/offline.ts";
import { unfoldForPaper } from "../shared/paper.ts";
import { shopStore } from "../shared/durablestorage.ts";
import { Job } from "./opencar.ts";
import { Keeping } from "./savepanel.ts";
import { Strip } from "./strip.ts";
import { Views } from "./views.ts";
import { foundBand, fromLink, linkProblem, openFile } from "../shared/thiscar/start.ts";
import { HistoryState } from "../shared/historystate.ts";
import { ofBuild } from "../shared/address.ts";

const frame = new Frame();
const shop = { opened: null, q: questions("us") };

const link = new EngineClient(
  {
    loading: (bytes) => frame.loading(bytes),
    restarted: () => frame.put("engine", restartedBand()),
    mistake: (text) => frame.put("mistake", mistakeBand(text)),
  },
  "engine.wasm",
  ["before_after", "worth", "wide", "plan", "compare_ways", "look_again"],
);
const job = new Job({
  link,
  rates: () => shop.opened.rates.check_code,
  keep: () => {
    keeping.keep();
    memory.later();
  },
  told,
  failed,
});
const keeping = new Keeping({
  job,
  frame,
  rates: () => shop.opened.rates,
  reply: () => strip.reply,
  goOn,
  again,
});
const strip = new Strip(job, { link, odds: (on, text) => views.saidOdds(on, text) });
const views = new Views({ job, shop, link, frame, strip, keeping, take, sample, failed, answered });
const memory = new HistoryState(() =>
  job.car ? { car: job.car, ways: job.ways, from: job.from, kept: keeping.on } : null,
);

/** Something of the car changed: what is shown of it follows. */
function told(what) {
  if (what === "tally") {
    frame.put("refused", null);
    faultBand();
    views.counted();
    return;
  }
  if (what === "sheet") {
    views.show({ focus: false });
    return;
  }
  if (!views.isList) strip.want(null);
}

/** Faults that no part of the list shows. */
function faultBand() {
  const shown = new Set(Object.keys(job.sheet.items));
  const rest = (job.tally.faults ?? []).filter((f) => !shown.has(f.on) && !/^looks\[/.test(f.path));
  frame.put(
    "faults",
    rest.length ? band("faults", ["These entries do not count:", ...rest.map((f) => f.text)]) : null,
  );
}

/** A refusal of the whole car, or an engine that did not answer. */
function failed(reply) {
  if (reply === null)
    frame.put(
      "refused",
      band("refused", [
        "The sums did not answer. What is recorded is safe; the counts follow with the next entry.",
      ]),
    );
  else if (reply.kind === "broken") frame.put("refused", brokenBand(reply.text));
  else
    frame.put(
      "refused",
      band("refused", [reply.text, "No figure and no count is shown until this is put right."]),
    );
}

/** Opens a car: checked by the engine before anything of it is shown. */
async function take(car, from, { ways = {}, kept = null, again = false } = {}) {
  frame.put("arrival", null);
  let sheet;
  try {
    sheet = await link.ask({ ask: "sheet", car });
  } catch {
    frame.put(
      "arrival",
      band("arrival", ["This car could not be opened: the sums are not ready. Try once more in a moment."]),
    );
    return false;
  }
  if (sheet.kind !== "sheet") {
    refusedArrival(car, from, sheet);
    return false;
  }
  keeping.stop();
  frame.put("found", null);
  frame.put("tabs", null);
  job.take(car, sheet, from, ways);
  keeping.opened({ again });
  if (kept) keeping.goOn(kept);
  else keeping.keep();
  memory.later();
  job.count();
  notes = [];
  carBands();
  views.opened(Boolean(from?.kind === "link" || from?.kind === "file"));
  if (from?.kind === "sample" || from?.kind === "blank") return true;
  link.ask({ ask: "check_car", car }).then(
    (reply) => {
      if (job.car && reply.kind === "car_ok") {
        notes = reply.notes ?? [];
        carBands();
      }
    },
    () => {
      /* The car stands without. */
    },
  );
  return true;
}

/** What the file of this car did not say, and the answer that each is about. */
let notes = [];
/** An answer was changed: what was said of the old one does not hold any more. */
function answered(field) {
  notes = notes.filter((n) => fieldOf(n.path) !== field);
  carBands();
}
const fieldOf = (path) =>
  ({ covered: "covered", earlier_work_year: "earlier_year" })[path] ?? `kept${/\d+/.exec(path)?.[0] ?? 0}`;

/** A customer who was not sure of the body: one is chosen, the rest stays. */
function refusedArrival(car, from, reply) {
  const several = reply.path === "bodies" && car?.bodies?.length > 1;
  frame.put(
    "arrival",
    band(
      "arrival",
      several
        ? ["The customer was not sure of the body. Which is it? The other answers stay."]
        : ["This car could not be opened.", reply.text],
      several
        ? car.bodies.map((id) => [
            shop.opened.bodies.find((b) => b.id === id)?.name ?? id,
            () => take({ ...car, bodies: [id] }, from),
          ])
        : [],
    ),
  );
}

/** The bands that belong to the car in hand. */
function carBands() {
  const { car, from } = job;
  const unchecked = car && from && !car.answers_checked && (from.kind === "link" || from.kind === "file");
  const shown = unchecked || (car && from?.kind === "sample");
  frame.put("origin", shown ? originBand(from, shop.opened, { again }) : null);
  frame.put("notes", car ? notesBand(notes, car, shop.q, (_, path) => views.answer(fieldOf(path))) : null);
  frame.put("past", car && shop.opened.rates.valid_until < today() ? pastBand(shop.opened.rates) : null);
}

function goOn(found) {
  return take(found.car, found.from ?? null, { ways: found.ways, kept: found });
}

async function sample() {
  const response = await fetch(ofBuild("samples/two-door.json"));
  await take(await response.json(), { kind: "sample" });
}

/** Puts this car down. What is kept stays kept, and is offered again. */
function again() {
  if (!keeping.on && job.car && !confirmLeave()) return;
  keeping.stop();
  job.car = null;
  memory.forget();
  carBands();
  offerFound();
  views.start();
}

/** A car that is kept nowhere is let go only when that is said twice. */
let asked = false;
function confirmLeave() {
  if (asked || job.from?.kind === "sample") {
    asked = false;
    return true;
  }
  asked = true;
  frame.put(
    "leave",
    band(
      "leave",
      ["This car is not kept on this device. Beginning another one loses it."],
      [
        [
          "Lose it and begin another",
          () => {
            frame.put("leave", null);
            again();
          },
        ],
        [
          "Stay with this car",
          () => {
            asked = false;
            frame.put("leave", null);
          },
        ],
      ],
    ),
  );
  scrollTo(0, 0);
  return false;
}

function offerFound() {
  frame.put(
    "found",
    foundBand({ goOn, erased: () => frame.put("found", null) }, (car) => link.ask({ ask: "tally", car })),
  );
}

async function begin() {
  if (carriesCar(location.hash)) {
    await fromAddress();
    if (job.car) return;
  }
  const state = memory.found();
  const kept = shopStore.load();
  if (state?.kept && kept && kept !== "unreadable") {
    if (await goOn(kept)) return;
  }
  if (state?.car && (await take(state.car, state.from, { ways: state.ways, again: true }))) return;
  offerFound();
  views.start(false);
}

/** Opens the car in the address, once, and takes it out of the address. */
async function fromAddress() {
  const fragment = location.hash;
  history.replaceState(history.state, "", location.pathname + location.search);
  try {
    const { car, from } = await fromLink(fragment);
    await take(car, from);
  } catch (error) {
    frame.put("arrival", band("arrival", [linkProblem(error)]));
  }
}

async function begun(reply) {
  shop.opened = reply;
  shop.q = questions(reply.words);
  await shopStore.settle();
  await begin();
}

/** The talk about the width takes the car along, kept or not. */
document.querySelector('footer a[href="../why/"]').addEventListener("click", async (event) => {
  if (!job.car || !shop.opened || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  const fragment = await encode(toShare(job.car, null, shop.opened.rates, today())).catch(() => "");
  keeping.takenAlong = true;
  // So much may be recorded that no link holds it: the talk then takes what is kept.
  location.href = `../why/${fragment.length <= MOST_LINK ? fragment : ""}`;
});
unfoldForPaper(document.body);
watchConnection((off) => frame.connection(off));
whenDropped(document.body, (file) => {
  if (shop.opened) openFile(file, { take, failed: (text) => frame.put("arrival", band("arrival", [text])) });
});
addEventListener("hashchange", () => {
  if (!shop.opened) return;
  if (carriesCar(location.hash)) fromAddress();
  else views.show({ focus: true });
});
openShop({ frame, engine: link }, begun).finally(() =>
  startOffline(
    () => !job.car && !location.hash,
    (load) =>
      frame.put(
        "newer",
        band(
          "newer",
          ["A newer version of this page is ready. What is recorded stays."],
          [["Load it", load]],
        ),
      ),
    "../",
  ),
);
