// A draft that is kept nowhere is put aside only when that was said. Following a
// link is asked about in a band; closing the tab only the browser can ask about.

import { band } from "../shared/bands.ts";

const LOST = "The changes in this draft are neither saved nor kept on this device.";

export class Leaving {
  #frame;
  #keep;
  #going = false;

  constructor(frame, keep) {
    this.#frame = frame;
    this.#keep = keep;
    addEventListener("beforeunload", (event) => {
      if (keep.loses && !this.#going) event.preventDefault();
    });
    document.addEventListener("click", (event) => this.#followed(event));
  }

  /** Puts the draft aside for go(), at once when nothing is lost by it. */
  ask(go, how = "Put them aside and go on") {
    const away = () => this.#frame.put("leave", null);
    if (!this.#keep.loses) {
      away();
      go();
      return;
    }
    const node = band(
      "leave",
      [LOST],
      [
        [
          how,
          () => {
            away();
            go();
          },
        ],
        ["Stay with this draft", away],
      ],
    );
    this.#frame.put("leave", node);
    scrollTo(0, 0);
    node.querySelector("button").focus();
  }

  #followed(event) {
    const link = event.target.closest?.("a[href]");
    if (
      !link ||
      event.defaultPrevented ||
      link.target ||
      event.button !== 0 ||
      event.ctrlKey ||
      event.metaKey ||
      event.shiftKey
    )
      return;
    const there = new URL(link.href);
    if (
      !/^https?:$/.test(there.protocol) ||
      (there.pathname === location.pathname && there.origin === location.origin)
    )
      return;
    if (!this.#keep.loses) return;
    event.preventDefault();
    this.ask(() => {
      this.#going = true;
      location.assign(link.href);
    }, "Leave without them");
  }
}
