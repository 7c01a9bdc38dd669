// Files that arrive at the page, chosen or dropped: past jobs to open or to add, car files, and
// tables. A band says what is wrong with a file that is not taken.

import { band } from "../shared/bands.ts";
import { el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { messageOf } from "../shared/files.ts";
import type { Frame } from "../shared/frame.ts";
import { isObject } from "../shared/ratesfile.ts";
import { carsOf, merge } from "./bringfiles.ts";
import { notTaken } from "./faults.ts";
import { readJobsText } from "./jobfile.ts";
import type { Ledger } from "./ledger.ts";

const STAYS = "The jobs in hand stay as they were.";

export interface ArrivalsHost {
  client: EngineClient;
  ledger: Ledger;
  frame: Frame;
  /** The view of the open file. */
  view: {
    complete(waiting: Ledger["waiting"][number]): void;
    done(text: string): void;
    bring(table?: File): void;
  };
  /** Opens a text as the file of past jobs. from: where it comes from, in words. */
  open(text: string, options: { from: string; saved: true }): Promise<boolean>;
}

export class Arrivals {
  #host: ArrivalsHost;

  constructor(host: ArrivalsHost) {
    this.#host = host;
  }

  /** Shows why something was not taken. */
  refused(nodes: HTMLElement[]): void {
    const { frame } = this.#host;
    frame.put("arrival", band("arrival", nodes));
    scrollTo(0, 0);
    frame.say(nodes.map((n) => n.textContent).join(" "));
  }

  async openFile(file: File): Promise<void> {
    try {
      await this.#host.open(await readJobsText(file), { from: file.name, saved: true });
    } catch (error) {
      this.refused([el("p", {}, messageOf(error))]);
    }
  }

  /** Takes car files as cars that wait, and opens the first of them. */
  async cars(files: readonly File[]): Promise<void> {
    const { client, ledger, frame, view } = this.#host;
    const { good, refused } = await carsOf(files, client);
    if (refused.length) {
      const n = refused.length;
      this.refused([
        el("p", {}, el("strong", {}, n === 1 ? "One file was not taken." : `${n} files were not taken.`)),
        el(
          "ul",
          {},
          refused.map((r) => el("li", {}, `${r.place}: ${r.text}`)),
        ),
      ]);
    } else frame.put("arrival", null);
    const [first] = good;
    if (!first) return;
    ledger.setWaiting([...ledger.waiting, ...good]);
    view.complete(first);
  }

  /** Adds the jobs of another file to the open one. */
  async merge(file: File): Promise<void> {
    const { ledger, frame, view } = this.#host;
    frame.put("arrival", null);
    try {
      const merged = await merge(file, ledger);
      if (merged.faults)
        this.refused([el("p", {}, `From ${file.name}:`), ...notTaken(merged.faults, merged.file, STAYS)]);
      else view.done(merged.text);
    } catch (error) {
      this.refused([el("p", {}, messageOf(error))]);
    }
  }

  /** A file that was dropped on the page: what it holds decides what happens with it. */
  async dropped(file: File): Promise<void> {
    const { ledger, view } = this.#host;
    if (!ledger.file) {
      await this.openFile(file);
      return;
    }
    if (!/\.json$/i.test(file.name)) {
      view.bring(file);
      return;
    }
    const value = parsed(await file.text().catch(() => ""));
    const format = isObject(value) ? value.format : null;
    if (typeof format === "string" && format.startsWith("underpaint car ")) await this.cars([file]);
    else await this.merge(file);
  }

  /** Says that a text could not be opened. from: where it comes from. */
  notOpened(faults: Parameters<typeof notTaken>[0], from: string, text: string): void {
    this.refused([
      el("p", {}, el("strong", {}, `${from} could not be opened.`)),
      ...notTaken(faults, parsed(text), this.#host.ledger.file ? STAYS : ""),
    ]);
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
