// What a real shop would not want to publish from the sample's words: its name,
// its contact, its note on tax, the paragraph that says the shop is invented. The
// engine watches over figures; these are texts.

const TEXTS = [
  ["shop.name", "The shop's name is still the sample's."],
  ["shop.town", "The town is still the sample's."],
  ["shop.contact.text", "How to reach you is still the sample's."],
  ["shop.contact.href", "The link to reach you is still the sample's."],
  ["tax.note", "The note on tax is still the sample's, and says that it is invented."],
];

/** Warnings in the form that the engine gives them. samples: rates objects. */
export function leftovers(draft, samples) {
  if (draft.get("shop.invented") !== false) return [];
  const at = (object, path) => path.split(".").reduce((o, step) => o?.[step], object);
  const same = (path) => {
    const mine = draft.get(path);
    return typeof mine === "string" && mine !== "" && samples.some((s) => at(s, path) === mine);
  };
  const found = TEXTS.filter(([path]) => same(path)).map(([path, text]) => ({ path, text }));
  const terms = draft.get("terms");
  const invented =
    Array.isArray(terms) &&
    terms.some((t) => /shop is invented/.test(t) && samples.some((s) => s.terms.includes(t)));
  return invented
    ? [...found, { path: "terms", text: "The terms still say that the shop is invented." }]
    : found;
}
