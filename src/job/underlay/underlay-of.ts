import { degreesOf } from "#engine";
import type { SurveyDrawing } from "../commands/survey-records.ts";
import type { JobUnderlay } from "../schema/job-file.ts";
import { textOfLines } from "./line-text.ts";

/** A drawing as the job keeps it under the plan: its lines packed, shown, where it was read. */
export const underlayOf = ({
  lines,
  layerOf,
  layers,
  blocks = [],
  ...drawing
}: SurveyDrawing): JobUnderlay => ({
  ...drawing,
  shown: true,
  layers: [...layers],
  origin: [0, 0],
  turn: 0,
  lines: textOfLines({ lines, layerOf }),
  ...(blocks.length === 0
    ? {}
    : {
        blocks: blocks.map((block) => ({
          name: block.name,
          lines: [...block.lines],
          places: block.places.map((place) => ({ ...place, turn: inFile(degreesOf(place.turn)) })),
        })),
      }),
});

/** Degrees as a file holds them: no more figures than anybody can see. */
const inFile = (degrees: number): number => Math.round(degrees * 1e6) / 1e6;
