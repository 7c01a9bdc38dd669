// Lets the page work without a connection from the second visit on: it registers the worker
// that stores one whole build, and goes on to a newer build only as a whole.

/** offer(load) is called when a newer build is ready while answers are open. top: the
 *  relative address of the top of the site. */
export async function startOffline(
  nothingEntered: () => boolean,
  offer: (load: () => void) => unknown,
  top = "",
): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register(`${top}sw.js`);
    const take = (worker: ServiceWorker): void => {
      navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
      worker.postMessage("take over");
    };
    const consider = (worker: ServiceWorker): void => {
      if (!navigator.serviceWorker.controller) return;
      if (nothingEntered()) take(worker);
      else offer(() => take(worker));
    };
    if (registration.waiting) consider(registration.waiting);
    registration.addEventListener("updatefound", () => {
      const worker = registration.installing;
      worker?.addEventListener("statechange", () => {
        if (worker.state === "installed") consider(worker);
      });
    });
  } catch {
    // Without it the page works, only not offline.
  }
}

/** tell(true) when the connection goes, tell(false) when it is back. */
export function watchConnection(tell: (off: boolean) => unknown): void {
  addEventListener("offline", () => tell(true));
  addEventListener("online", () => tell(false));
  if (!navigator.onLine) tell(true);
}
