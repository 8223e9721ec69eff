import { readPicture } from "#exchange";
import { t } from "../../texts/index.ts";
import { remedyOf, sentenceOf } from "../../texts/problems.ts";

/** A picture as the job carries it. */
export interface SmallPicture {
  readonly name: string;
  readonly type: "image/jpeg";
  readonly width: number;
  readonly height: number;
  /** base64 */
  readonly data: string;
}

/** Longest side of a picture in a job: enough to read a plan, little enough to send. [px] */
const longest = 2400;
const quality = 0.85;

/**
 * Makes a picture small and straight: turned as the camera said, at most 2 400 pixels long, drawn anew so that nothing that a
 * camera writes into a file comes along.
 *
 * @returns The picture, or sentences that say why it cannot be taken.
 */
export async function smallPicture(
  file: File,
): Promise<SmallPicture | { readonly sentences: readonly string[] }> {
  const head = readPicture(new Uint8Array(await file.arrayBuffer()));
  if ("problems" in head)
    return { sentences: head.problems.map((problem) => `${sentenceOf(problem)} ${remedyOf(problem)}`) };
  const bitmap = await createImageBitmap(file, { imageOrientation: "from-image" }).catch(() => undefined);
  if (!bitmap) return { sentences: [t("drawings.picture.unreadable")] };
  const scale = Math.min(1, longest / Math.max(bitmap.width, bitmap.height));
  const [width, height] = [
    Math.max(1, Math.round(bitmap.width * scale)),
    Math.max(1, Math.round(bitmap.height * scale)),
  ];
  const canvas = new OffscreenCanvas(width, height);
  const brush = canvas.getContext("2d");
  if (!brush) return { sentences: [t("drawings.picture.unreadable")] };
  // What is transparent in a PNG is paper.
  brush.fillStyle = "#fff";
  brush.fillRect(0, 0, width, height);
  brush.imageSmoothingQuality = "high";
  brush.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  const blob = await canvas.convertToBlob({ type: "image/jpeg", quality });
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = "";
  for (let i = 0; i < bytes.length; i += 0x8000)
    text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return { name: file.name, type: "image/jpeg", width, height, data: btoa(text) };
}
