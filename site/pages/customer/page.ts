// The customer's page: ties the visit, the engine and the screens together.
// Read flow.js for the order of questions and result.js for the range.

import "../shared/trustedtypes.ts";
import { EngineClient } from "../shared/engineclient.ts";
import { Ranging } from "../shared/ranging.ts";
import { Visit } from "./visithistory.ts";
import { questions } from "../shared/questions.ts";
import { afterRange, nextStep, stepOfPath } from "../shared/flow.ts";
import { blankCar, isComplete, shownByQuestions } from "../shared/car.ts";
import { screenFor } from "./screens.ts";
import { ResultPage, exchange } from "./result.ts";
import { rangeFigure, spokenRange } from "./range.ts";
import { basisSection } from "./basis.ts";
import { coverSection } from "./cover.ts";
import { askedFolds } from "./folds.ts";
import { OneLook } from "./onelook.ts";
import { keepSection } from "./savepanel.ts";
import { deadBand, ratesBand, restartedBand, brokenBand, band, pastBand } from "../shared/bands.ts";
import { encode } from "../shared/carurl.ts";
import { toShare, today } from "../shared/linkcontent.ts";
import { startOffline, watchConnection } from "../shared/offline.ts";
import { unfoldForPaper } from "../shared/paper.ts";
import { Frame } from "../shared/frame.ts";
import { framed, newTabs, startFramed } from "../shared/embedded.ts";
import { Arrivals } from "./arrivals.ts";
import { MOST_RATES } from "../shared/openshop.ts";
import { customerStore as store } from "../shared/storage.ts";

const NEEDS_SHOP = ["place_list", "range", "not_covered"];
const SPEAK_AFTER_MS = 600;
const blank = blankCar(new Date().getFullYear());
const frame = new Frame();

const app = {
  opened: null,
  words: "us",
  q: questions("us"),
  reply: null,
  result: null,
  speaking: 0,
  shownCar: null,
  replyCar: null,
  drawing: 0,
  said: () => visit.state.said,
  amend: (changes) => visit.amend(changes),
  sheet: (car) => link.ask({ ask: "sheet", car }),
  back: () => visit.back(),
  answer,
};

const link = new EngineClient(
  { loading: (bytes) => frame.loading(bytes), restarted: () => frame.put("engine", restartedBand()) },
  "customer.wasm",
  ["worth", "wide", "plan", "decide"],
);
const visit = new Visit(blank, show);
const ranging = new Ranging(link, visit.state.axis);
const arrivals = new Arrivals({ link, visit, frame, app, blank });

/** What an answer does: the car as it is now, the next screen, and what the
 *  range was before, so that the next one can say what moved. */
function answer(changes, id, text, facts = {}) {
  const { step, changing } = visit.state;
  const car = app.shownCar;
  const next = {
    ...changes,
    step:
      id === "look"
        ? "range"
        : nextStep(step, id, { ...facts, complete: isComplete(changes.car ?? car) }, changing),
  };
  if (next.step === "range") next.changing = false;
  if (visit.state.notes) next.notes = visit.state.notes.filter((note) => stepOfPath(note.path) !== step);
  if (changes.car && JSON.stringify(changes.car) !== JSON.stringify(car)) {
    const row =
      app.reply?.rows.length === 1 && app.replyCar === JSON.stringify(car) ? app.reply.rows[0] : null;
    next.before =
      row && changes.car.standard !== "not_sure" && changes.car.bodies.length === 1
        ? { low_minor: row.low_minor, high_minor: row.high_minor, answer: text }
        : null;
    keepOn(changes.car);
  }
  visit.go(next);
}

/** over: it was just said that this car goes in the place of what is kept. A page
 *  that slept in the history was not told of what other tabs kept meanwhile. */
function keepOn(car, over = false) {
  if (!visit.state.keeping) return true;
  const found = over ? null : store.load();
  if (found?.stamp && found.stamp !== visit.state.stamp) {
    arrivals.otherTab(found);
    return true;
  }
  const stamp = `${Date.now()} ${Math.random()}`;
  const done = store.save(car, today(), stamp);
  visit.amend({ keeping: done, stamp });
  if (!done)
    frame.put(
      "storage",
      band("storage", [
        "Could not keep this on the device (its storage is full or switched off). Save a file now.",
      ]),
    );
  return done;
}

function show(state, { moved }) {
  clearTimeout(app.speaking);
  frame.say("");
  frame.put("refused", null);
  const { step } = state;
  frame.step(step, app.q[step]?.number, state.changing);
  app.result = null;
  app.shownCar = state.car;
  app.drawing++;
  if (step === "range" && app.opened) app.result = resultPage(state);
  const main = step === "range" ? (app.result?.node ?? null) : screenFor(state, app);
  frame.content(main, step === "body" ? firstScreenNotes() : null, moved);
  arrivals.bands(state);
  if (isComplete(state.car) && (step === "range" || afterRange(step))) wantRange(state);
  else frame.waiting(false);
}

function firstScreenNotes() {
  return arrivals.firstScreen(() => arrivals.openSample());
}

function wantRange(state) {
  if (!app.opened) {
    frame.waiting(true);
    return;
  }
  const { car, before } = state;
  const drawing = app.drawing;
  frame.waiting(true);
  ranging
    .want(car, before, (reply, last) => {
      if (drawing === app.drawing) took(reply, last, car);
    })
    .catch(() =>
      frame.put(
        "engine",
        deadBand(() => location.reload()),
      ),
    );
}

