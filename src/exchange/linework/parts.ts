import type { LineBox, LineText, Linework, UnitProposal } from "./linework.ts";

type Drawn = Pick<Linework, "lines" | "layerOf" | "layers" | "texts">;

/** Floors that lie side by side are at least this far apart; no building has an empty strip as wide right through it. [m] */
const clearGap = 2.5;
/** Or this share of the drawing's length, where that is more: two houses on one site are one part. */
const gapShare = 0.025;

/** A cluster with fewer lines than this share of the largest one's is a legend, a north arrow or a speck. */
const leastShare = 0.1;
const leastLines = 12;

/** A frame round several parts has few lines for all that lies in it. */
const frameShare = 0.05;

/**
 * Floors or sheets that lie side by side in one drawing: clusters of lines with a clear gap round each, from left to right
 * and then downwards; one entry with the whole drawing where there is but one. A part is called by the largest text in or
 * just below it that no other part has, else by its number.
 */
export function partsOf(drawn: Drawn, unit: UnitProposal): Linework["parts"] {
  const whole = boxOfShown(drawn);
  const length = Math.max(whole[2] - whole[0], whole[3] - whole[1]);
  const gap = Math.max(unit.from === "guessed" ? 0 : clearGap / unit.metres, gapShare * length);
  const single = [{ name: "Whole drawing", box: whole }];
  if (!(gap > 0)) return single;
  const clusters = withoutFrames(clustersOf(drawn, whole, gap));
  const most = Math.max(...clusters.map(({ lines }) => lines));
  const parts = joined(clusters).filter(({ lines }) => lines >= Math.max(leastLines, leastShare * most));
  if (parts.length < 2) return single;
  const ordered = inReadingOrder(parts.map(({ box }) => box));
  const names = namesFor(ordered, drawn.texts, gap);
  return ordered.map((box, i) => ({ name: names[i]!, box }));
}

interface Cluster {
  readonly box: LineBox;
  readonly lines: number;
}

const boxOfShown = ({ lines, layerOf, layers }: Drawn): LineBox => {
  const shown = layers.map((layer) => layer.shown);
  const any = layerOf.some((layer) => shown[layer]);
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < layerOf.length; i++) {
    if (any && !shown[layerOf[i]!]) continue;
    for (let k = 4 * i; k < 4 * i + 4; k += 2) {
      x0 = Math.min(x0, lines[k]!);
      x1 = Math.max(x1, lines[k]!);
      y0 = Math.min(y0, lines[k + 1]!);
      y1 = Math.max(y1, lines[k + 1]!);
    }
  }
  return [x0, y0, x1, y1];
};

/** Clusters on a grid of half a gap: cells with lines that are two or fewer cells apart belong together. */
const clustersOf = ({ lines, layerOf, layers }: Drawn, whole: LineBox, gap: number): Cluster[] => {
  const cell = gap / 2;
  const [across, up] = [cellOf(whole[2] - whole[0], cell) + 1, cellOf(whole[3] - whole[1], cell) + 1];
  const used = new Uint8Array(across * up);
  const shown = layers.map((layer) => layer.shown);
  const any = layerOf.some((layer) => shown[layer]);
  const column = (x: number): number => Math.min(across - 1, cellOf(x - whole[0], cell));
  const row = (y: number): number => Math.min(up - 1, cellOf(y - whole[1], cell));
  const each = (visit: (i: number) => void): void => {
    for (let i = 0; i < layerOf.length; i++) if (!any || shown[layerOf[i]!]) visit(i);
  };
  each((i) => {
    const [x1, y1, x2, y2] = [lines[4 * i]!, lines[4 * i + 1]!, lines[4 * i + 2]!, lines[4 * i + 3]!];
    const steps = 1 + Math.ceil(Math.max(Math.abs(x2 - x1), Math.abs(y2 - y1)) / cell);
    for (let k = 0; k <= steps; k++) {
      const t = k / steps;
      used[row(y1 + t * (y2 - y1)) * across + column(x1 + t * (x2 - x1))] = 1;
    }
  });
  const owner = new Int32Array(across * up).fill(-1);
  let count = 0;
  for (let start = 0; start < used.length; start++) {
    if (!used[start] || owner[start] !== -1) continue;
    const stack = [start];
    owner[start] = count;
    while (stack.length > 0) {
      const at = stack.pop()!;
      const [c, r] = [at % across, Math.floor(at / across)];
      for (let dr = -2; dr <= 2; dr++) {
        for (let dc = -2; dc <= 2; dc++) {
          if (c + dc < 0 || c + dc >= across || r + dr < 0 || r + dr >= up) continue;
          const next = (r + dr) * across + c + dc;
          if (!used[next] || owner[next] !== -1) continue;
          owner[next] = count;
          stack.push(next);
        }
      }
    }
    count++;
  }
  const boxes = Array.from({ length: count }, () => ({
    box: [Infinity, Infinity, -Infinity, -Infinity] as [number, number, number, number],
    lines: 0,
  }));
  each((i) => {
    const cluster = boxes[owner[row(lines[4 * i + 1]!) * across + column(lines[4 * i]!)]!]!;
    cluster.lines++;
    for (let k = 4 * i; k < 4 * i + 4; k += 2) {
      cluster.box[0] = Math.min(cluster.box[0], lines[k]!);
      cluster.box[1] = Math.min(cluster.box[1], lines[k + 1]!);
      cluster.box[2] = Math.max(cluster.box[2], lines[k]!);
      cluster.box[3] = Math.max(cluster.box[3], lines[k + 1]!);
    }
  });
  return boxes;
};

