import type { Outline } from "#engine";
import type { SurveyDrawing } from "#exchange";
import { type JobFile, type JobUnderlay, linesOfText, textOfLines } from "#job";
import type { Underlay, WallRings } from "../contract.ts";

/** Records that keep walls of a foreign file under the plan, one for a storey. */
export const underlaysOfWalls = (walls: readonly WallRings[], file: string): readonly JobUnderlay[] =>
  walls.map(({ storey, rings }, index) => ({
    id: `underlay-${index + 1}`,
    storey,
    name: "",
    file,
    shown: true,
    layers: [],
    origin: [0, 0],
    turn: 0,
    lines: textOfLines(edgesOf(rings)),
  }));

/** Records that keep the drawings of a foreign file under the plan. */
export const underlaysOfDrawings = (drawings: readonly SurveyDrawing[]): readonly JobUnderlay[] =>
  drawings.map(({ lines, layerOf, layers, ...drawing }) => ({
    ...drawing,
    shown: true,
    layers,
    origin: [0, 0],
    turn: 0,
    lines: textOfLines({ lines, layerOf }),
  }));

function edgesOf(rings: readonly Outline[]): Parameters<typeof textOfLines>[0] {
  const lines = Float64Array.from(
    rings.flatMap((ring) =>
      ring.flatMap(([x, y], index) => {
        const [nextX, nextY] = ring[(index + 1) % ring.length]!;
        return [x, y, nextX, nextY];
      }),
    ),
  );
  return { lines, layerOf: new Uint16Array(lines.length / 4) };
}

const unpacked = new WeakMap<JobUnderlay, Underlay>();
const read = new WeakMap<JobFile["underlays"], readonly Underlay[]>();

/** The underlays of a job where they lie in the plan; the same objects while they are the same. Damaged lines are left out. */
export function underlaysOf({ underlays }: JobFile): readonly Underlay[] {
  const found = read.get(underlays) ?? underlays.filter(({ shown }) => shown).map(unpack);
  read.set(underlays, found);
  return found;
}

function unpack(record: JobUnderlay): Underlay {
  const made = unpacked.get(record) ?? { storey: record.storey, lines: placedLines(record) };
  unpacked.set(record, made);
  return made;
}

function placedLines({ lines: text, layers, origin, turn }: JobUnderlay): Float64Array {
  const packed = linesOfText(text);
  if (!packed) return new Float64Array();
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const placed = new Float64Array(packed.lines.length);
  let count = 0;
  packed.layerOf.forEach((layer, line) => {
    if (layers[layer]?.shown === false) return;
    for (const end of [4 * line, 4 * line + 2]) {
      const [x, y] = [packed.lines[end]!, packed.lines[end + 1]!];
      placed[count] = origin[0] + x * c - y * s;
      placed[count + 1] = origin[1] + x * s + y * c;
      count += 2;
    }
  });
  return placed.subarray(0, count);
}
