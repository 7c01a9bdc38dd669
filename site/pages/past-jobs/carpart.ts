// The part of a job's form that holds the car's file, and the rates that it was
// priced with. The range is worked out again from both.

import { button, el } from "../shared/dom.ts";
import { readCarFile } from "../shared/files.ts";
import { today } from "../shared/linkcontent.ts";
import { choice, group } from "./fields.ts";
import { chooser, readRatesText } from "./jobfile.ts";
import { faultList } from "./faults.ts";

const OLDER = "older";

export class CarPart {
  node = el("div", {});
  #host;
  #known = [];
  #code;
  #said = el("div", { class: "part-said", role: "status" });

  /** host: link, ledger, opened, ratesText; car: of the job, or null; code: of
   *  its rates, "" when not known */
  constructor(host, car, code) {
    this.#host = host;
    this.car = car;
    this.#code = code;
    this.#draw();
    this.#learn();
  }

  /** The rates chosen: their code, and their text when the file lacks them. */
  get code() {
    return this.#code;
  }
  get added() {
    const known = this.#known.find((k) => k.code === this.#code);
    return known && !known.inFile ? known.rates : null;
  }

  /** What rates the choice offers: those of the file, and the present ones. */
  async #learn() {
    const { ledger, opened, ratesText } = this.#host;
    const inFile = (await ledger.codes(today())).map((r) => ({ ...r, inFile: true }));
    const extra = this.#known.filter((k) => !k.inFile && !inFile.some((f) => f.code === k.code));
    const { check_code: code, line } = opened.rates;
    const present = [...inFile, ...extra].some((k) => k.code === code)
      ? []
      : [{ code, line: `The present ones: ${line}`, rates: JSON.parse(ratesText), inFile: false }];
    this.#known = [...inFile, ...extra, ...present];
    this.#draw();
  }

  async #openCar(file) {
    try {
      const car = await readCarFile(file);
      const reply = await this.#host.link.ask({ ask: "check_car", car });
      if (reply.kind !== "car_ok") {
        this.#say(el("p", { class: "error" }, `${file.name} was not taken: ${reply.text}`));
        return;
      }
      this.car = JSON.parse(reply.canonical);
      const stated = this.car.stages?.find((s) => s.rates)?.rates;
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
      this.#say(el("p", { class: "error" }, `${file.name}: ${error.message}`));
    }
  }

  async #openRates(file) {
    try {
      const text = await readRatesText(file);
      const found = await this.#host.ledger.codeOf(text, today());
      if (!found.code) {
        this.#say(el("p", { class: "error" }, `${file.name} was not taken.`), faultList(found.faults));
        return;
      }
      if (!this.#known.some((k) => k.code === found.code))
        this.#known.push({ ...found, rates: JSON.parse(text), inFile: false });
      this.#code = found.code;
      this.#draw();
      this.#say(el("p", {}, `${found.line}, check code ${found.code}: taken for this job.`));
    } catch (error) {
      this.#say(el("p", { class: "error" }, error.message));
    }
  }

  #say(...nodes) {
    this.#said.replaceChildren(...nodes);
  }

  #draw() {
    const pickCar = chooser(".json,application/json", ([file]) => this.#openCar(file));
    const pickRates = chooser(".json,application/json", ([file]) => this.#openRates(file));
    const missing =
      this.#code && !this.#known.some((k) => k.code === this.#code)
        ? [[this.#code, `${this.#code} (these rates are not in the file)`]]
        : [];
    const rates = choice(
      "Priced with the rates",
      [
        ["", "not known"],
        ...this.#known.filter((k) => k.code).map((k) => [k.code, `${k.line} (${k.code})`]),
        ...missing,
        [OLDER, "others: open their file below"],
      ],
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
        ? el("p", { class: "car-is" }, el("strong", {}, this.#carText()))
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
    const key = this.node.contains(document.activeElement) ? document.activeElement.dataset.key : null;
    this.node.replaceChildren(box);
    if (key) (this.node.querySelector(`[data-key="${key}"]`) ?? this.node.querySelector("button")).focus();
  }

  #carText() {
    const { bodies, made, survey } = this.car;
    const body = this.#host.opened.bodies.find((b) => b.id === bodies?.[0])?.name ?? "A car";
    const year = made?.year ?? (made?.decade ? `${made.decade}s` : "");
    return [body, year, survey?.length ? `${survey.length} parts recorded in the survey` : "no survey in it"]
      .filter(Boolean)
      .join(", ");
  }
}
