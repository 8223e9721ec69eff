import { paintDrawing } from "../paint/drawing.ts";
import {
  drawBack,
  drawFinished,
  drawMoved,
  drawPressed,
  drawReleased,
  drawTowards,
  drawTyped,
} from "./draw.ts";

/** What one needs only while one draws; loaded once the plan shows, so that the first page is light. */
export const drawingTools = {
  back: drawBack,
  finished: drawFinished,
  moved: drawMoved,
  paint: paintDrawing,
  pressed: drawPressed,
  released: drawReleased,
  towards: drawTowards,
  typed: drawTyped,
} as const;

export type DrawingTools = typeof drawingTools;
