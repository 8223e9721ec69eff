import { paintDrawing } from "../paint/drawing.ts";
import type { PaintDrawing } from "../paint/handles.ts";
import {
  drawBack,
  drawFinished,
  drawMoved,
  drawPressed,
  drawReleased,
  drawTowards,
  drawTried,
  drawTyped,
} from "./draw.ts";
import type { DrawingTools } from "./state.ts";

/** What one needs only while one draws; loaded once the plan shows, so that the first page is light. */
export const drawingTools: DrawingTools & { readonly paint: PaintDrawing } = {
  back: drawBack,
  finished: drawFinished,
  moved: drawMoved,
  paint: paintDrawing,
  pressed: drawPressed,
  released: drawReleased,
  towards: drawTowards,
  tried: drawTried,
  typed: drawTyped,
};
