// The shop's pages work by themselves only. Inside a frame of another page a press
// could be lured out of somebody who does not see what it does, so there nothing
// is started but a way out. Hosts can forbid it outright (see embed.html).

import { el } from "./dom.ts";

if (window.parent !== window) {
  document
    .querySelector("main")
    .replaceChildren(
      el("h1", {}, document.title),
      el(
        "p",
        { id: "not-in-a-frame" },
        "This page is for the shop and does not work inside another page. ",
        el(
          "a",
          { href: location.href, target: "_blank", rel: "noopener" },
          "Open it by itself",
          el("span", { class: "visually-hidden" }, " (in a new tab)"),
        ),
      ),
    );
  // What the page would import after this is never run.
  await new Promise(() => {});
}
