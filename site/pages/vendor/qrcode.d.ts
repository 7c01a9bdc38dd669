// The types of what this project uses of qrcode.js.

/** A symbol of ISO/IEC 18004 that is filled, made, and then read module by module. */
export interface QRCode {
  addData(text: string): void;
  make(): void;
  getModuleCount(): number;
  isDark(row: number, column: number): boolean;
}

/** typeNumber: the version of the symbol, 0 for the smallest that has room. level: how much of
 *  it may be damaged. */
export default function qrcode(typeNumber: number, level: "L" | "M" | "Q" | "H"): QRCode;
