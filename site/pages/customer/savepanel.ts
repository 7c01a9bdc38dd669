// Saving the result: on this device, as a link, as a file, on paper; and erasing it. Nothing is
// saved before one of these is pressed.

import type { CarFile } from "../shared/carfile.ts";
import { encode } from "../shared/carurl.ts";
import { button, el, freshId } from "../shared/dom.ts";
import { saveFile } from "../shared/files.ts";
import { today, toShare } from "../shared/linkcontent.ts";
import type { OpenedReply, RangeReply } from "../shared/replies.ts";
import { customerStore as store } from "../shared/storage.ts";

export interface SavePanelHost {
  car: CarFile;
  opened: OpenedReply;
  /** The range, once there is one. */
  reply(): RangeReply | null;
  /** The car as the engine writes it, for a file. */
  canonical(): Promise<string>;
  /** Saves this car on the device, now and after every answer, or stops saving it. False when
   *  the device refuses. */
  saving(on: boolean): boolean;
  /** What is saved is this car. */
  mayReplace(): boolean;
  erased(): void;
}

export function savePanel(host: SavePanelHost): HTMLElement {
  const said = el("p", { class: "keep-said", role: "status" });
  const area = el("div", { class: "keep-area" });
  const say = (text: string): void => {
    said.textContent = text;
  };

  const save = (): void => {
    if (!host.mayReplace() && store.load()) {
      area.replaceChildren(askReplace(saveIt, () => area.replaceChildren()));
      area.querySelector("button")?.focus();
      return;
    }
    saveIt();
  };
  const saveIt = (): void => {
    area.replaceChildren();
    if (host.saving(true)) say("Kept on this device. Later answers are kept too.");
    else {
      say("Could not keep this on the device (its storage is full or switched off). Save a file now.");
      area.replaceChildren(button("Save a file", saveAsFile));
    }
  };
  const erase = (): void => {
    host.saving(false);
    area.replaceChildren();
    say(
      store.erase()
        ? "Nothing is kept on this device now."
        : "The device would not erase it. Clear this site's data in the browser.",
    );
  };
  const makeLink = async (): Promise<void> => {
    const fragment = await encode(toShare(host.car, host.reply(), host.opened.rates, today()));
    area.replaceChildren(
      linkBox(location.href.split("#")[0] + fragment, say, () => {
        area.replaceChildren();
        say("The link is gone from this page.");
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

  return el(
    "section",
    { class: "keep", "aria-labelledby": "keep-title" },
    el("h2", { id: "keep-title" }, "Keep it"),
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

function askReplace(yes: () => void, no: () => void): HTMLElement {
  return el(
    "div",
    { class: "band", role: "group", "aria-label": "Replace the kept car?" },
    el("p", {}, "Another car is kept on this device already."),
    button("Put this one in its place", yes),
    button("Leave the other one", no),
  );
}

/** erase takes the box away again. */
function linkBox(address: string, say: (text: string) => void, erase: () => void): HTMLElement {
  const id = freshId("link");
  const area: HTMLTextAreaElement = el("textarea", {
    id,
    rows: 4,
    readonly: true,
    spellcheck: "false",
    on: { focus: () => area.select() },
  });
  area.value = address;
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(address);
      say("The link is copied.");
    } catch {
      area.focus();
      say("The link is marked: copy it with your browser.");
    }
  };
  return el(
    "div",
    { class: "link-box" },
    el("label", { for: id }, "The link"),
    area,
    el(
      "p",
      { class: "hint" },
      "It holds your answers and the two ends of the range. Whoever has it can read them, and it stays in histories and chats where it was pasted.",
    ),
    button("Copy the link", copy),
    button("Erase the link here", erase, { class: "quiet" }),
  );
}
