import { entityReader } from "./entities.ts";
import { numbersOf } from "./entity.ts";
import type { Item } from "./item.ts";
import type { RecordReader } from "./record.ts";
import { textOf } from "./record.ts";
import { type Tally, tally } from "./tally.ts";
import { lineText } from "./text-codes.ts";

/** A part of a drawing that is put in by its name, once or often. */
export interface Block {
  readonly name: string;
  /** Point of the block that comes to lie where it is put in. */
  readonly base: readonly [number, number];
  readonly items: readonly Item[];
  /** The content lies in another file. */
  readonly elsewhere: boolean;
  /** What of it was read and left out; counts once, and only if the block is used. */
  readonly tally: Tally;
}

/** The content is in another file, laid over or attached. */
const ELSEWHERE = 4 + 8;

/** Blocks of the section of blocks, from where the reader stands, by name in capitals. */
export function blocksOf(reader: RecordReader): Map<string, Block> {
  const blocks = new Map<string, Block>();
  for (let record = reader.next(); record && record.type !== "ENDSEC"; record = reader.next()) {
    if (record.type !== "BLOCK") continue;
    const name = lineText(textOf(record, 2));
    const [x, y, flags] = numbersOf(record, [10, 20, 70]);
    const elsewhere = (flags & ELSEWHERE) !== 0;
    const items: Item[] = [];
    const counts = tally();
    const entities = entityReader((item) => items.push(item), counts);
    let last = reader.place();
    for (record = reader.next(); record && !ends.has(record.type); record = reader.next()) {
      entities.record(record);
      last = reader.place();
    }
    entities.end();
    // The end of the section, or the next block, must be seen by the outer loop.
    if (record && record.type !== "ENDBLK") reader.goTo(last);
    const base = [Number.isFinite(x) ? x : 0, Number.isFinite(y) ? y : 0] as const;
    if (!blocks.has(name.toUpperCase()))
      blocks.set(name.toUpperCase(), { name, base, items, elsewhere, tally: counts });
  }
  return blocks;
}

const ends = new Set(["ENDBLK", "BLOCK", "ENDSEC", "EOF"]);
