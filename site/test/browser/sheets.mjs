// Looks into a printed file: how many sheets it has, and how far down the last
// one is written. Read by hand from the parts of ISO 32000-1 that it needs: page
// tree (7.7.3), content streams (7.8.2), and the matrices of cm and Tm (8.3.4).

import { inflateSync } from "node:zlib";

const object = (text, n) => {
  const at = text.search(new RegExp(`(^|\\n)${n} 0 obj`));
  return [at, text.slice(at, text.indexOf("endobj", at))];
};

function content(pdf, text, page) {
  const [at] = object(text, /\/Contents (\d+) 0 R/.exec(page)[1]);
  const begin = text.indexOf("\n", text.indexOf("stream", at)) + 1;
  return inflateSync(pdf.subarray(begin, text.indexOf("endstream", begin))).toString("latin1");
}

/** The lowest line of text on a page, in points from its upper edge. */
function lowest(stream, height) {
  const stack = [];
  let [scale, shift] = [1, 0];
  let low = height;
  for (const line of stream.split("\n")) {
    const numbers = line.trim().split(/\s+/);
    const name = numbers.pop();
    const [d, f] = [Number(numbers.at(-3)), Number(numbers.at(-1))];
    if (name === "q") stack.push([scale, shift]);
    if (name === "Q") [scale, shift] = stack.pop();
    if (name === "cm") [scale, shift] = [d * scale, f * scale + shift];
    if (name === "Tm") low = Math.min(low, f * scale + shift);
  }
  return height - low;
}

/** {sheets, last}: last is how far down the last sheet is written, as a part of
 *  what lies between its margins. margin: in millimetres */
export function sheetsOf(pdf, margin) {
  const text = pdf.toString("latin1");
  const pages = [...text.matchAll(/\/Type\s*\/Page[^s]/g)].length;
  const kids = [...text.matchAll(/\/Kids\s*\[([^\]]*)\]/g)].at(-1)[1].match(/\d+(?= 0 R)/g);
  const [, page] = object(text, kids.at(-1));
  const height = Number(/\/MediaBox \[[\d.]+ [\d.]+ [\d.]+ ([\d.]+)\]/.exec(page)[1]);
  const edge = (margin / 25.4) * 72;
  return { sheets: pages, last: (lowest(content(pdf, text, page), height) - edge) / (height - 2 * edge) };
}
