// The part of a job's form that holds the car's file and the rates that the car was priced
// with. The engine works out the range again from both.

import type { CarFile } from "../shared/carfile.ts";
import { button, el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { messageOf, readCarFile } from "../shared/files.ts";
import { today } from "../shared/linkcontent.ts";
import { openedRatesIn, type RatesFile } from "../shared/ratesfile.ts";
import type { OpenedReply } from "../shared/replies.ts";
import { faultList } from "./faults.ts";
import { choice, group } from "./fields.ts";
import { carOf, chooser, readRatesText } from "./jobfile.ts";
import type { Ledger } from "./ledger.ts";

const OLDER = "older";

export interface CarPartHost {
  client: EngineClient;
  ledger: Ledger;
  opened: OpenedReply;
  /** The rates on the site. */
  ratesText: string;
}

/** Rates that can be chosen. Those with faults have no code and are not offered. */
interface KnownRates {
  code?: string;
  line?: string;
  rates: RatesFile;
  inFile: boolean;
}

export class CarPart {
  node = el("div", {});
  /** The car of the job, or null. */
  car: CarFile | null;
  #host: CarPartHost;
  #known: KnownRates[] = [];
  #code: string;
  #said = el("div", { class: "part-said", role: "status" });

  /** code: the check code of the car's rates, "" when nobody knows it. */
  constructor(host: CarPartHost, car: CarFile | null, code: string) {
    this.#host = host;
    this.car = car;
    this.#code = code;
    this.#draw();
    this.#learn();
  }

  /** The check code of the chosen rates. */
  get code(): string {
    return this.#code;
  }
  /** The chosen rates where the file does not have them yet. */
  get added(): RatesFile | null {
    const known = this.#known.find((k) => k.code === this.#code);
    return known && !known.inFile ? known.rates : null;
  }

  /** Finds the rates to choose from: those in the file, and those on the site. */
  async #learn(): Promise<void> {
    const { ledger, opened, ratesText } = this.#host;
    const inFile = (await ledger.codes(today())).map((r) => ({ ...r, inFile: true }));
    const extra = this.#known.filter((k) => !k.inFile && !inFile.some((f) => f.code === k.code));
    const { check_code: code, line } = opened.rates;
    const present = [...inFile, ...extra].some((k) => k.code === code)
      ? []
      : [{ code, line: `The present ones: ${line}`, rates: openedRatesIn(ratesText), inFile: false }];
    this.#known = [...inFile, ...extra, ...present];
    this.#draw();
  }

  async #openCar(file: File): Promise<void> {
    try {
      const car = await readCarFile(file);
      const reply = await this.#host.client.ask({ ask: "check_car", car });
      if (reply.kind !== "car_ok") {
        this.#say(el("p", { class: "error" }, `${file.name} was not taken: ${reply.text}`));
        return;
      }
      const taken = carOf(reply);
      this.car = taken;
      const stated = taken.stages?.find((s) => s.rates)?.rates;
      if (!this.#code && stated && this.#known.some((k) => k.code === stated)) this.#code = stated;
      this.#draw();
      this.#say(
        el(
          "p",
          {},
          `${file.name} is taken.`,
          stated ? ` Its first stage was begun at the rates ${stated}.` : "",
        ),
      );
    } catch (error) {
      this.#say(el("p", { class: "error" }, `${file.name}: ${messageOf(error)}`));
    }
  }

  async #openRates(file: File): Promise<void> {
    try {
      const text = await readRatesText(file);
      const found = await this.#host.ledger.codeOf(text, today());
      if (found.faults) {
        this.#say(el("p", { class: "error" }, `${file.name} was not taken.`), faultList(found.faults));
        return;
      }
      if (!this.#known.some((k) => k.code === found.code))
        this.#known.push({ ...found, rates: openedRatesIn(text), inFile: false });
      this.#code = found.code;
      this.#draw();
      this.#say(el("p", {}, `${found.line}, check code ${found.code}: taken for this job.`));
    } catch (error) {
      this.#say(el("p", { class: "error" }, messageOf(error)));
    }
  }

  #say(...nodes: Node[]): void {
    this.#said.replaceChildren(...nodes);
  }

  #draw(): void {
    const pickCar = chooser(".json,application/json", ([file]) => this.#openCar(file));
    const pickRates = chooser(".json,application/json", ([file]) => this.#openRates(file));
    const rates = choice(
      "Priced with the rates",
      this.#options(),
      this.#code,
      "The rates of the job's day, so that the range is the one of then. They are kept in this file. Without them, and without the two ends above, the job cannot be scored.",
      (value) => {
        if (value === OLDER) {
          pickRates.press();
          rates.select.value = this.#code;
        } else this.#code = value;
      },
    );
    const box = group(
      "The car's file",
      "The file that the page This car saved. With it the job teaches something: what the survey found, and the hours. Not needed where only the figures are known.",
      this.car
        ? el("p", { class: "car-is" }, el("strong", {}, this.#carText(this.car)))
        : el("p", { class: "car-is" }, "No car's file is with this job."),
      el(
        "p",
        { class: "with-buttons" },
        button(this.car ? "Open another car's file" : "Open the car's file", pickCar.press, {
          "data-key": "car",
        }),
        pickCar.node,
        this.car &&
          button(
            "Take the car out",
            () => {
              this.car = null;
              this.#draw();
            },
            { class: "quiet", "data-key": "no-car" },
          ),
      ),
      this.car && rates.node,
      this.car &&
        el(
          "p",
          {},
          button("Open an older rates file", pickRates.press, { class: "quiet", "data-key": "rates" }),
          pickRates.node,
        ),
      this.#said,
    );
    const active = document.activeElement;
    const key = this.node.contains(active) ? active?.getAttribute("data-key") : null;
    this.node.replaceChildren(box);
    if (key) {
      const again = this.node.querySelector<HTMLElement>(`[data-key="${key}"]`);
      (again ?? this.node.querySelector("button"))?.focus();
    }
  }

  #options(): [value: string, text: string][] {
    const options: [string, string][] = [["", "not known"]];
    for (const { code, line } of this.#known) if (code) options.push([code, `${line} (${code})`]);
    if (this.#code && !this.#known.some((k) => k.code === this.#code))
      options.push([this.#code, `${this.#code} (these rates are not in the file)`]);
    options.push([OLDER, "others: open their file below"]);
    return options;
  }

  #carText({ bodies, made, survey }: CarFile): string {
    const body = this.#host.opened.bodies.find((b) => b.id === bodies?.[0])?.name ?? "A car";
    const year = made?.year ?? (made?.decade ? `${made.decade}s` : "");
    return [body, year, survey?.length ? `${survey.length} parts recorded in the survey` : "no survey in it"]
      .filter(Boolean)
      .join(", ");
  }
}
