/** Where plan metres lie on a canvas: x to the right, y up in the plan and down on the canvas. */
export interface LinePlace {
  /** Device pixels for one metre. */
  readonly scale: number;
  /** Device pixel of the plan's origin. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** So many lines are stroked at once. */
const slice = 4000;

/** Where the brush draws: what of a canvas the lines need. */
export type LineBrush = Pick<CanvasRenderingContext2D, "beginPath" | "moveTo" | "lineTo" | "stroke">;

/**
 * Strokes straight lines, slice by slice, those off the canvas left out. Lines shorter than a pixel are drawn once for each
 * pixel that they lie in: of ten thousand strokes of a hatch seen from afar only what can be told apart is drawn.
 *
 * @param lists - x1 y1 x2 y2 of each line. [m]
 * @returns Steps: after each there may be a pause.
 */
export function* strokeLines(
  brush: LineBrush,
  lists: readonly Float64Array[],
  to: LinePlace,
): Generator<void, void, void> {
  const taken = new Uint8Array(Math.max(0, to.width * to.height));
  let inSlice = 0;
  brush.beginPath();
  for (const lines of lists) {
    let [lastX, lastY] = [Number.NaN, Number.NaN];
    for (let i = 0; i + 3 < lines.length; i += 4) {
      const ax = to.x + lines[i]! * to.scale;
      const ay = to.y - lines[i + 1]! * to.scale;
      const bx = to.x + lines[i + 2]! * to.scale;
      const by = to.y - lines[i + 3]! * to.scale;
      if (isOff(ax, bx, to.width) || isOff(ay, by, to.height)) continue;
      if (Math.abs(bx - ax) < 1 && Math.abs(by - ay) < 1) {
        const cell = Math.floor(ay) * to.width + Math.floor(ax);
        if (cell < 0 || cell >= taken.length || taken[cell] === 1) continue;
        taken[cell] = 1;
      }
      // A chain is drawn without a gap at its corners.
      if (ax !== lastX || ay !== lastY) brush.moveTo(ax, ay);
      brush.lineTo(bx, by);
      [lastX, lastY] = [bx, by];
      inSlice += 1;
      if (inSlice < slice) continue;
      brush.stroke();
      yield;
      brush.beginPath();
      [lastX, lastY] = [Number.NaN, Number.NaN];
      inSlice = 0;
    }
  }
  brush.stroke();
}

/** Room for the width of a line. [px] */
const lineRoom = 2;

const isOff = (a: number, b: number, most: number): boolean =>
  (a < -lineRoom && b < -lineRoom) || (a > most + lineRoom && b > most + lineRoom);
