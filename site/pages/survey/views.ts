// The views of one car as addresses after the "#": in any order, and Back works.

import { band } from "../shared/bands.ts";
import { byId, el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import type { Frame } from "../shared/frame.ts";
import { swap } from "../shared/swap.ts";
import type { Shop } from "../shared/thiscar/context.ts";
import type { Failure } from "../shared/thiscar/gather.ts";
import { standing, withSure } from "../shared/thiscar/record.ts";
import { startView, type TakeCar } from "../shared/thiscar/start.ts";
import { AnswersPane } from "./answerspane.ts";
import { stripDangers } from "./dangers.ts";
import { hoursSection } from "./hours.ts";
import { showKeys } from "./keysdialog.ts";
import { ListView } from "./list.ts";
import type { OpenCar } from "./opencar.ts";
import { PapersView, paperLinks } from "./papers.ts";
import { itemOf } from "./partwords.ts";
import type { CarSaving } from "./savepanel.ts";
import { paperView } from "./sheet.ts";
import { StagesView } from "./stages.ts";
import { isView, NAMES, nameOf, stepLinks, type ViewName } from "./steps.ts";
import type { Strip } from "./strip.ts";
import { ToDoView } from "./todo.ts";
import { WalkView } from "./walk.ts";

export interface ViewsHost {
  openCar: OpenCar;
  shop: Shop;
  engine: EngineClient;
  frame: Frame;
  strip: Strip;
  saving: CarSaving;
  take: TakeCar;
  /** Opens the sample car. */
  sample(): unknown;
  /** The engine refused the car, or failed; null when it did not answer. */
  failed(reply: Failure | null): void;
  /** An answer was changed. field: the id of its field, if it has one. */
  answered(field: string | undefined): void;
}

const address = (opening: boolean, id: string) => `#${opening ? "opening" : "survey"}/${id}`;

export class Views {
  #host: ViewsHost;
  #answers: AnswersPane;
  #list: ListView;
  #walk: WalkView;
  #todo: ToDoView;
  #stages: StagesView;
  #papers: PapersView;
  #now: ViewName | "start" = "start";
  /** The part to go to in the list. */
  #wanted: string | null = null;

  constructor(host: ViewsHost) {
    this.#host = host;
    const { openCar, frame, strip } = host;
    this.#answers = new AnswersPane(host, (key) => this.#answersAgain(key));
    const say = (text: string) => frame.say(text);
    this.#list = new ListView(openCar, {
      say,
      help: () => showKeys(openCar.sheet, () => this.#list.focus()),
      uk: () => host.shop.opened.words === "uk",
      address: (id) => address(false, id),
      moved: (id) => history.replaceState(history.state, "", address(this.#list.opening, id)),
      recorded: (on) => strip.want(on),
    });
    this.#walk = new WalkView(openCar, { say });
    this.#todo = new ToDoView(openCar, { engine: host.engine, say, failed: host.failed });
    this.#stages = new StagesView(openCar, host);
    this.#papers = new PapersView(host);
  }

  get isList(): boolean {
    return this.#now === "survey" || this.#now === "opening";
  }

  /** Shows the first view of a car that was just opened. hasAnswers: it came with answers
   *  that somebody else gave. */
  opened(hasAnswers: boolean): void {
    if (this.#place.view === "start") {
      const first = hasAnswers && !this.#host.openCar.car.survey ? "#answers" : "#survey";
      history.replaceState(history.state, "", first);
    }
    this.show({ focus: true });
  }

  /** The view in the address, and what follows it there. */
  get #place(): { view: ViewName | "start"; rest: string } {
    const [name = "", ...rest] = decodeURIComponent(location.hash.slice(1)).split("/");
    return isView(name) ? { view: name, rest: rest.join("/") } : { view: "start", rest: "" };
  }

  /** Shows the first page, without a car. */
  start(focus = true): void {
    const { shop, strip, take, sample, frame } = this.#host;
    this.#now = "start";
    strip.pause();
    this.#papers.leave();
    byId("steps").replaceChildren();
    this.#fill(
      "This car",
      startView({
        opened: shop.opened,
        q: shop.q,
        take,
        sample,
        failed: (text) => frame.put("arrival", band("arrival", [text])),
      }),
      focus,
    );
    byId("strip").replaceChildren();
    byId("kept").replaceChildren();
  }

  /** Shows the view in the address. focus: the heading gets the keyboard. */
  show({ focus }: { focus: boolean }): void {
    const { openCar, shop, strip, saving, engine } = this.#host;
    if (!openCar.hasCar) {
      this.start();
      return;
    }
    const { view: asked, rest } = this.#place;
    const view = asked === "start" ? "survey" : asked;
    const same = this.#now === view;
    this.#now = view;
    strip.pause();
    this.#papers.leave();
    engine.stop();
    this.#steps();
    if (view === "survey" || view === "opening") this.#showList(view, rest, focus, same);
    else this.#fill(nameOf(view, shop.opened.words), this.#content(view, rest), focus);
    if (view === "walk" && focus) this.#walk.focus();
    if (view === "walk") this.#walk.counted();
    const isPaper = view === "papers" || view === "paper";
    if (view === "stages" || isPaper) byId("strip").replaceChildren();
    else {
      byId("strip").replaceChildren(strip.node);
      strip.show();
    }
    byId("kept").replaceChildren(...(isPaper ? [] : [saving.panel.node]));
  }

  #showList(view: "survey" | "opening", rest: string, focus: boolean, same: boolean): void {
    if (!same)
      this.#fill(
        NAMES[view],
        el(
          "div",
          {},
          this.#list.node,
          view === "survey" && hoursSection(this.#host.openCar),
          view === "survey" && stripDangers(this.#host.openCar, this.#host.engine),
        ),
        false,
      );
    this.#list.show(view === "opening", rest, focus, this.#wanted);
    this.#wanted = null;
  }

  #content(view: Exclude<ViewName, "survey" | "opening">, rest: string): HTMLElement {
    switch (view) {
      case "answers":
        return this.#answers.content();
      case "walk":
        this.#walk.show();
        return this.#walk.node;
      case "todo":
        this.#todo.show();
        return this.#todo.node;
      case "stages":
        this.#stages.show();
        return this.#stages.node;
      case "papers":
        this.#papers.show(rest);
        return this.#papers.node;
      case "paper":
        return this.#surveySheet();
    }
  }

  #surveySheet(): HTMLElement {
    const { openCar, shop } = this.#host;
    return el(
      "div",
      {},
      paperLinks("paper"),
      paperView(openCar, shop.opened, {
        sure: (on) => {
          openCar.act("survey", withSure(openCar.car, on), { at: on, said: "looked at again" });
          this.show({ focus: false });
        },
        change: (on) => this.#toPart(on),
      }),
    );
  }

  /** Goes to the entry of a part, in the survey or among the opened boxes. */
  #toPart(on: string): void {
    const { car, sheet } = this.#host.openCar;
    const opening = standing(car, on)?.stage === "opening_up";
    const { box, zone } = itemOf(sheet, on);
    this.#wanted = on;
    location.hash = address(opening, opening ? box : zone);
  }

  /** Opens an answer about the car for a change. id: of its field. */
  answer(id: string): void {
    this.#answers.editing = id;
    if (this.#now === "answers") this.#answersAgain(id);
    else location.hash = "answers";
  }

  #answersAgain(key: string | null): void {
    this.#fill(NAMES.answers, this.#answers.content(), false);
    this.#answers.focus(byId("screen"), key);
  }

  #fill(title: string, node: HTMLElement, focus: boolean): void {
    const h1 = el("h1", { tabindex: "-1" }, title);
    byId("screen").replaceChildren(h1, node);
    document.body.dataset.view = this.#now;
    document.title = title === "This car" ? title : `${title} | This car`;
    if (focus) {
      scrollTo(0, 0);
      h1.focus({ preventScroll: true });
    }
  }

  #steps(): void {
    const { openCar, shop, saving } = this.#host;
    swap(byId("steps"), stepLinks(this.#now, openCar.tally, shop.opened.words), saving.line);
  }

  /** The engine has counted. */
  counted(): void {
    this.#steps();
    if (this.isList) this.#list.counted();
    if (this.#now === "walk") this.#walk.counted();
  }

  /** Shows what the engine says about an entry; see ListView. */
  saidOdds(on: string | null, text: string): void {
    if (this.isList && (on === null || text)) this.#list.saidOdds(on, text);
  }
}
