import { type GapCause, type Site, unreachable } from "#engine";

/** Why nobody is seen somewhere, in a few words for a label. */
export function gapWords(cause: GapCause, site: Site): string {
  const tag = (device: string): string => site.detectors.find((one) => one.id === device)?.tag ?? device;
  switch (cause.kind) {
    case "beyond-reach":
      return "beyond reach";
    case "hidden":
      return `hidden behind ${cause.behind.name || cause.behind.kind.replace("-", " ")}`;
    case "masked":
      return `masked at ${tag(cause.device)}`;
    case "mounting-limits":
      return `${tag(cause.device)} outside its mounting height`;
    case "too-warm":
      return "too warm";
    case "no-device":
      return "no detector";
    default:
      return unreachable(cause);
  }
}
