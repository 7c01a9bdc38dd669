// Nobody loses a draft that is saved nowhere without having said so. When somebody follows
// a link, a band asks; when somebody closes the tab, only the browser can ask.

import { band } from "../shared/bands.ts";
import type { Frame } from "../shared/frame.ts";

const LOST = "The changes in this draft are neither saved nor kept on this device.";

export class Leaving {
  #frame: Frame;
  #loses: () => boolean;
  #going = false;

  /** loses: whether closing the tab would lose changes. */
  constructor(frame: Frame, loses: () => boolean) {
    this.#frame = frame;
    this.#loses = loses;
    addEventListener("beforeunload", (event) => {
      if (loses() && !this.#going) event.preventDefault();
    });
    document.addEventListener("click", (event) => this.#followed(event));
  }

  /** Calls go, which discards the draft: at once when that loses nothing, otherwise when
   *  somebody presses the button with the text `how`. */
  ask(go: () => void, how = "Put them aside and go on"): void {
    const away = () => this.#frame.put("leave", null);
    if (!this.#loses()) {
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
    node.querySelector("button")?.focus();
  }

  #followed(event: MouseEvent): void {
    const link = event.target instanceof Element ? event.target.closest("a[href]") : null;
    if (
      !(link instanceof HTMLAnchorElement) ||
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
    if (!this.#loses()) return;
    event.preventDefault();
    this.ask(() => {
      this.#going = true;
      location.assign(link.href);
    }, "Leave without them");
  }
}
