// What may become the address of a script (W3C Trusted Types). Where the browser
// has them, it asks this policy about every such text: the worker with the engine
// and the worker for offline use pass, nothing else does. It makes no markup and no
// code of a text at all, so any such attempt is refused.

import { ofBuild } from "./address.ts";

const OWN = ["worker.js", "../sw.js"].map((name) => ofBuild(name).href);

globalThis.trustedTypes?.createPolicy("default", {
  createScriptURL: (text) => (OWN.includes(new URL(text, location.href).href) ? text : null),
});
