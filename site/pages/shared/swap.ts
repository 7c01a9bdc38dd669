// Puts new content into a box without taking the focus or what is unfolded away
// from whoever is working there.

const NAMES = ["data-entry", "data-find", "data-act", "data-whole", "data-key", "href"];

function nameOf(node) {
  const name = NAMES.find((n) => node.hasAttribute(n));
  return name ? `[${name}="${CSS.escape(node.getAttribute(name))}"]` : null;
}

export function swap(box, ...content) {
  const active = document.activeElement;
  const name = box.contains(active) ? nameOf(active) : null;
  const open = new Set([...box.querySelectorAll("details[open]")].map((d) => d.className));
  box.replaceChildren(...content.flat().filter(Boolean));
  for (const fold of box.querySelectorAll("details[data-stays]"))
    if (open.has(fold.className)) fold.open = true;
  if (name) box.querySelector(name)?.focus({ preventScroll: true });
}
