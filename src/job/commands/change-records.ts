import type { Point, Problem } from "#engine";
import { recordSaid } from "../parse/record-words.ts";
import type { RecordKind } from "../schema/job-file.ts";
import type { Command, Fields } from "./command.ts";
import { recordOf, set } from "./record-edits.ts";

/** Sets fields of one record; a field that is set to undefined goes. */
export const changeRecord = <Kind extends RecordKind>(
  kind: Kind,
  id: string,
  fields: Fields<Kind>,
): Command => ({
  name: "change-record",
  edits: () => ({ edits: [set(kind, id, fields)] }),
});

/** Moves a detector on its ceiling. [m] */
export const moveDetector = (id: string, at: Point): Command => ({
  name: "move-detector",
  edits: () => ({ edits: [set("detectors", id, { at: [at[0], at[1]] })] }),
});

/** Turns the notch of a detector. @param turn - Counter-clockwise from +x. [°] */
export const turnDetector = (id: string, turn: number): Command => ({
  name: "turn-detector",
  edits: () => ({ edits: [set("detectors", id, { turn })] }),
});

/** Moves one corner of a room's outline, or of one of its holes. */
export const moveCorner = (corner: {
  readonly room: string;
  readonly hole?: number;
  readonly corner: number;
  readonly to: Point;
}): Command => ({
  name: "move-corner",
  edits: (job) => {
    const room = recordOf(job, "rooms", corner.room);
    const ring = corner.hole === undefined ? room?.outline : room?.holes[corner.hole];
    if (!room || !ring?.[corner.corner]) return { problems: [gone("rooms", corner.room)] };
    const moved = ring.map((point, index): [number, number] =>
      index === corner.corner ? [corner.to[0], corner.to[1]] : [point[0], point[1]],
    );
    return {
      edits: [
        corner.hole === undefined
          ? set("rooms", room.id, { outline: moved })
          : set("rooms", room.id, {
              holes: room.holes.map((hole, index) => (index === corner.hole ? moved : hole)),
            }),
      ],
    };
  },
});

export const gone = (what: RecordKind, id: string): Problem => ({
  code: "job-record-gone",
  values: { what: recordSaid(what, id) },
  records: [id],
});
