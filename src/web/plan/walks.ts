import type { WalkMarks } from "../calculate/walk-protocol.ts";
import type { Workbench } from "../shell/workbench.ts";

export type { WalkMark, WalkMarks } from "../calculate/walk-protocol.ts";

/** The stations of the room whose walk test is open, where that is on the storey on show; its panel makes them. */
export const walkMarksOf = ({ stage, panel, walks, job, storey }: Workbench): WalkMarks | undefined =>
  stage === "test" && panel.kind === "walk" && walks.of === job.site && walks.marks?.storey === storey
    ? walks.marks
    : undefined;
