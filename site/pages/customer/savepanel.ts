// Saving the result: on this device, as a link, as a file, on paper; and erasing it. Nothing is
// saved before one of these is pressed.

import type { CarFile } from "../shared/carfile.ts";
import { encode } from "../shared/carurl.ts";
import { button, el } from "../shared/dom.ts";
import { saveFile } from "../shared/files.ts";
import { linkBox } from "../shared/linkbox.ts";
import { today, toShare } from "../shared/linkcontent.ts";
import type { OpenedReply, RangeReply } from "../shared/replies.ts";
import { FULL, NOT_ERASED, REPLACE_CAR, replaceQuestion } from "../shared/savewords.ts";
import type { Saving } from "../shared/saving.ts";
import { customerStore as store } from "../shared/storage.ts";
import { sec } from "./sec.ts";

export interface SavePanelHost {
  car: CarFile;
  opened: OpenedReply;
  /** The range, once there is one. */
  reply(): RangeReply | null;
  /** The car as the engine writes it, for a file. */
  canonical(): Promise<string>;
  saving: Saving<CarFile>;
  /** Saves this car on the device, now and after every answer; false when the device refuses. */
  save(): boolean;
  erased(): void;
}

export function savePanel(host: SavePanelHost): HTMLElement {
  const said = el("p", { class: "keep-said", role: "status" });
  const area = el("div", { class: "keep-area" });
  const say = (text: string): void => {
    said.textContent = text;
  };

  const save = (): void => {
    if (!host.saving.on && store.load()) {
      area.replaceChildren(replaceQuestion(REPLACE_CAR, saveIt, () => area.replaceChildren()));
      area.querySelector("button")?.focus();
      return;
    }
    saveIt();
  };
  const saveIt = (): void => {
    area.replaceChildren();
    if (host.save()) say("Kept on this device. Later answers are kept too.");
    else {
      say(FULL);
      area.replaceChildren(button("Save a file", saveAsFile));
    }
  };
  const erase = (): void => {
    host.saving.stop();
    area.replaceChildren();
    say(store.erase() ? "Nothing is kept on this device now." : NOT_ERASED);
  };
  const makeLink = async (): Promise<void> => {
    const fragment = await encode(toShare(host.car, host.reply(), host.opened.rates, today()));
    area.replaceChildren(
      linkBox(location.href.split("#")[0] + fragment, {
        hint: "It holds your answers and the two ends of the range. Whoever has it can read them, and it stays in histories and chats where it was pasted.",
        say,
        erase: () => {
          area.replaceChildren();
          say("The link is gone from this page.");
        },
      }),
    );
    area.querySelector("textarea")?.focus();
  };
  const saveAsFile = async (): Promise<void> => {
    try {
      saveFile("my-car.json", await host.canonical());
      say("The file went to where your browser saves files.");
    } catch {
      say("The file could not be made. Try once more.");
    }
  };

  return sec(
    "keep",
    "keep-title",
    "Keep it",
    el(
      "div",
      { class: "keep-buttons" },
      el(
        "div",
        {},
        button("Keep on this device", save),
        button("Erase from this device", erase, { class: "quiet" }),
      ),
      el(
        "div",
        {},
        button("Make a link", makeLink),
        button("Save a file", saveAsFile),
        button("Print", () => print()),
      ),
    ),
    area,
    said,
    el(
      "p",
      {},
      button("Start again and erase the answers", () => host.erased(), { class: "quiet" }),
    ),
  );
}
