// The views of one car as addresses after the "#": any order, Back works.

import { band } from "../shared/bands.ts";
import { button, el } from "../shared/dom.ts";
import { swap } from "../shared/swap.ts";
import { answersView } from "../shared/thiscar/answers.ts";
import { standing, withSure } from "../shared/thiscar/record.ts";
import { startView } from "../shared/thiscar/start.ts";
import { hoursSection } from "./hours.ts";
import { keyTable } from "./keys.ts";
import { ListView } from "./list.ts";
import { PapersView, paperLinks } from "./papers.ts";
import { paperView } from "./sheet.ts";
import { StagesView } from "./stages.ts";
import { ToDoView } from "./todo.ts";
import { WalkView } from "./walk.ts";

const byId = (id) => document.getElementById(id);
const NAMES = {
  answers: "Answers",
  walk: "Walk-round",
  survey: "Survey",
  opening: "Opening up",
  todo: "What to do",
  stages: "Before and after",
  papers: "Papers",
  paper: "Survey sheet",
};
/** The survey sheet is one of the papers: it has no step of its own. */
const STEPS = Object.keys(NAMES).filter((name) => name !== "paper");
const address = (opening, id) => `#${opening ? "opening" : "survey"}/${id}`;

export class Views {
  #host;
  #list;
  #walk;
  #todo;
  #stages;
  #papers;
  #now = "start";
  #editing = null;
  #wanted = null;

  /** host: job, shop, link, frame, strip, keeping, take, sample, failed(reply), answered(field) */
  constructor(host) {
    this.#host = host;
    const { job, link, frame, strip, failed } = host;
    const say = (text) => frame.say(text);
    this.#list = new ListView(job, {
      say,
      help: () => this.#help(),
      uk: () => host.shop.opened.words === "uk",
      address: (id) => address(false, id),
      moved: (id) => history.replaceState(history.state, "", address(this.#list.opening, id)),
      recorded: (on) => strip.want(on),
    });
    this.#walk = new WalkView(job, { say });
    this.#todo = new ToDoView(job, { link, say, failed });
    this.#stages = new StagesView(job, { link, failed });
    this.#papers = new PapersView(host);
  }

  get isList() {
    return this.#now === "survey" || this.#now === "opening";
  }

  /** The first view of a car that was just opened. */
  opened(hasAnswers) {
    const there = this.#place()[0];
    if (there === "start")
      history.replaceState(
        history.state,
        "",
        hasAnswers && !this.#host.job.car.survey ? "#answers" : "#survey",
      );
    this.show({ focus: true });
  }

