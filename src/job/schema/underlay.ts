import * as z from "zod";
import { pictureFields } from "./notes.ts";
import { degrees, id, kept, length, metres, point, words } from "./values.ts";

/** The most text that the lines of one underlay may be: about a million lines. */
const mostUnderlayText = 24_000_000;

/** A drawing or a picture under the plan of a storey. */
export const underlay = kept({
  id,
  storey: id.default("ground"),
  name: words.default(""),
  /** The file it was read from, and what was chosen, so that it can be read again. */
  file: words.default(""),
  shown: z.boolean().default(true),
  layers: z
    .array(kept({ name: words.default(""), colour: words.optional(), shown: z.boolean().default(true) }))
    .default([]),
  /** Where the underlay's own origin lies in the plan, and how it is turned there. */
  origin: point.default([0, 0]),
  turn: degrees.default(0),
  /** Millimetres of all lines, packed: see `underlay/line-text.ts`. */
  lines: z.string().max(mostUnderlayText).default(""),
  /** Blocks that were put into the drawing: a person says once which of them are luminaires. */
  blocks: z
    .array(
      kept({
        name: words.default(""),
        /** Picture of one: x1 y1 x2 y2 of each line about its middle. */
        lines: z.array(metres).max(400).default([]),
        places: z
          .array(
            kept({
              at: point,
              turn: degrees.default(0),
              length: length.default(0),
              width: length.default(0),
              type: words.optional(),
              circuit: words.optional(),
            }),
          )
          .max(10_000)
          .default([]),
      }),
    )
    .max(500)
    .optional(),
  /** A picture instead of lines, or below them. */
  picture: kept({
    ...pictureFields,
    /** Maps a pixel to the plan: nine numbers, row by row, of the projective map (x, y, 1) → (X, Y, W), X/W and Y/W in metres. */
    map: z.array(z.number().min(-1e9).max(1e9)).length(9),
  }).optional(),
  /** What the reading wrote, by kind and id, as a short print of each record: what differs since was changed by a person. */
  read: z.record(z.string().max(300), z.string().max(40)).optional(),
  /** What was chosen when it was read, so that it can be read again the same way. */
  choice: z.record(z.string(), z.unknown()).optional(),
});
