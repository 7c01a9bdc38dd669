// Works without a connection the second time: registers the worker that keeps
// one whole build, and moves on to a newer build only as a whole.

/** offer(load) is called when a newer build is ready while answers are open.
 *  top: the way from the page to the top of the site. */
export async function startOffline(nothingEntered, offer, top = "") {
  if (!("serviceWorker" in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register(`${top}sw.js`);
    const take = (worker) => {
      navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
      worker.postMessage("take over");
    };
    const consider = (worker) => {
      if (!navigator.serviceWorker.controller) return;
      if (nothingEntered()) take(worker);
      else offer(() => take(worker));
    };
    if (registration.waiting) consider(registration.waiting);
    registration.addEventListener("updatefound", () => {
      const worker = registration.installing;
      worker.addEventListener("statechange", () => {
        if (worker.state === "installed") consider(worker);
      });
    });
  } catch {
    /* Without it the page works, only not offline. */
  }
}

/** tell(true) when the connection goes, tell(false) when it is back. */
export function watchConnection(tell) {
  addEventListener("offline", () => tell(true));
  addEventListener("online", () => tell(false));
  if (!navigator.onLine) tell(true);
}
