import { type JobFile, type JobUnderlay, linesOfText } from "#job";
import type { Underlay } from "../contract.ts";

const unpacked = new WeakMap<JobUnderlay, Underlay>();
const read = new WeakMap<JobFile["underlays"], readonly Underlay[]>();

/** The underlays of a job where they lie in the plan; the same objects while they are the same. Damaged lines are left out. */
export function underlaysOf({ underlays }: JobFile): readonly Underlay[] {
  const found =
    read.get(underlays) ?? underlays.filter(({ shown, lines }) => shown && lines !== "").map(unpack);
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
