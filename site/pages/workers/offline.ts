// Keeps one whole build for use without a connection. Every file is checked
// against its sum when it is taken in, so a folder that is half copied is never
// used: the older build stays until the new one is whole.
//
// The rates are the one file a shop changes by itself: they are asked for first
// and the kept ones used when there is no answer. They are taken only from a
// host that still serves this very build, so that new rates never meet an old
// engine.
//
// The whole engine, which only the shop's pages load, is kept where one of them is
// used: a customer's device need not load it.
declare const BUILT_FILES: { id: string; files: { path: string; integrity: string; shop?: boolean }[] };
const build = BUILT_FILES;
const CACHE = "build " + build.id;
const RATES_WAIT_MS = 4000;
const here = (path) => new URL(path, self.registration.scope).href;

async function takeIn(cache, { path, integrity }) {
  const address = here(path);
  let response;
  try {
    response = await fetch(address, { integrity });
  } catch {
    response = await fetch(address, { integrity, cache: "reload" });
  }
  if (!response.ok) throw new Error(path + ": " + response.status);
  await cache.put(address, response);
}

/** Whether a page of the shop is open, or was used with an older build. Those pages
 *  lie in folders of their own. */
async function shopIsHere() {
  const open = await self.clients.matchAll({ includeUncontrolled: true, type: "window" });
  const top = here("");
  if (open.some(({ url }) => url.startsWith(top) && url.slice(top.length).split(/[?#]/)[0].includes("/")))
    return true;
  for (const name of await caches.keys()) {
    if (!name.startsWith("build ") || name === CACHE) continue;
    const kept = await (await caches.open(name)).keys();
    if (
      kept.some(({ url }) =>
        build.files.some(({ shop, path }) => shop && url.endsWith(path.slice(path.lastIndexOf("/")))),
      )
    )
      return true;
  }
  return false;
}

async function install() {
  const cache = await caches.open(CACHE);
  const all = await shopIsHere();
  await Promise.all(build.files.filter((file) => all || !file.shop).map((file) => takeIn(cache, file)));
  const rates = await fetch(here("rates.json"), { cache: "no-cache" });
  if (rates.ok) await cache.put(here("rates.json"), rates);
}

async function activate() {
  for (const name of await caches.keys()) {
    if (name.startsWith("build ") && name !== CACHE) await caches.delete(name);
  }
}

async function ratesFromHost() {
  const [named, rates] = await Promise.all([
    fetch(here("build.json"), { cache: "no-store" }),
    fetch(here("rates.json"), { cache: "no-cache" }),
  ]);
  if (!named.ok || !rates.ok) throw new Error("no rates");
  if ((await named.json()).id !== build.id) {
    self.registration.update();
    throw new Error("another build");
  }
  await (await caches.open(CACHE)).put(here("rates.json"), rates.clone());
  return rates;
}

async function rates() {
  const late = new Promise((_, reject) => setTimeout(() => reject(new Error("late")), RATES_WAIT_MS));
  try {
    return await Promise.race([ratesFromHost(), late]);
  } catch {
    return (await (await caches.open(CACHE)).match(here("rates.json"))) ?? fetch(here("rates.json"));
  }
}

async function fromBuild(address, file) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(address);
  if (kept || !file.shop) return kept ?? fetch(address);
  await takeIn(cache, file);
  return cache.match(address);
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
});
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== self.location.origin) return;
  url.search = "";
  url.hash = "";
  // The folder of a page, with and without the slash at its end.
  if (build.files.some((file) => here(file.path) === url.href + "/index.html")) {
    event.respondWith(Response.redirect(url.href + "/", 302));
    return;
  }
  const address = url.href.endsWith("/") ? url.href + "index.html" : url.href;
  if (address === here("rates.json")) {
    event.respondWith(rates());
    return;
  }
  const file = build.files.find(({ path }) => here(path) === address);
  if (file) event.respondWith(fromBuild(address, file));
});
