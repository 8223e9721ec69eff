/** What the code on a label holds, so that it can be read without any network. */
export interface LabelText {
  /** Identity of the job, which all of its copies carry. */
  readonly job: string;
  readonly device: string;
  readonly room: string;
  readonly tag: string;
}

const scheme = "roomwake:device";

/**
 * The text of a label's code: `roomwake:device/JOB/DEVICE/ROOM/TAG`, each part percent-encoded as in a web address.
 *
 * @example labelText({ job: "j", device: "d1", room: "hall", tag: "B1.04" }) is "roomwake:device/j/d1/hall/B1.04"
 */
export const labelText = ({ job, device, room, tag }: LabelText): string =>
  [scheme, ...[job, device, room, tag].map(encodeURIComponent)].join("/");

/** The way back; undefined for any other text. Parts after the tag belong to a later edition of the format and are passed over. */
export function readLabelText(text: string): LabelText | undefined {
  const [head, ...parts] = text.trim().split("/");
  if (head?.toLowerCase() !== scheme || parts.length < 4) return undefined;
  try {
    const [job, device, room, tag] = parts.map(decodeURIComponent) as [string, string, string, string];
    return device === "" ? undefined : { job, device, room, tag };
  } catch {
    return undefined;
  }
}
