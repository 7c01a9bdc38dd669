// What the page works out only when somebody asks for it: what makes the range wide, the job
// in stages, what other ways of doing it would change. Each takes the engine up to some
// seconds, in which it refines nothing else.

import type { CarFile } from "../shared/carfile.ts";
import { el, list } from "../shared/dom.ts";
import { type EngineClient, Overtaken } from "../shared/engineclient.ts";
import type { BrokenReply, DecideReply, PlanReply, RefusedReply, WideReply } from "../shared/replies.ts";
import { isRefusal } from "../shared/requests.ts";
import { sec } from "./sec.ts";

/** How long to wait before asking again when something else took the engine. */
const AGAIN_MS = 500;

interface Fold<R extends { kind: string }> {
  /** Names the fold for styles and tests. */
  kind: string;
  title: string;
  /** Gives the last reply of the engine. tell takes what to show until then. */
  ask(tell: (text: string) => void): Promise<R | RefusedReply | BrokenReply>;
  show(reply: R): HTMLElement[];
}

/** A fold that asks the engine when it is opened, and shows the last reply. */
function askedFold<R extends { kind: string }>({
  kind,
  title,
  ask: askEngine,
  show,
}: Fold<R>): HTMLDetailsElement {
  const body = el("div", {});
  let asked = false;
  const ask = async (): Promise<void> => {
    asked = true;
    const progress = el("p", { role: "status" }, "Working it out.");
    body.replaceChildren(progress);
    try {
      const reply = await askEngine((text) => {
        progress.textContent = text;
      });
      if (isRefusal(reply)) {
        body.replaceChildren(el("p", {}, reply.text));
        return;
      }
      body.replaceChildren(...show(reply));
      node.dataset.state = "settled";
    } catch (error) {
      asked = false;
      // The page asks again once the engine is free of what overtook it.
      if (error instanceof Overtaken && node.isConnected && node.open) {
        setTimeout(() => {
          if (!asked && node.isConnected && node.open) ask();
        }, AGAIN_MS);
        return;
      }
      body.replaceChildren(el("p", {}, "The sums did not answer. The range above stands."));
    }
  };
  const node = el(
    "details",
    {
      class: `asked-fold fold-${kind}`,
      on: {
        toggle: () => {
          if (node.open && !asked) ask();
        },
      },
    },
    el("summary", {}, title),
    body,
  );
  return node;
}

const hint = (text: string): HTMLElement => el("p", { class: "hint" }, text);

function wide(reply: WideReply): HTMLElement[] {
  return [
    el(
      "ol",
      { class: "wide-shares" },
      reply.shares.map((s) => el("li", {}, el("strong", {}, `${s.share_text} ${s.name}. `), s.why)),
    ),
    el("p", { class: "wide-rest" }, `${reply.rest_text}.`),
    hint(reply.shares_note),
    el("h3", {}, "What could make it worse"),
    el(
      "ol",
      { class: "wide-worse" },
      reply.worse.map((p) =>
        el("li", {}, el("strong", {}, p.name), list([p.likely_line, p.cost_line, p.find_line])),
      ),
    ),
    hint(reply.worse_note),
  ];
}

function plan(reply: PlanReply): HTMLElement[] {
  return [
    el(
      "ol",
      { class: "plan-stages" },
      reply.stages.map((s) =>
        el(
          "li",
          {},
          el("strong", {}, `${s.name}: ${s.money_text}`),
          list([`${s.hours_text}, ${s.weeks_text}.`, s.by_then_text, s.stop_line]),
        ),
      ),
    ),
    hint(reply.note),
  ];
}

function decide(reply: DecideReply): HTMLElement[] {
  return [
    el(
      "ul",
      { class: "decide-options" },
      reply.options.map((o) =>
        el(
          "li",
          {},
          el("strong", {}, `${o.name}: `),
          `${o.difference_text}; ${o.saving_text}.`,
          o.note && hint(o.note),
        ),
      ),
    ),
    hint(reply.note),
  ];
}

export interface FoldsHost {
  engine: EngineClient;
  /** A car of one body and one standard. */
  car: CarFile;
}

export function askedFolds({ engine, car }: FoldsHost): HTMLElement {
  return sec(
    "asked-folds",
    "folds-title",
    "Why it is so wide",
    askedFold({
      kind: "wide",
      title: "What makes it wide, and what could make it worse",
      ask: (tell) =>
        engine.refine({ ask: "wide", car }, (part) =>
          tell(part.kind === "wide" ? part.progress_text : part.text),
        ),
      show: wide,
    }),
    askedFold({
      kind: "plan",
      title: "The job in stages, and the price to stop at each",
      ask: () => engine.refine({ ask: "plan", car }, () => {}),
      show: plan,
    }),
    askedFold({
      kind: "decide",
      title: "What another standard or less work would change",
      ask: () => engine.refine({ ask: "decide", car }, () => {}),
      show: decide,
    }),
  );
}
