// The customer's page inside a frame of another page. It tells that page how tall it is, and
// nothing else, and it listens to no message. It cannot know which page that is, so the
// height goes to whichever page has the frame.

import { el } from "./dom.ts";

export const framed = window.parent !== window;

/** Tells the height, in CSS pixels rounded up, whenever it changes. The first time it does so
 *  without an observer, because a browser observes nothing in a frame that is out of view. */
function tellHeight(): void {
  const root = document.documentElement;
  let told = 0;
  const tell = (): void => {
    const height = Math.ceil(root.getBoundingClientRect().height);
    if (height === told) return;
    told = height;
    window.parent.postMessage({ underpaint: "height", height }, "*");
  };
  tell();
  new ResizeObserver(tell).observe(root);
}

/** Lets the links to other pages open in a new tab and says so. Inside the frame there is no
 *  way back from them, and in place of the whole page they would lose the answers. */
export function newTabs(root: HTMLElement): void {
  if (!framed) return;
  for (const link of root.querySelectorAll<HTMLAnchorElement>("a[href]")) {
    if (link.target || !/^https?:$/.test(link.protocol)) continue;
    link.target = "_blank";
    link.rel = "noopener";
    link.append(el("span", { class: "visually-hidden" }, " (opens in a new tab)"));
  }
}

/** What a page in a frame does differently. Outside a frame it does nothing. */
export function startFramed(): void {
  if (!framed) return;
  document.documentElement.dataset.framed = "";
  const footer = document.querySelector("footer");
  footer?.prepend(
    el(
      "p",
      { id: "framed-note" },
      "The links here open in a new tab; your answers stay. ",
      el("a", { href: "./" }, "This page by itself"),
    ),
  );
  if (footer) newTabs(footer);
  tellHeight();
}
