import type { Detector, Site } from "#engine";
import { readLabelText } from "#output";

/** What a label leads to in the open job. */
export type Resolved =
  | { readonly kind: "device"; readonly device: Detector }
  /** The tag has another device now: that of the label was replaced. */
  | { readonly kind: "swapped"; readonly device: Detector }
  | { readonly kind: "several"; readonly devices: readonly Detector[] }
  | { readonly kind: "other-job"; readonly identity: string; readonly tag: string }
  | { readonly kind: "gone"; readonly tag: string }
  | { readonly kind: "no-tag"; readonly tag: string }
  /** A code that is on no label. */
  | { readonly kind: "no-label"; readonly text: string };

/** The job that is open, as its labels know it. */
export interface LabelledJob {
  readonly identity: string;
  readonly site: Pick<Site, "detectors">;
}

/**
 * What the code of a label leads to, with nothing but the open job.
 *
 * @param text - What was read.
 * @example A label whose device was replaced by another of the same tag leads to the one that hangs there now
 */
export function resolveCode(text: string, { identity, site }: LabelledJob): Resolved {
  const label = readLabelText(text);
  if (!label) return { kind: "no-label", text };
  const { job, device: id, tag } = label;
  // A label printed from a file without identity names no job: its ids must do.
  if (job !== "" && job !== identity) return { kind: "other-job", identity: job, tag };
  const device = site.detectors.find((one) => one.id === id);
  if (device) return { kind: "device", device };
  const [heir, ...more] = site.detectors.filter((one) => one.tag === tag);
  return heir && more.length === 0 ? { kind: "swapped", device: heir } : { kind: "gone", tag };
}

/** What a tag leads to as a person types it: capitals, blanks and points do not matter. */
export function resolveTag(typed: string, { site }: Pick<LabelledJob, "site">): Resolved {
  const wanted = bare(typed);
  const devices = site.detectors.filter(({ tag }) => bare(tag) === wanted);
  const [device] = devices;
  if (!device || wanted === "") return { kind: "no-tag", tag: typed.trim() };
  return devices.length === 1 ? { kind: "device", device } : { kind: "several", devices };
}

const bare = (tag: string): string => tag.toLowerCase().replace(/[^\p{L}\p{N}]/gu, "");