  /** The name of a view in the words of the shop. */
  #name(name) {
    return name === "walk" && this.#host.shop.opened.words === "us" ? "Walk-around" : NAMES[name];
  }

  #place() {
    const [name, ...rest] = decodeURIComponent(location.hash.slice(1)).split("/");
    return NAMES[name] ? [name, rest.join("/")] : ["start", ""];
  }

  start(focus = true) {
    this.#now = "start";
    byId("steps").replaceChildren();
    this.#fill(
      "This car",
      startView({
        opened: this.#host.shop.opened,
        q: this.#host.shop.q,
        take: this.#host.take,
        sample: this.#host.sample,
        failed: (text) => this.#host.frame.put("arrival", band("arrival", [text])),
      }),
      focus,
    );
    byId("strip").replaceChildren();
    byId("kept").replaceChildren();
  }

  show({ focus }) {
    const { job, strip, keeping, link } = this.#host;
    if (!job.car) {
      this.start();
      return;
    }
    let [name, rest] = this.#place();
    if (name === "start") name = "survey";
    const same = this.#now === name;
    this.#now = name;
    strip.pause();
    this.#papers.leave();
    link.stop();
    this.#steps();
    if (name === "survey" || name === "opening") this.#showList(name, rest, focus, same);
    else this.#fill(this.#name(name), this.#content(name, rest), focus);
    if (name === "walk" && focus) this.#walk.focus();
    if (name === "walk") this.#walk.counted();
    if (name === "stages" || name === "papers" || name === "paper") byId("strip").replaceChildren();
    else {
      byId("strip").replaceChildren(strip.node);
      strip.show();
    }
    byId("kept").replaceChildren(...(name === "papers" || name === "paper" ? [] : [keeping.node]));
  }

  #showList(name, rest, focus, same) {
    if (!same)
      this.#fill(
        NAMES[name],
        el("div", {}, this.#list.node, name === "survey" && hoursSection(this.#host.job)),
        false,
      );
    this.#list.show(name === "opening", rest, focus, this.#wanted);
    this.#wanted = null;
  }

  #content(name, rest) {
    const { job, shop } = this.#host;
    if (name === "answers")
      return answersView(
        { opened: shop.opened, q: shop.q, job, changed: (car, key) => this.#changedAnswer(car, key) },
        this.#editing,
        (id) => this.#edit(id),
      );
    if (name === "walk") {
      this.#walk.show();
      return this.#walk.node;
    }
    if (name === "todo") {
      this.#todo.show();
      return this.#todo.node;
    }
    if (name === "stages") {
      this.#stages.show();
      return this.#stages.node;
    }
    if (name === "papers") {
      this.#papers.show(rest);
      return this.#papers.node;
    }
    return el(
      "div",
      {},
      paperLinks("paper"),
      paperView(job, shop.opened, {
        sure: (on) => {
          job.act("survey", withSure(job.car, on), { at: on, said: "looked at again" });
          this.show({ focus: false });
        },
        change: (on) => this.#toPart(on),
      }),
    );
  }

  /** The entry of one part, in the survey or among the opened boxes. */
  #toPart(on) {
    const { job } = this.#host;
    const opening = standing(job.car, on)?.stage === "opening_up";
    this.#wanted = on;
    location.hash = address(opening, opening ? job.sheet.items[on].box : job.sheet.items[on].zone);
  }

  /** Opens one of the answers about the car for a change. */
  answer(id) {
    this.#editing = id;
    if (this.#now === "answers") this.#again(id);
    else location.hash = "answers";
  }

  #edit(id) {
    this.#editing = id;
    this.#again(id);
  }

  async #changedAnswer(car, key) {
    this.#editing = null;
    if (await this.#host.job.answered(car)) {
      this.#host.answered(key);
      this.#again(key ?? "checked");
    }
  }

  #again(key) {
    this.#fill(NAMES.answers, this.#content("answers"), false);
    const node =
      byId("screen").querySelector(`[data-field="${key}"]`) ??
      byId("screen").querySelector(`[data-key="${key}"]`);
    (node ?? byId("screen").querySelector("h1")).focus();
  }

  #fill(title, node, focus) {
    const h1 = el("h1", { tabindex: "-1" }, title);
    byId("screen").replaceChildren(h1, node);
    document.body.dataset.view = this.#now;
    document.title = title === "This car" ? title : `${title} | This car`;
    if (focus) {
      scrollTo(0, 0);
      h1.focus({ preventScroll: true });
    }
  }

  #steps() {
    const { tally } = this.#host.job;
    const text = {
      answers: tally?.answers_line,
      walk: tally?.walk_round?.line,
      survey: tally?.survey?.line,
      opening: tally?.opening_up?.line,
      todo: tally?.to_do?.line,
    };
    swap(
      byId("steps"),
      el(
        "ul",
        { class: "steps" },
        STEPS.map((name) =>
          el(
            "li",
            {},
            el(
              "a",
              {
                href: `#${name}`,
                "aria-current":
                  name === this.#now || (name === "papers" && this.#now === "paper") ? "page" : null,
              },
              text[name] ?? this.#name(name),
            ),
          ),
        ),
      ),
      this.#host.keeping.line,
    );
  }

  /** The engine has counted. */
  counted() {
    this.#steps();
    if (this.isList) this.#list.counted();
    if (this.#now === "walk") this.#walk.counted();
  }

  saidOdds(on, text) {
    if (this.isList && (on === null || text)) this.#list.saidOdds(on, text);
  }

  #help() {
    const { sheet } = this.#host.job;
    const close = button("Back to the list", () => dialog.close(), { class: "go" });
    const dialog = el(
      "dialog",
      { class: "keys", "aria-label": "Keys" },
      el("h2", {}, "Keys, while the list has the focus"),
      el(
        "table",
        {},
        el(
          "tbody",
          {},
          keyTable(sheet.conditions, sheet.findings).map(([key, does]) =>
            el("tr", {}, el("th", { scope: "row" }, key), el("td", {}, does)),
          ),
        ),
      ),
      close,
    );
    dialog.addEventListener("close", () => {
      dialog.remove();
      this.#list.focus();
    });
    document.body.append(dialog);
    dialog.showModal();
    close.focus();
  }
}
