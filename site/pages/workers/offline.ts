// Stores one whole build for use without a connection. The worker checks every file against
// its sum when it stores it, so it never uses a folder that is only half copied: the older
// build stays until the new one is complete.
//
// The rates are the one file that a shop changes by itself: the worker asks for them first, and
// uses the stored ones when there is no answer. It takes them only from a host that still has
// this very build, so that new rates never meet an old engine.
//
// Only the shop's pages load the whole engine, so the worker stores it only where one of them
// is used: a customer's device need not load it.

interface BuiltFile {
  path: string;
  /** The sum of its bytes, as for fetch's "integrity". */
  integrity: string;
  /** Only the shop's pages load it. */
  shop?: boolean;
}

/** The build puts the list of its files here. */
declare const BUILT_FILES: { id: string; files: BuiltFile[] };
declare const self: ServiceWorkerGlobalScope;

const build = BUILT_FILES;
const CACHE = `build ${build.id}`;
const RATES_WAIT_MS = 4000;
const here = (path: string): string => new URL(path, self.registration.scope).href;

async function store(cache: Cache, { path, integrity }: BuiltFile): Promise<void> {
  const address = here(path);
  const response = await fetch(address, { integrity }).catch(() =>
    fetch(address, { integrity, cache: "reload" }),
  );
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  await cache.put(address, response);
}

/** Whether a page of the shop is open. Those pages are in folders of their own. */
async function shopIsOpen(): Promise<boolean> {
  const open = await self.clients.matchAll({ includeUncontrolled: true, type: "window" });
  const top = here("");
  return open.some(
    ({ url }) =>
      url.startsWith(top) &&
      url
        .slice(top.length)
        .replace(/[?#].*$/s, "")
        .includes("/"),
  );
}

/** Whether a page of the shop was used with an older build. */
async function shopWasHere(): Promise<boolean> {
  const names = build.files.filter(({ shop }) => shop).map(({ path }) => path.slice(path.lastIndexOf("/")));
  for (const name of await caches.keys()) {
    if (!name.startsWith("build ") || name === CACHE) continue;
    const stored = await (await caches.open(name)).keys();
    if (stored.some(({ url }) => names.some((end) => url.endsWith(end)))) return true;
  }
  return false;
}

async function install(): Promise<void> {
  const cache = await caches.open(CACHE);
  const all = (await shopIsOpen()) || (await shopWasHere());
  await Promise.all(build.files.filter((file) => all || !file.shop).map((file) => store(cache, file)));
  const rates = await fetch(here("rates.json"), { cache: "no-cache" });
  if (rates.ok) await cache.put(here("rates.json"), rates);
}

async function activate(): Promise<void> {
  for (const name of await caches.keys()) {
    if (name.startsWith("build ") && name !== CACHE) await caches.delete(name);
  }
}

async function ratesFromHost(): Promise<Response> {
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

async function rates(): Promise<Response> {
  const late = new Promise<never>((_, reject) => setTimeout(() => reject(new Error("late")), RATES_WAIT_MS));
  try {
    return await Promise.race([ratesFromHost(), late]);
  } catch {
    return (await (await caches.open(CACHE)).match(here("rates.json"))) ?? fetch(here("rates.json"));
  }
}

async function fromBuild(address: string, file: BuiltFile): Promise<Response> {
  const cache = await caches.open(CACHE);
  const stored = await cache.match(address);
  if (stored || !file.shop) return stored ?? fetch(address);
  await store(cache, file);
  return (await cache.match(address)) ?? fetch(address);
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
  if (build.files.some((file) => here(file.path) === `${url.href}/index.html`)) {
    event.respondWith(Response.redirect(`${url.href}/`, 302));
    return;
  }
  const address = url.href.endsWith("/") ? `${url.href}index.html` : url.href;
  if (address === here("rates.json")) {
    event.respondWith(rates());
    return;
  }
  const file = build.files.find(({ path }) => here(path) === address);
  if (file) event.respondWith(fromBuild(address, file));
});

// Makes this file a module, so that its names stay its own.
export {};
