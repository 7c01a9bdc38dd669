// Putting rates on the website: the shop looks at every warning, saves one file, follows
// steps that need no programmer, and compares a check code. The page cannot know whether
// the file arrived, so it never says that it did.

import { button, el } from "../shared/dom.ts";
import { saveFile } from "../shared/files.ts";
import type { CarNote, RatesCheckedReply } from "../shared/replies.ts";
import { embedHelp } from "./embedhelp.ts";

export interface PublishHost {
  /** The last reply to the check. */
  checked(): RatesCheckedReply | null;
  /** Called once the file has been saved. */
  saved(): void;
}

const byKey = (w: CarNote) => `${w.path} ${w.text}`;

export class Publish {
  node = el("section", { class: "publish", id: "put", "aria-labelledby": "put-title" });
  #looked = new Set<string>();
  #warnings = el("div", {});
  #file = el("div", {});
  #code = el("strong", { class: "code" });
  #said = el("p", { role: "status" });
  #shown = "";
  #host: PublishHost;

  constructor(host: PublishHost) {
    this.#host = host;
    this.node.append(
      el("h2", { id: "put-title" }, "Put on the website"),
      el("p", {}, "Nothing here is on your site until you copy the file."),
      el(
        "details",
        {},
        el("summary", {}, "How to put it there"),
        el(
          "ol",
          { class: "put-steps" },
          el("li", {}, el("p", {}, el("strong", {}, "Check")), this.#warnings),
          el("li", {}, el("p", {}, el("strong", {}, "Save the file rates.json")), this.#file, this.#said),
          copy(),
          compare(this.#code),
        ),
      ),
      embedHelp(),
    );
    this.show();
  }

  /** Called after every check. Changes only what is new, so that the focus stays. */
  show(): void {
    const reply = this.#host.checked();
    this.#code.textContent = reply?.check_code || "(none while something is wrong)";
    const now = JSON.stringify([reply?.ok, reply?.check_code, reply?.warnings]);
    if (now === this.#shown) return;
    this.#shown = now;
    this.#said.textContent = "";
    this.#warnings.replaceChildren(...this.#check(reply));
    this.#offer();
  }

  #check(reply: RatesCheckedReply | null): Node[] {
    if (!reply?.ok) return [el("p", {}, "Something in the form is still wrong. It is listed at the top.")];
    if (reply.warnings.length === 0) return [el("p", {}, "Nothing is wrong, and nothing looks like a slip.")];
    return [
      el("p", {}, "These are allowed, but usually a slip."),
      ...reply.warnings.map((w) => this.#tick(w)),
    ];
  }

  #tick(w: CarNote): HTMLElement {
    const key = byKey(w);
    const box: HTMLInputElement = el("input", {
      type: "checkbox",
      checked: this.#looked.has(key),
      on: {
        change: () => {
          if (box.checked) this.#looked.add(key);
          else this.#looked.delete(key);
          this.#offer();
        },
      },
    });
    return el(
      "label",
      { class: "tick-box" },
      box,
      el("span", {}, `${w.text} `, el("em", {}, "I have looked at this.")),
    );
  }

  #offer(): void {
    const reply = this.#host.checked();
    const ready = reply?.ok && reply.warnings.every((w) => this.#looked.has(byKey(w)));
    this.#file.replaceChildren(
      ready
        ? button("Save rates.json", () => this.#save(), { class: "go", "data-key": "save-rates" })
        : el("p", { class: "hint" }, "The file is offered once everything above is looked at."),
    );
  }

  #save(): void {
    const reply = this.#host.checked();
    if (!reply?.ok) return;
    saveFile("rates.json", reply.canonical);
    this.#host.saved();
    this.#said.textContent = "The file went to where your browser saves files. Go on with the next step.";
  }
}

function copy(): HTMLElement {
  return el(
    "li",
    {},
    el("p", {}, el("strong", {}, "Copy it over the old one"), " with the file manager of your web host:"),
    el(
      "ul",
      {},
      [
        "Open the folder that holds the file named rates.json, beside index.html.",
        "Give the old rates.json another name, such as rates-old.json, so that you can go back.",
        "Upload the new file there. It must be named rates.json; browsers sometimes make it rates (1).json.",
        "If rates.json.br or rates.json.gz stand beside it, delete those two: they are the old rates, packed.",
        "No other file changes.",
      ].map((t) => el("li", {}, t)),
    ),
  );
}

function compare(code: HTMLElement): HTMLElement {
  return el(
    "li",
    {},
    el("p", {}, el("strong", {}, "Compare the check code")),
    el(
      "p",
      {},
      el("a", { href: "../", target: "_blank", rel: "noopener" }, "Open your customer's page (in a new tab)"),
      ", load it anew, and look at its foot. The check code there must be ",
      code,
      ". Only then are these rates on your site.",
    ),
  );
}
