// The list of parts: a table with fixed heads, in the grid pattern of the ARIA Authoring
// Practices (one tab stop; arrows move inside it). It draws what its host says and passes
// keys and taps on.

import { attributeAt, el, freshId } from "../shared/dom.ts";
import type { Row } from "./order.ts";

/** What a cell shows. */
export interface CellText {
  text: string;
  /** A second, smaller line. */
  small: string;
  /** What a screen reader says. */
  name: string;
  fault: boolean;
  recorded: boolean;
}

export interface GridHost {
  cell(on: string): CellText;
  /** Somebody went to a cell. */
  stand(on: string): void;
  key(event: KeyboardEvent): void;
}

export interface GridContent {
  label: string;
  /** The texts of the columns after the first. */
  heads: readonly string[];
  rows: readonly Row[];
  /** The item that the cursor is on. */
  at: string;
  hint: string;
}

export class Grid {
  node = el("div", { class: "part-list" });
  #cells = new Map<string, HTMLElement>();
  #host: GridHost;
  #at = "";

  constructor(host: GridHost) {
    this.#host = host;
  }

  draw({ label, heads, rows, at, hint }: GridContent): void {
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

  #row(row: Row, columns: number): HTMLElement {
    if (row.title)
      return el("tr", { class: "title-row" }, el("th", { scope: "row", colspan: columns + 1 }, row.head));
    const head = el("th", { scope: "row", class: row.sub ? "sub" : null }, row.head);
    const [only, second] = row.cells;
    if (only && second === undefined) return el("tr", {}, head, this.#cell(only, columns));
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

  #cell(on: string, span: number): HTMLElement {
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

  #fill(on: string): void {
    const node = this.#cells.get(on);
    if (!node) return;
    const { text, name, fault, recorded, small } = this.#host.cell(on);
    node.setAttribute("aria-label", name);
    node.classList.toggle("has-fault", fault);
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

  refresh(): void {
    for (const on of this.#cells.keys()) this.#fill(on);
  }

  /** Moves the cursor. focus: the keyboard goes along. */
  stand(on: string, focus: boolean): void {
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

  focus(): void {
    this.#cells.get(this.#at)?.focus();
  }
  get hasFocus(): boolean {
    return this.node.contains(document.activeElement);
  }

  #tap(event: Event): void {
    const on = attributeAt(event, "data-on");
    if (on) this.#host.stand(on);
  }

  #focused(event: Event): void {
    const on = attributeAt(event, "data-on");
    if (on && on !== this.#at) this.#host.stand(on);
  }
}
