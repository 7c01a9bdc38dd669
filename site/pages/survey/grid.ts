// The list of parts: a table with fixed heads, in the grid pattern of the ARIA
// Authoring Practices (one tab stop; arrows move inside it). It draws what it is
// told and passes keys and taps on.

import { el, freshId } from "../shared/dom.ts";

export class Grid {
  node;
  #cells = new Map();
  #host;
  #at = null;

  /** host: cell(on) gives {text, name, fault, recorded, small}; stand(on); key(event) */
  constructor(host) {
    this.#host = host;
    this.node = el("div", { class: "part-list" });
  }

  /** heads: texts of the columns after the first. rows: as in order.js. */
  draw({ label, heads, rows, at, hint }) {
    const had = this.node.contains(document.activeElement);
    this.#cells.clear();
    const hintId = freshId("grid-hint");
    const table = el(
      "table",
      {
        role: "grid",
        class: heads.length > 1 ? "grid two" : "grid one",
        "aria-label": label,
        "aria-describedby": hintId,
        on: {
          keydown: (event) => this.#host.key(event),
          click: (event) => this.#tap(event),
          focusin: (event) => this.#focused(event),
        },
      },
      el(
        "thead",
        {},
        el(
          "tr",
          {},
          el("th", { scope: "col" }, "Part"),
          heads.map((h) => el("th", { scope: "col" }, h)),
        ),
      ),
      el(
        "tbody",
        {},
        rows.map((row) => this.#row(row, heads.length)),
      ),
    );
    this.node.replaceChildren(table, el("p", { id: hintId, class: "visually-hidden" }, hint));
    this.stand(at, had);
  }

  #row(row, columns) {
    if (row.title)
      return el("tr", { class: "title-row" }, el("th", { scope: "row", colspan: columns + 1 }, row.head));
    const head = el("th", { scope: "row", class: row.sub ? "sub" : null }, row.head);
    if (row.cells.length === 1) return el("tr", {}, head, this.#cell(row.cells[0], columns));
    return el(
      "tr",
      {},
      head,
      row.cells.map((on) =>
        on
          ? this.#cell(on, 1)
          : el("td", { role: "gridcell" }, el("span", { class: "visually-hidden" }, "no such part")),
      ),
    );
  }

  #cell(on, span) {
    const node = el("td", {
      role: "gridcell",
      tabindex: "-1",
      "data-on": on,
      colspan: span > 1 ? span : null,
    });
    this.#cells.set(on, node);
    this.#fill(on);
    return node;
  }

  #fill(on) {
    const node = this.#cells.get(on);
    if (!node) return;
    const { text, name, fault, recorded, small } = this.#host.cell(on);
    node.setAttribute("aria-label", name);
    node.classList.toggle("has-fault", Boolean(fault));
    node.classList.toggle("is-recorded", recorded);
    node.replaceChildren(
      el(
        "span",
        { class: "cell" },
        el("span", { class: "cell-text" }, text),
        " ",
        small && el("span", { class: "cell-small" }, small),
      ),
    );
  }

  refresh(on = null) {
    for (const one of on ? [on] : this.#cells.keys()) this.#fill(one);
  }

  /** Moves the cursor. focus: the keyboard goes along. */
  stand(on, focus) {
    const old = this.#cells.get(this.#at);
    old?.classList.remove("in-hand");
    old?.setAttribute("tabindex", "-1");
    old?.removeAttribute("aria-selected");
    this.#at = on;
    const node = this.#cells.get(on);
    if (!node) return;
    node.classList.add("in-hand");
    node.setAttribute("tabindex", "0");
    node.setAttribute("aria-selected", "true");
    if (focus) node.focus({ preventScroll: true });
    node.scrollIntoView({ block: "nearest" });
  }

  focus() {
    this.#cells.get(this.#at)?.focus();
  }
  get hasFocus() {
    return this.node.contains(document.activeElement);
  }

  #tap(event) {
    const on = event.target.closest("[data-on]")?.dataset.on;
    if (on) this.#host.stand(on);
  }

  #focused(event) {
    const on = event.target.closest("[data-on]")?.dataset.on;
    if (on && on !== this.#at) this.#host.stand(on);
  }
}
