// Keeping the result: on this device, as a link, as a file, on paper, and
// erasing. Nothing is kept before one of these is pressed.

import { button, el, freshId } from "../shared/dom.ts";
import { encode } from "../shared/carurl.ts";
import { toShare, today } from "../shared/linkcontent.ts";
import { saveFile } from "../shared/files.ts";
import { customerStore as store } from "../shared/storage.ts";

/** host: car(), canonical() (a promise), reply(), opened(), isKeeping(), keeping(on),
 *  mayReplace() (the kept car is this one), erased(). */
export function keepSection(host) {
  const said = el("p", { class: "keep-said", role: "status" });
  const area = el("div", { class: "keep-area" });
  const say = (text) => {
    said.textContent = text;
  };

  const keepNow = () => {
    if (!host.mayReplace() && store.load()) {
      area.replaceChildren(askReplace(keepIt, () => area.replaceChildren()));
      area.querySelector("button").focus();
      return;
    }
    keepIt();
  };
  const keepIt = () => {
    area.replaceChildren();
    if (host.keeping(true)) say("Kept on this device. Later answers are kept too.");
    else {
      say("Could not keep this on the device (its storage is full or switched off). Save a file now.");
      area.replaceChildren(button("Save a file", saveNow));
    }
  };
  const eraseKept = () => {
    host.keeping(false);
    area.replaceChildren();
    say(
      store.erase()
        ? "Nothing is kept on this device now."
        : "The device would not erase it. Clear this site's data in the browser.",
    );
  };
  const makeLink = async () => {
    const fragment = await encode(toShare(host.car(), host.reply(), host.opened().rates, today()));
    area.replaceChildren(
      linkBox(location.href.split("#")[0] + fragment, say, () => {
        area.replaceChildren();
        say("The link is gone from this page.");
      }),
    );
    area.querySelector("textarea").focus();
  };
  const saveNow = async () => {
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
        button("Keep on this device", keepNow),
        button("Erase from this device", eraseKept, { class: "quiet" }),
      ),
      el(
        "div",
        {},
        button("Make a link", makeLink),
        button("Save a file", saveNow),
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

function askReplace(yes, no) {
  return el(
    "div",
    { class: "band", role: "group", "aria-label": "Replace the kept car?" },
    el("p", {}, "Another car is kept on this device already."),
    button("Put this one in its place", yes),
    button("Leave the other one", no),
  );
}

function linkBox(address, say, erase) {
  const id = freshId("link");
  const area = el("textarea", {
    id,
    rows: 4,
    readonly: true,
    spellcheck: "false",
    on: { focus: (e) => e.target.select() },
  });
  area.value = address;
  const copy = async () => {
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
