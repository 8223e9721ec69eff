import type { SurveyDrawing } from "../commands/survey-records.ts";
import type { JobUnderlay } from "../schema/job-file.ts";
import { textOfLines } from "./line-text.ts";

/** A drawing as the job keeps it under the plan: its lines packed, shown, where it was read. */
export const underlayOf = ({ lines, layerOf, layers, ...drawing }: SurveyDrawing): JobUnderlay => ({
  ...drawing,
  shown: true,
  layers: [...layers],
  origin: [0, 0],
  turn: 0,
  lines: textOfLines({ lines, layerOf }),
});
