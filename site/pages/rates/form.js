// One section of the form at a time, with what is wrong shown at its field.

import { el } from "../dom.js";
import { labelOf, sections } from "./fields.js";
import { control } from "./inputs.js";
import { lists } from "./lists.js";

/** Is a path at or below another? */
const within = (path, of) => path === of || path.startsWith(`${of}.`) || path.startsWith(`${of}[`);

export class FormView {
  node = el("div", { class: "section-box" });
  #now = sections[0].id;
  #controls = [];
  #host;

  /** host: draft, link, outline(), checked() */
  constructor(host) { this.#host = host; }

  #words() { return this.#host.draft.get("words"); }

  /** What controls and lists are given. */
  #forControls() {
    const { draft, link, outline } = this.#host;
    return { draft, link, outline: outline(), currencies: outline().currencies, words: () => this.#words(), symbol: () => draft.get("currency") ?? "",
      register: (more) => this.#controls.push(...more), notes: () => this.notes(), redraw: () => this.draw({ keepOpen: true }) };
  }

  titleOf(section) { return this.#words() === "uk" && section.uk ? section.uk : section.title; }

  links() {
    return sections.map((s) => el("li", {}, el("a", { href: `#${s.id}`, "data-section": s.id }, el("span", {}, this.titleOf(s)), el("span", { class: "step-note" }))));
  }

  fromAddress() {
    const id = location.hash.slice(1);
    if (sections.some((s) => s.id === id) && id !== this.#now) { this.#now = id; this.draw(); this.node.querySelector("h2").focus(); }
  }

  draw({ keepOpen = false } = {}) {
    const id = location.hash.slice(1);
    if (sections.some((s) => s.id === id)) this.#now = id;
    const open = keepOpen ? [...this.node.querySelectorAll("details.entry[open]")].map((d) => d.dataset.path) : [];
    const section = sections.find((s) => s.id === this.#now);
    this.#controls = [];
    const host = this.#forControls();
    const fields = (section.fields ?? []).map((f) => control(f, host));
    this.#controls.push(...fields);
    const more = section.list ? lists[section.list](host) : [];
    this.node.replaceChildren(el("section", { "aria-labelledby": "section-title" }, el("h2", { id: "section-title", tabindex: "-1" }, this.titleOf(section)),
      section.intro && el("p", {}, section.intro), el("div", { class: "fields" }, fields.map((c) => c.node)), more));
    for (const path of open) { const box = this.node.querySelector(`details[data-path="${path}"]`); if (box) box.open = true; }
    this.notes();
  }

  /** Puts faults and sample marks at their fields, and marks at the sections. */
  notes() {
    const reply = this.#host.checked();
    if (!reply) return;
    for (const c of this.#controls) c.notes(reply.faults.filter((f) => within(f.path, c.path)), reply.still_sample.some((p) => within(p, c.path)));
    for (const s of sections) {
      const n = [...reply.faults, ...reply.warnings].filter((x) => x.path && this.sectionOf(x.path) === s.id).length;
      const a = document.querySelector(`[data-section="${s.id}"]`);
      if (!a) continue;
      a.querySelector(".step-note").textContent = n ? ` (${n})` : "";
      if (s.id === this.#now) a.setAttribute("aria-current", "page"); else a.removeAttribute("aria-current");
    }
  }

  /** The section in which a path is asked; the first figures come last, for they
   *  stand elsewhere too. */
  sectionOf(path) {
    const lists = { materials: "materials", consumables: "materials", "parts.prices": "parts", what_is_done: "done", "strip_and_survey.charged": "stage", "sent_out.work": "sent", "tax.on": "tax", terms: "words" };
    const list = Object.keys(lists).find((l) => within(path, l));
    if (list) return lists[list];
    const found = sections.slice(1).find((s) => s.fields?.some((f) => within(path, f.path) || within(f.path, path)));
    return (found ?? sections[0]).id;
  }

  /** A path in the words of the form. */
  nameOf(path) {
    for (const s of sections) {
      const field = s.fields?.find((f) => within(path, f.path));
      if (field) return labelOf(field, this.#words());
    }
    return `${this.titleOf(sections.find((s) => s.id === this.sectionOf(path)))} (${path})`;
  }

  /** Goes to the field of a path. */
  goTo(path) {
    this.#now = this.sectionOf(path);
    history.replaceState(history.state, "", `#${this.#now}`);
    this.draw();
    const best = this.#controls.filter((c) => within(path, c.path)).at(-1);
    if (best?.node.tagName === "DETAILS") best.node.open = true;
    const inner = this.#controls.filter((c) => within(path, c.path)).at(-1) ?? best;
    const target = inner?.node.querySelector("[aria-invalid], input, select, textarea, summary") ?? this.node.querySelector("h2");
    target.focus();
    target.scrollIntoView({ block: "center" });
  }
}
