// The customer's page on another page of the shop's: text to copy. The frame's text
// is that of the page for whoever looks after the site, with this address in it.

import { button, el } from "../shared/dom.ts";
import { labelled } from "./boxes.ts";

const HELP = new URL("../embed.html", location.href);
const HERE = new URL("../", location.href).href;
const EXAMPLE = "/range/";
const LINK = `<a href="${HERE}">What would the body work cost?</a>`;

export function embedHelp() {
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
  return el(
    "details",
    {
      class: "embed-help",
      on: {
        toggle: (event) => {
          if (event.target.open) fill();
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
}

/** The text as it is written out there: no page makes markup of a text, not even to
 *  read it. */
const SIGNS = { lt: "<", gt: ">", quot: '"', amp: "&" };
const plain = (text) => text.replace(/&(lt|gt|quot|amp);/g, (_, name) => SIGNS[name]);

async function frameText() {
  try {
    const response = await fetch(HELP);
    const code = /<code id="frame-code">([^<]*)<\/code>/.exec(await response.text());
    return code ? plain(code[1]).replaceAll(EXAMPLE, HERE) : null;
  } catch {
    return null;
  }
}

function copyBox(id, label, text) {
  const area = el("textarea", {
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
