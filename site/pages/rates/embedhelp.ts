// The customer's page on another page of the shop's site: text to copy. The text of the
// frame comes from the page "embed.html", with the address of this site in it.

import { button, el } from "../shared/dom.ts";
import { labelled } from "./boxes.ts";

const HELP = new URL("../embed.html", location.href);
const HERE = new URL("../", location.href).href;
const EXAMPLE = "/range/";
const LINK = `<a href="${HERE}">What would the body work cost?</a>`;

export function embedHelp(): HTMLDetailsElement {
  const made = el("div", {});
  let filled = false;
  const fill = async () => {
    if (filled) return;
    filled = true;
    made.replaceChildren(...copyBox("embed-link", "A plain link", LINK));
    const frame = await frameText();
    made.append(
      ...(frame
        ? copyBox("embed-frame", "A frame, with the script that gives it its height", frame)
        : [el("p", {}, "The text for a frame could not be loaded just now; it stands on that page.")]),
    );
  };
  const node: HTMLDetailsElement = el(
    "details",
    {
      class: "embed-help",
      on: {
        toggle: () => {
          if (node.open) fill();
        },
      },
    },
    el("summary", {}, "The customer's page on a page of your own"),
    el(
      "p",
      {},
      "Copy one of these into your page. More about each, and about who may frame it, on ",
      el("a", { href: HELP.href }, "the page for your website"),
      ".",
    ),
    made,
  );
  return node;
}

/** Signs that are written out in the markup there. No page makes markup of a text, not even
 *  to read it, so this replaces them. */
const SIGNS: Record<string, string> = { lt: "<", gt: ">", quot: '"', amp: "&" };
const plain = (text: string) =>
  text.replace(/&(lt|gt|quot|amp);/g, (sign, name: string) => SIGNS[name] ?? sign);

async function frameText(): Promise<string | null> {
  try {
    const response = await fetch(HELP);
    const [, code] = /<code id="frame-code">([^<]*)<\/code>/.exec(await response.text()) ?? [];
    return code !== undefined ? plain(code).replaceAll(EXAMPLE, HERE) : null;
  } catch {
    return null;
  }
}

function copyBox(id: string, label: string, text: string): Node[] {
  const area: HTMLTextAreaElement = el("textarea", {
    id,
    rows: Math.min(18, text.split("\n").length + 1),
    readonly: true,
    spellcheck: "false",
    on: { focus: () => area.select() },
  });
  area.value = text;
  const said = el("p", { role: "status" });
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      said.textContent = "Copied.";
    } catch {
      area.focus();
      said.textContent = "Marked: copy it with your keyboard.";
    }
  };
  return [labelled(id, label, area), button(`Copy: ${label.toLowerCase()}`, copy), said];
}
