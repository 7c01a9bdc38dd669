// The name of a list's entry, for what the check says about it.

import { isObject, type Words } from "../shared/ratesfile.ts";
import type { OutlineName, RatesOutlineReply } from "../shared/replies.ts";
import { asText } from "./boxes.ts";
import { type Draft, valueAt } from "./draft.ts";

/** "materials[3].price" as the name of the entry. The rest of the path stays, for it says
 *  which member is meant. */
export function entryName(path: string, draft: Draft, outline: RatesOutlineReply, words: Words): string {
  const [, listPath, n, rest] = /^(.*?)\[(\d+)\]\.?(.*)$/.exec(path) ?? [];
  if (n === undefined) return path;
  const value = draft.get(`${listPath}[${n}]`);
  const one = isObject(value) ? value : {};
  const known = (all: readonly Pick<OutlineName, "id" | "name_us" | "name_uk">[], id: unknown) => {
    const found = all.find((x) => x.id === id);
    return found && (words === "uk" ? found.name_uk : found.name_us);
  };
  const own = valueAt(one, `name.${words}`);
  const name =
    (own === undefined || own === null ? null : asText(own)) ??
    known(outline.parts, one.part) ??
    known(outline.steps, one.step) ??
    `number ${Number(n) + 1}`;
  return rest ? `${name}, ${rest.replace(/[._[]/g, " ").replace(/\]/g, "")}` : name;
}
