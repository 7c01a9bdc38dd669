// Files in and out. A car file from elsewhere is foreign input: its size is
// looked at before it is read, and the engine checks the rest.

/** Largest car file read, in bytes. A full survey is about three thousand. */
const MOST_BYTES = 262144;
/** Deepest nesting read. A car file has six; far more would stop what copies it. */
const MOST_DEEP = 64;

/** Whether a text of JSON is nested deeper than any file of this project. */
export function tooDeep(text) {
  let deep = 0;
  for (const [mark] of text.replace(/"(?:[^"\\]|\\.)*"/g, "").matchAll(/[[\]{}]/g)) {
    deep += mark === "[" || mark === "{" ? 1 : -1;
    if (deep > MOST_DEEP) return true;
  }
  return false;
}

/** Offers a text as a file to save. */
export function saveFile(name, text, type = "application/json") {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const anchor = document.createElement("a");
  anchor.href = address;
  anchor.download = name;
  document.body.append(anchor);
  anchor.click();
  anchor.remove();
  setTimeout(() => URL.revokeObjectURL(address), 10000);
}

/** The object in a file; throws with a sentence for the customer. */
export async function readCarFile(file) {
  if (file.size > MOST_BYTES) throw new Error("This file is far too large to be a car file.");
  if (file.size === 0) throw new Error("This file is empty.");
  const text = await file.text();
  try {
    if (!tooDeep(text)) return JSON.parse(text);
  } catch {
    /* The same sentence. */
  }
  throw new Error("This is not a car file, or it is not whole.");
}

/** Lets a file be dropped anywhere on the page. The button does the same. */
export function whenDropped(node, take) {
  node.addEventListener("dragover", (event) => {
    if ([...event.dataTransfer.types].includes("Files")) event.preventDefault();
  });
  node.addEventListener("drop", (event) => {
    const file = event.dataTransfer.files[0];
    if (file) {
      event.preventDefault();
      take(file);
    }
  });
}
