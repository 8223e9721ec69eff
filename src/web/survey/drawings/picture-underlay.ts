import type { JobUnderlay } from "#job";
import type { SmallPicture } from "./picture-file.ts";

/** A picture with its scale as the job keeps it under the plan of a storey. */
export const pictureUnderlay = (
  { name, ...pixels }: SmallPicture,
  { map, id, storey }: { readonly map: readonly number[]; readonly id: string; readonly storey: string },
): JobUnderlay => ({
  id,
  storey,
  name,
  file: name,
  shown: true,
  layers: [],
  origin: [0, 0],
  turn: 0,
  lines: "",
  picture: { ...pixels, map: [...map] },
});

/** Whether a file is a picture, by its kind or its name. */
export const isPicture = ({ name, type }: File): boolean =>
  /^image\/(png|jpeg)$/.test(type) || /\.(png|jpe?g)$/i.test(name);
