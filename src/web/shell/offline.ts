/**
 * Keeps the whole program on the device. A newer one takes over when the page is next opened, never under one's hands: it waits until no
 * page of the one before is open.
 */
export function keepOffline(): void {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  // Where the browser does not let it, the page works all the same as long as there is a network.
  const register = (): void =>
    void navigator.serviceWorker.register(new URL("sw.js", document.baseURI)).catch(() => undefined);
  if (document.readyState === "complete") register();
  else addEventListener("load", register, { once: true });
}
