// The customer's page inside a page of a shop, the page that says how, and rates
// that are replaced or broken on the host, in one process.

import { after } from "node:test";
import { closeAll } from "./browser.mjs";
import { closeHosts } from "./embedhost.mjs";

await import("./embedframe.mjs");
await import("./embedrates.mjs");
after(async () => {
  await closeHosts();
  await closeAll();
});
