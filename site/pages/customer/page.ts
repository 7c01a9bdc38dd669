// The customer's page: ties the visit, the engine and the screens together. Read shared/flow.ts
// for the order of questions and result.ts for the range.

import "../shared/trustedtypes.ts";
import { band, deadBand, restartedBand } from "../shared/bands.ts";
import { blankCar, isComplete } from "../shared/car.ts";
import type { CarFile } from "../shared/carfile.ts";
import { byId } from "../shared/dom.ts";
import { framed, newTabs, startFramed } from "../shared/embedded.ts";
import { EngineClient } from "../shared/engineclient.ts";
import { afterRange, nextStep, type Step, stepOfPath } from "../shared/flow.ts";
import { Frame } from "../shared/frame.ts";
import { today } from "../shared/linkcontent.ts";
import { startOffline, watchConnection } from "../shared/offline.ts";
import { unfoldForPaper } from "../shared/paper.ts";
import type { QuestionAt } from "../shared/question.ts";
import { questions } from "../shared/questions.ts";
import { type RangeAnswer, Ranging } from "../shared/ranging.ts";
import type { BrokenReply, OpenedReply, RangeReply, RefusedReply } from "../shared/replies.ts";
import { FULL } from "../shared/savewords.ts";
import { Saving } from "../shared/saving.ts";
import { customerStore as store } from "../shared/storage.ts";
import { type App, isOpen, type TakeAnswer } from "./app.ts";
import { Arrivals } from "./arrivals.ts";
import { engineBroke, openRates } from "./opening.ts";
import { resultPage } from "./parts.ts";
import { rangeFigure, spokenRange } from "./range.ts";
import { exchange, type ResultPage } from "./result.ts";
import { screenFor } from "./screens.ts";
import { VisitHistory, type VisitState } from "./visithistory.ts";

const NEEDS_SHOP: readonly Step[] = ["place_list", "range", "not_covered"];
const SPEAK_AFTER_MS = 600;
const blank = blankCar(new Date().getFullYear());
const frame = new Frame();

/** What is on the screen. */
interface Shown {
  /** The car as it was when the screen was drawn. */
  car: CarFile;
  /** Counts the screens, so that the page drops a reply for an earlier one. */
  drawing: number;
  /** The page with the range, while that is the screen. */
  result: ResultPage | null;
  /** The newest range, and the car that it is of, as JSON. */
  reply: RangeReply | null;
  replyCar: string;
  /** The timer after which a screen reader says the range. */
  speaking: number;
}
const shown: Shown = { car: blank, drawing: 0, result: null, reply: null, replyCar: "", speaking: 0 };

/** What an answer does: the car as it is now, the next screen, and what the range was before,
 *  so that the next one can say what moved. */
const answer: TakeAnswer = (changes, id, text, facts = {}) => {
  const { step, changing, notes } = visit.state;
  const { car } = shown;
  const complete = isComplete(changes.car ?? car);
  const next: Partial<VisitState> = {
    ...changes,
    step: id === "look" ? "range" : nextStep(step, id, { ...facts, complete }, changing),
  };
  if (next.step === "range") next.changing = false;
  if (notes) next.notes = notes.filter((note) => stepOfPath(note.path) !== step);
  if (changes.car && JSON.stringify(changes.car) !== JSON.stringify(car)) {
    const [row, second] = shown.replyCar === JSON.stringify(car) ? (shown.reply?.rows ?? []) : [];
    next.before =
      row && !second && changes.car.standard !== "not_sure" && changes.car.bodies?.length === 1
        ? { low_minor: row.low_minor, high_minor: row.high_minor, answer: text }
        : null;
    const outcome = saving.save(changes.car);
    if (outcome === "saved" || outcome === "refused") wrote(outcome === "saved");
  }
  visit.go(next);
};

const app: App = {
  opened: null,
  words: "us",
  q: questions("us"),
  said: () => visit.state.said,
  amend: (changes) => visit.amend(changes),
  sheet: (car) => engine.ask({ ask: "sheet", car }),
  back: () => visit.back(),
  answer,
};

const engine = new EngineClient(
  { loading: (bytes) => frame.loading(bytes), restarted: () => frame.put("engine", restartedBand()) },
  "customer.wasm",
  ["worth", "wide", "plan", "decide"],
);
const visit = new VisitHistory(blank, show);
const ranging = new Ranging(engine, visit.state.axis);
const arrivals = new Arrivals({ engine, visit, frame, app, blank });

