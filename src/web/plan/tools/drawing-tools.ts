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
export const drawingTools: DrawingTools = {
  back: drawBack,
  finished: drawFinished,
  moved: drawMoved,
  pressed: drawPressed,
  released: drawReleased,
  towards: drawTowards,
  tried: drawTried,
  typed: drawTyped,
};
