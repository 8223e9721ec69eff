import * as z from "zod";
import { id, kept, point, words } from "./values.ts";

/** The most text that one picture may be, base64: some 6 MB of picture. */
export const mostPictureText = 8_000_000;

/** A picture as a job carries it: made small when taken in, and without what a camera says of place and owner. */
export const pictureFields = {
  type: z.enum(["image/jpeg", "image/png"]),
  /** [px] */
  width: z.number().int().min(1).max(20_000),
  /** [px] */
  height: z.number().int().min(1).max(20_000),
  /** The file in base64. */
  data: z.string().max(mostPictureText),
} as const;

/** A photograph. */
export const photoSchema = kept({
  id,
  ...pictureFields,
  /** When it was taken, as the person's own clock said it: ISO 8601. */
  taken: words.optional(),
  /** What it shows. */
  caption: words.optional(),
  /** A photograph of the call sheet; absent: a note shows where it belongs. */
  of: z.literal("visit").optional(),
});

/** Words and photographs pinned to a place on the plan. */
export const noteSchema = kept({
  id,
  storey: id.default("ground"),
  room: id.optional(),
  at: point,
  text: z.string().max(20_000).default(""),
  photos: z.array(id).max(100).default([]),
});