/** An answer of the engine for the screen that is still shown. */
function took(reply, last, car) {
  frame.waiting(false);
  if (reply.kind !== "range") {
    refused(reply);
    return;
  }
  app.reply = reply;
  app.replyCar = JSON.stringify(car);
  arrivals.bands(visit.state);
  if (app.result) app.result.show(reply, last);
  else frame.effect(rangeFigure(reply), exchange);
  document.body.dataset.range = reply.state;
  if (!last) return;
  visit.amend({ axis: ranging.axis });
  app.speaking = setTimeout(() => frame.say(spokenRange(reply)), SPEAK_AFTER_MS);
}

const engineBroke = (reply) => brokenBand(reply.text, "If it happens again, please tell the shop.");

/** No figure where something does not hold: the engine's sentence, and the way
 *  to the question it is about. */
function refused(reply) {
  app.reply = null;
  frame.effect(null);
  if (reply.kind === "broken") {
    frame.put("refused", engineBroke(reply));
    return;
  }
  const steps = [
    ...new Set([reply.path, ...(reply.paths ?? [])].filter(Boolean).map(stepOfPath).filter(Boolean)),
  ];
  frame.put(
    "refused",
    band(
      "refused",
      [reply.text, "No figure is shown until this is put right."],
      steps.map((step) => [`Change: ${app.q[step].short}`, () => change(step)]),
    ),
  );
  app.result?.node.replaceChildren();
}

const change = (step) => visit.go({ step, changing: true });

function resultPage(state) {
  const { car, said } = state;
  const { opened, words } = app;
  const more = ["covered", "road", "elsewhere", "earlier", "seen", "scope"];
  const given = {
    covered: car.covered,
    road: car.life?.[0]?.road_years,
    elsewhere: said.elsewhere || car.life?.length > 1,
    earlier: car.earlier_work,
    seen: said.seen || car.looks,
    scope: said.scope || car.scope,
  };
  const closer = more.find((step) => !given[step]) ?? null;
  return new ResultPage({
    opened,
    words,
    bodies: car.bodies,
    closer,
    goCloser: () => visit.go({ step: closer, changing: false }),
    folds: car.bodies.length === 1 && car.standard !== "not_sure" ? askedFolds({ link, car }) : null,
    look:
      car.bodies.length === 1 && car.standard !== "not_sure"
        ? new OneLook({
            link,
            car,
            covered: app.q.covered,
            shown: shownByQuestions(app.opened, car),
            answered: (next, text) => answer({ car: next }, "look", text),
          })
        : null,
    past: opened.rates.valid_until < today() ? pastBand(opened.rates) : null,
    basis: basisSection(
      car,
      said,
      opened,
      app.q,
      change,
      state.from?.kind === "link"
        ? "Entered by someone else; not checked by the shop."
        : "Entered by the customer; not checked by the shop.",
    ),
    cover: coverSection(
      opened.currency_symbol,
      (sum) => ranging.cover(car, sum),
      (sum) => link.ask({ ask: "fits", sum }),
    ),
    keep: keepSection({
      car: () => car,
      reply: () => app.reply,
      opened: () => opened,
      canonical: async () => (await link.ask({ ask: "check_car", car })).canonical,
      mayReplace: () => Boolean(visit.state.keeping),
      keeping: (on) => {
        visit.amend({ keeping: on });
        return on ? keepOn(car, true) : true;
      },
      erased: () => {
        app.reply = null;
        visit.erase(blank);
      },
    }),
    address: async () =>
      location.href.split("#")[0] + (await encode(toShare(car, app.reply, opened.rates, today()))),
  });
}

/** The rates as text, or what is wrong with the file. */
async function ratesText() {
  try {
    const response = await fetch("rates.json", { cache: "no-cache" });
    if (!response.ok) return { problem: `rates.json: the host answered ${response.status}.` };
    const text = await response.text();
    return text.length <= MOST_RATES
      ? { text }
      : { problem: `rates.json: expected at most ${MOST_RATES} characters, found ${text.length}.` };
  } catch {
    return { problem: "rates.json: the host did not answer." };
  }
}

function noRates(why) {
  frame.withoutRates();
  frame.waiting(false);
  frame.put("engine", why.kind === "broken" ? engineBroke(why) : ratesBand(why));
}

async function openShop() {
  const rates = await ratesText();
  if (rates.problem) {
    frame.loaded();
    noRates({ text: rates.problem });
    return;
  }
  try {
    const reply = await link.open(rates.text);
    frame.loaded();
    if (reply.kind !== "opened") {
      noRates(reply);
      return;
    }
    const otherWords = reply.words !== app.words;
    app.opened = reply;
    app.words = reply.words;
    app.q = questions(reply.words);
    frame.shop(reply);
    newTabs(document.getElementById("contact"));
    const { step } = visit.state;
    if (otherWords || NEEDS_SHOP.includes(step) || afterRange(step))
      show(visit.state, { moved: document.activeElement !== document.body });
    await arrivals.fromAddress();
  } catch {
    frame.loaded();
    frame.waiting(false);
    frame.put(
      "engine",
      deadBand(() => location.reload()),
    );
  }
}

frame.onBack(() => visit.back());
unfoldForPaper(document.body);
watchConnection((off) => frame.connection(off));
show(visit.state, { moved: false });
startFramed();
// Without a connection the page around a frame is not there either.
openShop().finally(
  () =>
    framed ||
    startOffline(
      () => !visit.state.car.bodies && !location.hash,
      (load) =>
        frame.put(
          "newer",
          band("newer", ["A newer version of this page is ready. Your answers stay."], [["Load it", load]]),
        ),
    ),
);
