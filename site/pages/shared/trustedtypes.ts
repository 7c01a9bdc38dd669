// What may become the address of a script (W3C Trusted Types). Browsers that have them ask
// this policy about every such text. It lets the worker with the engine and the worker for
// offline use pass, and nothing else. It has no rule for HTML or for code, so strings never
// become either.

import { ofBuild } from "./address.ts";
import type {} from "./trustedtypesapi.ts";

const OWN = ["worker.js", "../sw.js"].map((name) => ofBuild(name).href);

globalThis.trustedTypes?.createPolicy("default", {
  createScriptURL: (text) => (OWN.includes(new URL(text, location.href).href) ? text : null),
});
