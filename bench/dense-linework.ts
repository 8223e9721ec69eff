import { demoJob, type JobFile, textOfLines } from "#job";

/** Lengths of the lines of a drawing: many short strokes of hatches and letters, some of furniture, few of walls. [m] */
const lengths = [0.02, 0.05, 0.1, 0.3, 0.8, 3] as const;

/**
 * The demo job over a made-up drawing: chains of strokes scattered about the building by a fixed series of numbers.
 *
 * @param count - How many lines.
 */
export function denseJob(count: number): JobFile {
  const job = demoJob();
  const storey = job.storeys[0];
  if (!storey) throw new Error("The demo job has no storey.");
  const lines = new Float64Array(4 * count);
  const next = series(20_251);
  const [wide, high] = [60, 40];
  let [x, y] = [0, 0];
  for (let i = 0; i < count; i++) {
    if (i % 5 === 0) [x, y] = [next() * wide - 15, next() * high - 12];
    const length = lengths[Math.floor(next() ** 2 * lengths.length)] as number;
    const angle = Math.floor(next() * 8) * (Math.PI / 4);
    lines.set([x, y], 4 * i);
    [x, y] = [x + length * Math.cos(angle), y + length * Math.sin(angle)];
    lines.set([x, y], 4 * i + 2);
  }
  return {
    ...job,
    underlays: [
      {
        id: "dense",
        storey: storey.id,
        name: "Dense drawing",
        file: "",
        shown: true,
        layers: [{ name: "0", shown: true }],
        origin: [0, 0],
        turn: 0,
        lines: textOfLines({ lines, layerOf: new Uint16Array(count) }),
      },
    ],
  };
}

/** Numbers from 0 to below 1, the same at every run. */
function series(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
