// The parts of the page with the range, put together for one car.

import { pastBand } from "../shared/bands.ts";
import { type CompleteCar, shownByQuestions } from "../shared/car.ts";
import type { CarFile } from "../shared/carfile.ts";
import { encode } from "../shared/carurl.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { MORE, type Step } from "../shared/flow.ts";
import { today, toShare } from "../shared/linkcontent.ts";
import type { Ranging } from "../shared/ranging.ts";
import type { RangeReply } from "../shared/replies.ts";
import type { Saving } from "../shared/saving.ts";
import type { OpenApp } from "./app.ts";
import { basisSection } from "./basis.ts";
import { coverSection } from "./cover.ts";
import { askedFolds } from "./folds.ts";
import { OneLook } from "./onelook.ts";
import { ResultPage } from "./result.ts";
import { savePanel } from "./savepanel.ts";
import type { VisitHistory, VisitState } from "./visithistory.ts";

/** What the parts need of the page. */
export interface PartsHost {
  engine: EngineClient;
  ranging: Ranging;
  visit: VisitHistory;
  /** The range that is shown, or null. */
  reply(): RangeReply | null;
  /** Opens a question again. */
  change(step: Step): void;
  saving: Saving<CarFile>;
  /** Saves a car on this device in place of the one that is saved; false when it cannot. */
  save(car: CarFile): boolean;
  /** Forgets all answers. */
  erased(): void;
}

/** The first question after the range that has no answer yet. */
function nextQuestion({ said }: VisitState, car: CompleteCar): Step | undefined {
  const given: Record<(typeof MORE)[number], unknown> = {
    covered: car.covered,
    hit: car.hit,
    road: car.life[0]?.road_years,
    elsewhere: said.elsewhere || car.life.length > 1,
    earlier: car.earlier_work,
    seen: said.seen || car.looks,
    all_there: car.all_there,
    scope: said.scope || car.scope,
  };
  return MORE.find((step) => !given[step]);
}

export function resultPage(state: VisitState, car: CompleteCar, app: OpenApp, host: PartsHost): ResultPage {
  const { engine, ranging, visit } = host;
  const { opened } = app;
  const next = nextQuestion(state, car);
  const oneRow = car.bodies.length === 1 && car.standard !== "not_sure";
  return new ResultPage({
    opened,
    bodies: car.bodies,
    goCloser: next ? () => visit.go({ step: next, changing: false }) : null,
    folds: oneRow ? askedFolds({ engine, car }) : null,
    look: oneRow
      ? new OneLook({
          engine,
          car,
          covered: app.q.covered,
          shown: shownByQuestions(opened, car),
          answered: (changed, text) => app.answer({ car: changed }, "look", text),
        })
      : null,
    another: {
      car,
      question: app.q.another_body,
      answered: (changed, text) => app.answer({ car: changed }, "look", text),
    },
    past: opened.rates.valid_until < today() ? pastBand(opened.rates) : null,
    basis: basisSection(
      car,
      state.said,
      opened,
      app.q,
      host.change,
      state.from?.kind === "link"
        ? "Entered by someone else; not checked by the shop."
        : "Entered by the customer; not checked by the shop.",
    ),
    cover: coverSection(
      opened.currency_symbol,
      (sum) => ranging.cover(car, sum),
      (sum) => engine.ask({ ask: "fits", sum }),
    ),
    savePanel: savePanel({
      car,
      opened,
      reply: host.reply,
      canonical: async () => {
        const reply = await engine.ask({ ask: "check_car", car });
        if (reply.kind !== "car_ok") throw new Error(reply.text);
        return reply.canonical;
      },
      saving: host.saving,
      save: () => host.save(car),
      erased: host.erased,
    }),
    address: async () =>
      location.href.split("#")[0] + (await encode(toShare(car, host.reply(), opened.rates, today()))),
  });
}
