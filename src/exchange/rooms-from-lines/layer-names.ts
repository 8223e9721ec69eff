import { english, type Metres, type Point } from "#engine";
import type { Linework } from "../linework/linework.ts";
import { type Box, boxOf, inPiece } from "../region.ts";
import { roomUse } from "../room-use.ts";
import type { FoundRoom } from "./found.ts";
import { mayNameRooms, meaningOf } from "./layer-words.ts";
import { CALLED, NAMELESS } from "./room-confidence.ts";
import { roomNumber } from "./room-names.ts";

/** A layer is one room's where their boxes overlap by so much, intersection over union. */
const SAME_BOX = 0.75;
/** Layers "1", "2", "25" number pens, not rooms. */
const LEAST_DIGITS = 3;

/**
 * Rooms without lettering named by layers that hold one room each: some plans draw every room on a layer that is called as the room is.
 *
 * A layer counts where its name is a room's number, or says what a room is used for, and its lines fill the box of one room alone.
 *
 * @param rooms - As found. @param of.linework - The drawing. @param of.metres - Metres in one unit.
 * @param of.shift - Plan point + shift = drawing point in metres.
 * @source DERIVED-HERE
 * @example A ring of 4 m × 3 m on layer "E15-309" round a nameless room: its number is E15-309
 */
export function namedByLayers(
  rooms: readonly FoundRoom[],
  of: {
    readonly linework: Pick<Linework, "layers" | "lines" | "layerOf">;
    readonly metres: Metres;
    readonly shift: Point;
  },
): readonly FoundRoom[] {
  if (rooms.every(({ name, number }) => name + number !== "")) return rooms;
  const labels = labelsOf(of);
  if (labels.length === 0) return rooms;
  return rooms.map((room) => {
    if (room.name + room.number !== "") return room;
    const box = boxOf(room.outline);
    const best = labels
      .map((label) => ({ label, share: sharedBoxes(box, label.box) }))
      .filter(({ label, share }) => share >= SAME_BOX && inPiece(middleOf(label.box), room))
      .reduce<{ label: Label; share: number } | undefined>(
        (most, one) => (most && most.share >= one.share ? most : one),
        undefined,
      )?.label;
    if (!best) return room;
    return {
      ...room,
      number: best.number,
      name: best.name,
      confidence: room.confidence + CALLED,
      doubts: room.doubts.filter((doubt) => english(doubt) !== english(NAMELESS)),
    };
  });
}

interface Label {
  readonly number: string;
  readonly name: string;
  /** Of the layer's lines, on the plan. [m] */
  readonly box: Box;
}

/** Layers whose names may be those of rooms. */
function labelsOf({
  linework,
  metres,
  shift,
}: {
  readonly linework: Pick<Linework, "layers" | "lines" | "layerOf">;
  readonly metres: Metres;
  readonly shift: Point;
}): readonly Label[] {
  const { layers, lines, layerOf } = linework;
  const boxes = layers.map((): [number, number, number, number] => [
    Infinity,
    Infinity,
    -Infinity,
    -Infinity,
  ]);
  for (let i = 0; i < layerOf.length; i++) {
    const box = boxes[layerOf[i]!]!;
    for (const k of [0, 2]) {
      const x = lines[4 * i + k]!;
      const y = lines[4 * i + k + 1]!;
      if (x < box[0]) box[0] = x;
      if (y < box[1]) box[1] = y;
      if (x > box[2]) box[2] = x;
      if (y > box[3]) box[3] = y;
    }
  }
  return layers.flatMap(({ name, lines: count }, layer): Label[] => {
    // A name with the drawing that it was bound from in front: "plan$0$E15-309".
    const plain = name.slice(name.lastIndexOf("$") + 1).trim();
    if (count === 0 || !mayNameRooms(plain)) return [];
    const numbered = roomNumber(plain) && plain.replace(/\D/g, "").length >= LEAST_DIGITS;
    const meaning = meaningOf(plain);
    const used = meaning !== "furniture" && meaning !== "note" && roomUse(plain) !== "other";
    if (!numbered && !used) return [];
    const box = boxes[layer]!.map((value, k) => value * metres - shift[(k & 1) as 0 | 1]);
    return [{ number: numbered ? plain : "", name: numbered ? "" : plain, box: box as unknown as Box }];
  });
}

function sharedBoxes(a: Box, b: Box): number {
  const wide = Math.min(a[2], b[2]) - Math.max(a[0], b[0]);
  const high = Math.min(a[3], b[3]) - Math.max(a[1], b[1]);
  if (wide <= 0 || high <= 0) return 0;
  const size = ([x1, y1, x2, y2]: Box): number => (x2 - x1) * (y2 - y1);
  return (wide * high) / (size(a) + size(b) - wide * high);
}

const middleOf = ([x1, y1, x2, y2]: Box): Point => [(x1 + x2) / 2, (y1 + y2) / 2];
