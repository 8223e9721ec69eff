import { registerSW } from "virtual:pwa-register";

/** Keeps the whole program on the device. A newer one takes over when the page is next opened, never under one's hands. */
export function keepOffline(): void {
  registerSW({ immediate: false });
}
