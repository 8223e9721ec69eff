import { placed } from "../plan/page/matrix.ts";
import { type Entity, finite, numbersOf, radians } from "./entity.ts";
import type { TextItem } from "./item.ts";
import type { DxfRecord } from "./record.ts";
import { lineText, paragraphs } from "./text-codes.ts";

/** Letters of drawings are about this wide, as a share of their height. @source COMMON-PRACTICE */
const letterWidth = 0.6;

/** Where words stand before the plane of the entity turns them. */
interface Lettering {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly turn: number;
}

/** How a text is held at its point, from the left or the bottom: 0, ½, 1. */
interface Hold {
  readonly across: number;
  readonly up: number;
}

/**
 * A text of one line, or the value of an attribute.
 *
 * @param verticalCode - Group that says how the text is held upright: 73, in attributes 74
 */
export function singleLine(
  record: DxfRecord,
  { entity, verticalCode }: { entity: Entity; verticalCode: 73 | 74 },
): readonly TextItem[] {
  const [x, y, height, turn, wide] = numbersOf(record, [10, 20, 40, 50, 41]);
  const [x2, y2, across, up] = numbersOf(record, [11, 21, 72, verticalCode]);
  const text = lineText(firstText(record));
  const angle = radians(finite(turn, 0));
  const common = { text, height, turn: angle };
  const [horizontal, vertical] = [finite(across, 0), finite(up, 0)];
  if ((horizontal === 0 && vertical === 0) || !Number.isFinite(x2 + y2))
    return [...lettered({ ...common, x, y }, entity)];
  // Stretched between two points: the first is where it begins, and both give its direction.
  if (horizontal === 3 || horizontal === 5)
    return lettered({ ...common, x, y, turn: Math.atan2(y2 - y, x2 - x) }, entity);
  const hold = {
    across: horizontal === 2 ? 1 : horizontal === 1 || horizontal === 4 ? 0.5 : 0,
    up: vertical === 3 ? 1 : vertical === 2 || horizontal === 4 ? 0.5 : 0,
  };
  const held = heldAt({ ...common, x: x2, y: y2 }, hold, finite(wide, 1));
  // Most writers work out where the text begins, better than its width can be guessed here; some write anything.
  const near = Math.hypot(x - x2, y - y2) <= 2 * height * (1 + letterWidth * text.length);
  const written = (x !== x2 || y !== y2) && near && (x !== 0 || y !== 0);
  return lettered(written ? { ...common, x, y } : held, entity);
}

/** A text of several lines: one item a line. Lines that the writer's frame would wrap stay in one. */
export function severalLines(record: DxfRecord, entity: Entity): readonly TextItem[] {
  const [x, y, height, attachment, spacing] = numbersOf(record, [10, 20, 40, 71, 44]);
  let written = "";
  let angle = 0;
  let directionX = Number.NaN;
  for (let i = 0; i < record.count; i++) {
    const code = record.code(i);
    if (code === 1 || code === 3) written += record.text(i);
    else if (code === 50) angle = radians(finite(record.number(i), 0));
    else if (code === 11) directionX = record.number(i);
    // The later of angle and direction counts.
    else if (code === 21 && Number.isFinite(directionX)) angle = Math.atan2(record.number(i), directionX);
  }
  const lines = paragraphs(written);
  const step = lineStep * height * finite(spacing, 1);
  const place = finite(attachment, 1);
  const [column, row] = [(place - 1) % 3, Math.floor((place - 1) / 3)];
  const total = height + (lines.length - 1) * step;
  // The foot of the first line above the point of attachment.
  const foot = (row === 0 ? 0 : row === 1 ? total / 2 : total) - height;
  return lines.flatMap((text, i) => {
    const rise = foot - i * step;
    const at = { text, height, turn: angle, x: x - rise * Math.sin(angle), y: y + rise * Math.cos(angle) };
    return lettered(heldAt(at, { across: column / 2, up: 0 }, 1), { ...entity, plane: [1, 0, 0, 1, 0, 0] });
  });
}

/** Distance of the feet of two lines, as a multiple of the letter height. @source FROM-MEMORY */
const lineStep = 5 / 3;

const firstText = (record: DxfRecord): string => {
  for (let i = 0; i < record.count; i++) if (record.code(i) === 1) return record.text(i);
  return "";
};

const heldAt = (text: Lettering, hold: Hold, wide: number): Lettering => {
  const back = hold.across * letterWidth * wide * text.height * text.text.length;
  const down = hold.up * text.height;
  return {
    ...text,
    x: text.x - back * Math.cos(text.turn) + down * Math.sin(text.turn),
    y: text.y - back * Math.sin(text.turn) - down * Math.cos(text.turn),
  };
};

const lettered = (text: Lettering, { plane, layer }: Entity): readonly TextItem[] => {
  if (text.text === "" || !(text.height > 0)) return [];
  const [x, y] = placed(plane, text.x, text.y);
  const [cos, sin] = [Math.cos(text.turn), Math.sin(text.turn)];
  const turned = (u: number, v: number) =>
    [plane[0] * u + plane[2] * v, plane[1] * u + plane[3] * v] as const;
  return [
    {
      kind: "text",
      text: text.text,
      x,
      y,
      height: text.height,
      along: turned(cos, sin),
      up: turned(-sin, cos),
      layer,
    },
  ];
};