const cellOf = (distance: number, cell: number): number => Math.max(0, Math.floor(distance / cell));

const within = (inner: LineBox, outer: LineBox): boolean =>
  inner[0] >= outer[0] && inner[1] >= outer[1] && inner[2] <= outer[2] && inner[3] <= outer[3];

/** Frames of sheets hold several clusters and have few lines themselves. */
const withoutFrames = (clusters: readonly Cluster[]): readonly Cluster[] => {
  const kept = clusters.filter((frame) => {
    const inside = clusters.filter((one) => one !== frame && within(one.box, frame.box));
    const lines = inside.reduce((sum, one) => sum + one.lines, 0);
    return !(inside.length >= 2 && frame.lines < frameShare * lines);
  });
  return kept.length > 0 ? kept : clusters;
};

/** Clusters whose boxes overlap are one: what stands in a courtyard belongs to the building round it. */
const joined = (clusters: readonly Cluster[]): readonly Cluster[] => {
  const list = [...clusters].sort((a, b) => b.lines - a.lines);
  for (let i = 0; i < list.length; i++) {
    const one = list[i]!;
    const other = list.findIndex((each, k) => k > i && overlap(each.box, one.box));
    if (other < 0) continue;
    const [a, b] = [one.box, list[other]!.box];
    list[i] = {
      box: [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])],
      lines: one.lines + list[other]!.lines,
    };
    list.splice(other, 1);
    // The larger box may reach others that were passed already.
    i = -1;
  }
  return list;
};

const overlap = (a: LineBox, b: LineBox): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

/** Rows from the top, each from left to right; a part belongs to a row if its middle lies within the row's first part. */
const inReadingOrder = (boxes: readonly LineBox[]): readonly LineBox[] => {
  const rest = [...boxes].sort((a, b) => b[3] - a[3]);
  const ordered: LineBox[] = [];
  while (rest.length > 0) {
    const [, bottom] = rest[0]!;
    const row = rest.filter((box) => (box[1] + box[3]) / 2 >= bottom).sort((a, b) => a[0] - b[0]);
    ordered.push(...row);
    for (const box of row) rest.splice(rest.indexOf(box), 1);
  }
  return ordered;
};

/** Longest text that is taken for a name. */
const longestName = 60;

const namesFor = (boxes: readonly LineBox[], texts: readonly LineText[], gap: number): readonly string[] => {
  const worded = texts.filter(({ text }) => /\p{L}{2}/u.test(text) && text.length <= longestName);
  const usual = [...worded].sort((a, b) => a.height - b.height)[worded.length >> 1]?.height ?? 0;
  const large = worded.filter(({ height }) => height > 1.2 * usual || worded.length <= boxes.length);
  const near = boxes.map((box) =>
    large
      .filter(
        ({ at: [x, y] }) =>
          x >= box[0] - gap && x <= box[2] && y >= box[1] - 1.5 * gap && y <= box[3] + 1.5 * gap,
      )
      .sort((a, b) => b.height - a.height)
      .map(({ text }) => text),
  );
  const said = new Map<string, number>();
  for (const names of near) for (const name of new Set(names)) said.set(name, (said.get(name) ?? 0) + 1);
  return near.map((names, i) => names.find((name) => said.get(name) === 1) ?? `Part ${i + 1}`);
};
