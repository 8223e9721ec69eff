import type { Collector, MeasuredText } from "../page/collect.ts";
import { capitalOfSize } from "../page/letters.ts";
import { type Matrix, placed } from "../page/matrix.ts";

/** One run of letters as the package gives it. */
export interface TextRun {
  readonly str: string;
  readonly transform: readonly number[];
  /** [page units] */
  readonly width: number;
}

/** Collects the texts of a page that lie on the sheet. */
export function collectTexts(
  runs: readonly TextRun[],
  context: { collector: Collector; matrix: Matrix; size: readonly [number, number] },
): void {
  const { collector, matrix, size } = context;
  for (const run of runs) {
    const text = textOf(run, matrix);
    if (!text) continue;
    const [x, y] = text.at;
    if (x < 0 || y < 0 || x > size[0] || y > size[1]) continue;
    const layer = collector.layerOf({ group: undefined, kind: "text", colour: "", shown: true });
    collector.text({ ...text, layer });
  }
}

const textOf = (run: TextRun, matrix: Matrix): Omit<MeasuredText, "layer"> | undefined => {
  const text = run.str.trim();
  const [a, b, c, d, e, f] = run.transform as unknown as Matrix;
  if (text === "") return undefined;
  const along = difference(matrix, [a, b]);
  const up = difference(matrix, [c, d]);
  const length = Math.hypot(...along);
  const unit = Math.hypot(matrix[0], matrix[1]);
  const width = run.width * unit;
  // Blanks before the first letter take their share of the run's width, near enough.
  const blanks = ((run.str.length - run.str.trimStart().length) / run.str.length) * width;
  const [x, y] = placed(matrix, e, f);
  return {
    text,
    at: [x + (along[0] / length) * blanks, y + (along[1] / length) * blanks],
    height: Math.hypot(...up) * capitalOfSize,
    turn: Math.atan2(along[1], along[0]),
    width: width - blanks,
  };
};

const difference = (m: Matrix, [x, y]: readonly [number, number]): readonly [number, number] => [
  m[0] * x + m[2] * y,
  m[1] * x + m[3] * y,
];
