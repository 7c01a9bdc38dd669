// Files in and out. A car file comes from outside: its size is checked before it is read,
// and the engine checks the rest.

/** Largest car file read, in bytes. A full survey has about three thousand. */
const MOST_BYTES = 262144;
/** Deepest nesting read. A car file has six levels; far more would stop what copies it. */
const MOST_DEEP = 64;

/** Whether a text of JSON is nested deeper than any file of this project. */
export function tooDeep(text: string): boolean {
  let deep = 0;
  for (const [mark] of text.replace(/"(?:[^"\\]|\\.)*"/g, "").matchAll(/[[\]{}]/g)) {
    deep += mark === "[" || mark === "{" ? 1 : -1;
    if (deep > MOST_DEEP) return true;
  }
  return false;
}

/** What an error says, of whatever kind it is. */
export const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Offers a text as a file to save. */
export function saveFile(name: string, text: BlobPart, type = "application/json"): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const anchor = document.createElement("a");
  anchor.href = address;
  anchor.download = name;
  document.body.append(anchor);
  anchor.click();
  anchor.remove();
  setTimeout(() => URL.revokeObjectURL(address), 10000);
}

/** The JSON in a file, not yet checked by the engine. Throws with a sentence for the reader. */
export async function readCarFile(file: File): Promise<unknown> {
  if (file.size > MOST_BYTES) throw new Error("This file is far too large to be a car file.");
  if (file.size === 0) throw new Error("This file is empty.");
  const text = await file.text();
  try {
    if (!tooDeep(text)) return JSON.parse(text);
  } catch {
    // It gets the same sentence.
  }
  throw new Error("This is not a car file, or it is not whole.");
}

/** Lets a file be dropped anywhere on the page. A button does the same. */
export function whenDropped(node: HTMLElement, take: (file: File) => unknown): void {
  node.addEventListener("dragover", (event) => {
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
  });
  node.addEventListener("drop", (event) => {
    const file = event.dataTransfer?.files[0];
    if (file) {
      event.preventDefault();
      take(file);
    }
  });
}
