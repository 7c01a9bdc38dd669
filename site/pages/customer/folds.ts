// What is worked out only when it is asked for: what makes the range wide, the job
// in stages, what other ways of doing it would change. Each takes the engine up to
// some seconds, in which nothing else is refined.

import { el, list } from "../shared/dom.ts";
import { Overtaken } from "../shared/engineclient.ts";

/** Before it is asked again when something else took the engine. */
const AGAIN_MS = 500;

/** A fold that asks the engine when it is opened, and shows the last answer. */
function askedFold({ link, car }, kind, title, show) {
  const body = el("div", {});
  let asked = false;
  const ask = async () => {
    asked = true;
    body.replaceChildren(el("p", { role: "status" }, "Working it out."));
    try {
      const reply = await link.refine({ ask: kind, car }, (part) => {
        body.firstChild.textContent = part.progress_text ?? part.text;
      });
      if (reply.kind !== kind) {
        body.replaceChildren(el("p", {}, reply.text));
        return;
      }
      body.replaceChildren(...show(reply).flat());
      node.dataset.state = "settled";
    } catch (error) {
      asked = false;
      // What the page works out by itself gives way to what was asked for.
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

const hint = (text) => el("p", { class: "hint" }, text);

function wide(reply) {
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

function plan(reply) {
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

function decide(reply) {
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

/** host: link, car (one body, one standard) */
export function askedFolds(host) {
  return el(
    "div",
    { class: "asked-folds" },
    askedFold(host, "wide", "What makes it wide, and what could make it worse", wide),
    askedFold(host, "plan", "The job in stages, and the price to stop at each", plan),
    askedFold(host, "decide", "What another standard or less work would change", decide),
  );
}
