// The shop's pages work only by themselves. Inside a frame of another page somebody could be
// tricked into a press without seeing what it does, so there the page starts nothing and only
// offers to open by itself. A host can forbid framing outright (see embed.html).

import { el } from "./dom.ts";

if (window.parent !== window) {
  document
    .querySelector("main")
    ?.replaceChildren(
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
  // The page never gets to run what it imports after this.
  await new Promise(() => {});
}
