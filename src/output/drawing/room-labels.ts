import { areaOf, contains, figured, joined, type Region, type Room, regionOf, type Words } from "#engine";
import type { Speak } from "../words/speak.ts";
import { boxAround, type Label, type LabelLine, sizeOf } from "./labels.ts";
import type { Box, PaperPoint } from "./mark.ts";
import { extentOf, onPaper, onPlan, type Projection } from "./projection.ts";

/**
 * What a room is called, its area and height, as large as the room allows: number and name on one line, on several, or the
 * number alone; always at places where the whole label lies inside the room.
 */
export function roomLabel(
  room: Room,
  on: {
    readonly projection: Projection /** A word more, where there is something to say of the whole room. */;
    readonly note: Words | undefined;
    readonly speak: Speak;
  },
): Label {
  const { projection, speak } = on;
  const note = on.note === undefined ? undefined : speak(on.note);
  const region = regionOf(room.outline, room.holes);
  const height = joined(["h", figured(`${room.ceilingHeight.toFixed(2)} m`)], " ");
  const size = speak(joined([figured(`${areaOf(region).toFixed(1)} m²`), height], " · "));
  const name = room.name.trim() || room.id;
  const number = room.number.trim();
  const both = number === "" || number === name ? name : `${number} ${name}`;
  const more = note === undefined ? [] : [note];
  const variants: readonly (readonly string[])[] = [
    [both, size, ...more],
    ...(number === "" ? [] : [[number, name, size, ...more]]),
    ...(number === "" ? [] : [[number, ...name.split(/\s+/), ...more]]),
    [both, ...more],
    ...(number === "" ? [[...name.split(/\s+/), ...more]] : []),
    [number || name, ...more],
    [number || name],
  ];
  const middle = middleOf(region, projection);
  const last: Label = {
    lines: [{ text: number || name, size: 2.5, weight: "semibold" }],
    of: middle,
    places: [middle],
  };
  return (
    variants.reduceRight<Label | undefined>((shorter, lines) => {
      const lettered = lines.map(
        (text): LabelLine => ({
          text,
          size: 2.5,
          weight: text === size || text === note ? "regular" : "semibold",
        }),
      );
      const places = placesInside(region, lettered, projection);
      if (places.length === 0) return shorter;
      return { lines: lettered, of: places[0]!, places, ...(shorter === undefined ? {} : { shorter }) };
    }, undefined) ?? last
  );
}

/** Middles of boxes inside the room, those nearest its middle first. */
function placesInside(
  region: Region,
  lines: readonly LabelLine[],
  projection: Projection,
): readonly PaperPoint[] {
  const extent = extentOf(region.map((piece) => piece.outline));
  if (!extent) return [];
  const size = sizeOf(lines);
  const steps = 13;
  const middle = middleOf(region, projection);
  const places: PaperPoint[] = [];
  for (let i = 1; i < steps; i++)
    for (let j = 1; j < steps; j++) {
      const at = onPaper(
        [
          extent.left + ((extent.right - extent.left) * i) / steps,
          extent.low + ((extent.high - extent.low) * j) / steps,
        ],
        projection,
      );
      if (boxInside(region, boxAround(at, size), projection)) places.push(at);
    }
  const away = (at: PaperPoint): number => Math.hypot(at[0] - middle[0], at[1] - middle[1]);
  return places.sort((a, b) => away(a) - away(b));
}

function boxInside(region: Region, box: Box, projection: Projection): boolean {
  const rows = [box.top - 0.6, (box.top + box.bottom) / 2, box.bottom + 0.6];
  const columns = [0, 0.25, 0.5, 0.75, 1].map(
    (share) => box.left - 0.6 + share * (box.right - box.left + 1.2),
  );
  return rows.every((y) => columns.every((x) => contains(region, onPlan([x, y], projection))));
}

function middleOf(region: Region, projection: Projection): PaperPoint {
  const extent = extentOf(region.map((piece) => piece.outline))!;
  return onPaper([(extent.left + extent.right) / 2, (extent.low + extent.high) / 2], projection);
}
