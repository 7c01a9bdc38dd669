// Putting rates on the website: every warning looked at, one file saved, steps that
// need no programmer, and a check code to compare. The page cannot know whether the
// file arrived, so it never says that it did.

import { button, el } from "../dom.js";
import { saveFile } from "../files.js";

const byKey = (w) => `${w.path} ${w.text}`;

export class Publish {
  node = el("section", { class: "publish", id: "put", "aria-labelledby": "put-title" });
  #looked = new Set();
  #host;

  /** host: draft, checked() (the last answer of the check), saved() */
  constructor(host) { this.#host = host; this.show(); }

  show() {
    const reply = this.#host.checked();
    const open = this.node.querySelector("details")?.open;
    this.node.replaceChildren(el("h2", { id: "put-title" }, "Put on the website"),
      el("p", {}, "Nothing here is on your site until you copy the file."),
      el("details", { open }, el("summary", {}, "How to put it there"), el("ol", { class: "put-steps" }, this.#check(reply), this.#save(reply), copy(), compare(reply))),
      frameHelp());
  }

  #check(reply) {
    if (!reply?.ok) return el("li", {}, "Check: something in the form is still wrong. It is listed at the top.");
    if (reply.warnings.length === 0) return el("li", {}, "Check: nothing is wrong, and nothing looks like a slip.");
    const box = (w) => el("label", { class: "tick-box" }, el("input", { type: "checkbox", checked: this.#looked.has(byKey(w)), on: { change: (e) => { if (e.target.checked) this.#looked.add(byKey(w)); else this.#looked.delete(byKey(w)); this.show(); } } }), `${w.text} I have looked at this.`);
    return el("li", {}, el("p", {}, "Check: these are allowed, but usually a slip."), reply.warnings.map(box));
  }

  #save(reply) {
    const ready = reply?.ok && reply.warnings.every((w) => this.#looked.has(byKey(w)));
    const save = () => { saveFile("rates.json", reply.canonical); this.#host.saved(); };
    return el("li", {}, el("p", {}, "Save the file rates.json."), ready ? button("Save rates.json", save, { class: "go", "data-key": "save-rates" }) : el("p", { class: "hint" }, "The file is offered once everything above is looked at."));
  }
}

function copy() {
  return el("li", {}, el("p", {}, "Copy it over the old one, with the file manager of your web host:"),
    el("ul", {}, el("li", {}, "open the folder that holds the file named rates.json (beside index.html);"), el("li", {}, "keep a copy of the old rates.json under another name;"), el("li", {}, "upload the new one in its place; no other file changes.")));
}

function compare(reply) {
  return el("li", {}, "Open your customer's page, load it anew, and compare the check code at its foot with this one: ", el("strong", { class: "code" }, reply?.check_code || "(none while something is wrong)"), ". Only when they are the same are these rates on your site.");
}

function frameHelp() {
  return el("p", {}, "To show the customer's page inside another site, see ", el("a", { href: "../embed.html" }, "the page for your website"), ".");
}
