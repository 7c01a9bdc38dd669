// A car in the part of an address that browsers do not send: after the "#".
//
//   #v1.<body>.<check>    body: raw DEFLATE (RFC 1951) of UTF-8 JSON, base64url (RFC 4648, 5)
//   #p1.<body>.<check>    the same without compression, for browsers that lack it
//   check: CRC-32 (the one of RFC 1952) of the JSON, eight hexadecimal digits
//
// The check finds a link that was cut short; it proves nothing about who made it. What comes
// out is from outside: the engine checks it.

import { messageOf, tooDeep } from "./files.ts";

/** Longest link read, in characters, and longest JSON it may unpack to, in bytes. */
export const MOST_CHARACTERS = 16384;
const MOST_BYTES = 65536;

/** A part of the link is missing or changed. */
export class NotWhole extends Error {}
/** The link is of a kind that this version does not know. */
export class Newer extends Error {}

/** CRC-32 as in RFC 1952, section 8, bit by bit. */
export function crc32(bytes: Uint8Array): string {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return ((crc ^ 0xffffffff) >>> 0).toString(16).padStart(8, "0");
}

const toText = (bytes: Uint8Array): string =>
  btoa(Array.from(bytes, (b) => String.fromCharCode(b)).join(""))
    .replaceAll("+", "-")
    .replaceAll("/", "_")
    .replace(/=+$/, "");

function fromText(text: string): Uint8Array<ArrayBuffer> {
  if (!/^[A-Za-z0-9_-]+$/.test(text)) throw new NotWhole("letters that do not belong");
  return Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (c) => c.charCodeAt(0));
}

/** Runs bytes through a stream, stopping as soon as more than most come out. */
async function through(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
  most: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const parts: Uint8Array<ArrayBuffer>[] = [];
  for (let size = 0; ; ) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.byteLength;
    if (size > most) {
      await reader.cancel();
      throw new NotWhole("too large");
    }
    parts.push(value);
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

/** A stream of its kind; null where the browser does not know raw DEFLATE. */
function compressor<S>(Kind: new (format: "deflate-raw") => S): S | null {
  try {
    return new Kind("deflate-raw");
  } catch {
    return null;
  }
}

/** The fragment for the content of a link, with its "#". */
export async function encode(content: unknown): Promise<string> {
  const bytes = new TextEncoder().encode(JSON.stringify(content));
  const stream = typeof CompressionStream === "function" ? compressor(CompressionStream) : null;
  const packed = stream ? await through(bytes, stream, MOST_BYTES) : bytes;
  return `#${stream ? "v1" : "p1"}.${toText(packed)}.${crc32(bytes)}`;
}

/** Whether an address carries a car at all. */
export function carriesCar(fragment: string): boolean {
  return /^#[a-z]\d+\./.test(fragment);
}

/** The content of a fragment, not checked yet; throws NotWhole or Newer. */
export async function decode(fragment: string): Promise<unknown> {
  if (fragment.length > MOST_CHARACTERS) throw new NotWhole("too long");
  const [kind, body, check, ...rest] = fragment.slice(1).split(".");
  if (kind !== "v1" && kind !== "p1") throw new Newer(kind);
  if (!body || !check || rest.length) throw new NotWhole("parts are missing");
  try {
    const packed = fromText(body);
    let bytes = packed;
    if (kind === "v1") {
      const stream = typeof DecompressionStream === "function" ? compressor(DecompressionStream) : null;
      if (!stream) throw new Newer("this browser cannot unpack the link");
      bytes = await through(packed, stream, MOST_BYTES);
    }
    if (crc32(bytes) !== check) throw new NotWhole("the check does not agree");
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    if (tooDeep(text)) throw new NotWhole("nested too deep");
    return JSON.parse(text);
  } catch (error) {
    throw error instanceof Newer ? error : new NotWhole(messageOf(error));
  }
}
