// A code to scan that leads back to these answers, drawn for paper. The symbol is that of
// ISO/IEC 18004.

import qrcode from "../vendor/qrcode.js";
import { svg } from "./dom.ts";

/** Module and margin as printed: half a millimetre, four modules. */
const MODULE_MM = 0.5;
const MARGIN = 4;
/** Longer addresses make a symbol that phones read badly from paper. */
const MOST_BYTES = 900;

/** The drawing, or null where the address is too long for one. */
export async function scanCode(address: string): Promise<SVGSVGElement | null> {
  if (new TextEncoder().encode(address).length > MOST_BYTES) return null;
  const code = qrcode(0, "M");
  code.addData(address);
  code.make();
  const n = code.getModuleCount();
  let path = "";
  for (let row = 0; row < n; row++)
    for (let column = 0; column < n; column++)
      if (code.isDark(row, column)) path += `M${column + MARGIN} ${row + MARGIN}h1v1h-1z`;
  const whole = n + 2 * MARGIN;
  return svg(
    "svg",
    {
      class: "scan-code",
      viewBox: `0 0 ${whole} ${whole}`,
      width: `${whole * MODULE_MM}mm`,
      height: `${whole * MODULE_MM}mm`,
      role: "img",
      "aria-label": "A code to scan that opens these answers",
      "shape-rendering": "crispEdges",
    },
    svg("rect", { width: whole, height: whole, fill: "#fff" }),
    svg("path", { d: path, fill: "#000" }),
  );
}