/** Saves the car on this device. Whether it does is in the visit, so it survives a reload. */
const saving = new Saving<CarFile>({
  store,
  when: today,
  state: {
    get: () => ({ on: Boolean(visit.state.keeping), stamp: visit.state.stamp }),
    set: ({ on, stamp }) => visit.amend({ keeping: on, stamp }),
  },
  other: (found) => arrivals.otherTab(found),
});

/** Says whether the device has refused; if so, this tab saves no longer. */
function wrote(done: boolean): boolean {
  if (!done) saving.on = false;
  frame.put("storage", done ? null : band("storage", [FULL]));
  return done;
}

const change = (step: Step): void => visit.go({ step, changing: true });

function show(state: VisitState, { moved }: { moved: boolean }): void {
  clearTimeout(shown.speaking);
  frame.say("");
  frame.put("refused", null);
  const { step, car } = state;
  const question: QuestionAt = app.q;
  frame.step(step, question[step]?.number, state.changing);
  shown.result = null;
  shown.car = car;
  shown.drawing++;
  if (step === "range" && isOpen(app) && isComplete(car))
    shown.result = resultPage(state, car, app, {
      engine,
      ranging,
      visit,
      reply: () => shown.reply,
      change,
      saving,
      save: (saved) => wrote(saving.write(saved)),
      erased: () => {
        shown.reply = null;
        visit.erase(blank);
      },
    });
  const main = step === "range" ? (shown.result?.node ?? null) : screenFor(state, app, arrivals.otherWays());
  frame.content(main, moved);
  arrivals.bands(state);
  if (isComplete(car) && (step === "range" || afterRange(step))) wantRange(state);
  else frame.waiting(false);
}

function wantRange({ car, before }: VisitState): void {
  frame.waiting(true);
  if (!app.opened) return;
  const { drawing } = shown;
  ranging
    .want(car, before, (reply, last) => {
      if (drawing === shown.drawing) took(reply, last, car);
    })
    .catch(() =>
      frame.put(
        "engine",
        deadBand(() => location.reload()),
      ),
    );
}

/** A reply of the engine for the screen that is still shown. */
function took(reply: RangeAnswer, last: boolean, car: CarFile): void {
  frame.waiting(false);
  if (reply.kind !== "range") {
    refused(reply);
    return;
  }
  shown.reply = reply;
  shown.replyCar = JSON.stringify(car);
  arrivals.bands(visit.state);
  if (shown.result) shown.result.show(reply, last);
  else frame.effect(rangeFigure(reply), exchange);
  document.body.dataset.range = reply.state;
  if (!last) return;
  visit.amend({ axis: ranging.axis });
  shown.speaking = setTimeout(() => frame.say(spokenRange(reply)), SPEAK_AFTER_MS);
}

/** Without a range the page shows no figure, but the engine's sentence and the way to the
 *  question that it is about. */
function refused(reply: RefusedReply | BrokenReply): void {
  shown.reply = null;
  frame.effect(null);
  if (reply.kind === "broken") {
    frame.put("refused", engineBroke(reply));
    return;
  }
  const step = stepOfPath(reply.path ?? "");
  frame.put(
    "refused",
    band(
      "refused",
      [reply.text, "No figure is shown until this is put right."],
      step ? [[`Change: ${app.q[step].short}`, () => change(step)]] : [],
    ),
  );
  shown.result?.node.replaceChildren();
}

/** The engine has read the rates. */
async function opened(reply: OpenedReply): Promise<void> {
  const otherWords = reply.words !== app.words;
  app.opened = reply;
  app.words = reply.words;
  app.q = questions(reply.words);
  frame.shop(reply);
  newTabs(byId("contact"));
  const { step } = visit.state;
  if (otherWords || NEEDS_SHOP.includes(step) || afterRange(step))
    show(visit.state, { moved: document.activeElement !== document.body });
  await arrivals.fromAddress();
}

frame.onBack(() => visit.back());
unfoldForPaper(document.body);
watchConnection((off) => frame.connection(off));
show(visit.state, { moved: false });
startFramed();
openRates({ frame, engine }, opened).finally(() => {
  // Without a connection the page around a frame is not there either.
  if (framed) return;
  startOffline(
    () => !visit.state.car.bodies && !location.hash,
    (load) =>
      frame.put(
        "newer",
        band("newer", ["A newer version of this page is ready. Your answers stay."], [["Load it", load]]),
      ),
  );
});
