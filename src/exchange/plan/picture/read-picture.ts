import type { Problem } from "#engine";
import { megabytes, type PlanLimits, usualPlanLimits } from "../limits.ts";
import { looksLike } from "../looks-like.ts";
import { readJpeg } from "./jpeg.ts";
import { readPng } from "./png.ts";

/** A picture that lies under the plan. */
export interface PlanPicture {
  readonly format: "png" | "jpeg";
  /** Size as it is shown, turned as the camera said. [px] */
  readonly width: number;
  readonly height: number;
  /** What has to be done to the stored pixels to show them: 1 … 8 as EXIF counts. */
  readonly orientation: number;
  /** A copy without place, camera, time and every other remark; the pixels are the same, byte for byte. */
  readonly bytes: Uint8Array;
  /** What was removed: "EXIF", "comment". */
  readonly removed: readonly string[];
}

/**
 * Reads the size and the orientation of a PNG or JPEG picture from its head, and copies it without its remarks, of which
 * the place where it was taken is one. The pixels are not decoded here.
 */
export function readPicture(
  bytes: Uint8Array,
  options: { readonly limits?: Partial<PlanLimits> } = {},
): { readonly picture: PlanPicture } | { readonly problems: readonly Problem[] } {
  const limits = { ...usualPlanLimits, ...options.limits };
  const stopped = (problem: Problem) => ({ problems: [problem] });
  if (bytes.length === 0) return stopped({ code: "file-empty", values: {} });
  if (bytes.length > limits.bytes)
    return stopped({ code: "plan-too-large", values: { limit: megabytes(limits.bytes) } });
  const format = isPng(bytes) ? "png" : isJpeg(bytes) ? "jpeg" : undefined;
  if (!format) return stopped({ code: "plan-not-picture", values: { found: looksLike(bytes) } });
  const stored = format === "png" ? readPng(bytes) : readJpeg(bytes);
  if ("damage" in stored) return stopped({ code: "plan-picture-damaged", values: { reason: stored.damage } });
  if (stored.width * stored.height > limits.pixels) {
    const pixels = Math.ceil((stored.width * stored.height) / 1e6);
    return stopped({
      code: "plan-picture-too-large",
      values: { pixels, limit: Number((limits.pixels / 1e6).toPrecision(3)) },
    });
  }
  const { width, height, orientation, ...rest } = stored;
  const size = orientation >= 5 ? { width: height, height: width } : { width, height };
  return { picture: { format, orientation, ...size, ...rest } };
}

const isPng = (bytes: Uint8Array): boolean =>
  [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a].every((byte, i) => bytes[i] === byte);
const isJpeg = (bytes: Uint8Array): boolean => bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff;
