// The customer's page inside a frame of another page. It tells that page how
// tall it is, and nothing else, and it listens to no message. Which page that is
// cannot be known here, so the height goes to whoever holds the frame.

import { el } from "./dom.ts";

export const framed = window.parent !== window;

/** Tells the height, in whole CSS pixels upward, at once and whenever it changes.
 *  At once by itself: nothing is observed in a frame that is not in view yet. */
function tellHeight() {
  const root = document.documentElement;
  let told = 0;
  const tell = () => {
    const height = Math.ceil(root.getBoundingClientRect().height);
    if (height === told) return;
    told = height;
    window.parent.postMessage({ underpaint: "height", height }, "*");
  };
  tell();
  new ResizeObserver(tell).observe(root);
}

/** Lets the links to other pages open in a new tab and says so: inside the frame
 *  there is no way back from them, and in the place of the whole page the answers
 *  would go. */
export function newTabs(root) {
  if (!framed) return;
  for (const link of root.querySelectorAll("a[href]")) {
    if (link.target || !/^https?:$/.test(link.protocol)) continue;
    link.target = "_blank";
    link.rel = "noopener";
    link.append(el("span", { class: "visually-hidden" }, " (opens in a new tab)"));
  }
}

/** What a page in a frame does differently. Outside a frame it does nothing. */
export function startFramed() {
  if (!framed) return;
  document.documentElement.dataset.framed = "";
  const footer = document.querySelector("footer");
  footer.prepend(
    el(
      "p",
      { id: "framed-note" },
      "The links here open in a new tab; your answers stay. ",
      el("a", { href: "./" }, "This page by itself"),
    ),
  );
  newTabs(footer);
  tellHeight();
}
