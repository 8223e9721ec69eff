import { readRecord } from "../parse/read-record.ts";
import type { JobModel, RecordInputs } from "../schema/job-file.ts";
import { demoModelWiring } from "./demo-model-wiring.ts";

type Row = { readonly height: number; readonly radius: number };
type PolarRow = { readonly height: number; readonly outline: [number, number][] };

/** One round row at each mounting height. */
const round = (...rows: readonly (readonly [height: number, radius: number])[]): Row[] =>
  rows.map(([height, radius]) => ({ height, radius }));

/** A zone drawn out along the notch: an ellipse with these half axes, at every 15°. */
const drawnOut = (
  ...rows: readonly (readonly [height: number, along: number, beside: number])[]
): PolarRow[] =>
  rows.map(([height, along, beside]) => ({
    height,
    outline: Array.from({ length: 24 }, (_, index): [number, number] => {
      const angle = (index * 15 * Math.PI) / 180;
      const radius = (along * beside) / Math.hypot(beside * Math.cos(angle), along * Math.sin(angle));
      return [index * 15, Math.round(radius * 100) / 100];
    }),
  }));

/** A square zone, its sides along and across the notch. */
const squared = (...rows: readonly (readonly [height: number, half: number])[]): PolarRow[] =>
  rows.map(([height, half]) => ({
    height,
    outline: Array.from({ length: 8 }, (_, index): [number, number] => [
      index * 45,
      Math.round((index % 2 === 0 ? half : half * Math.SQRT2) * 100) / 100,
    ]),
  }));

const dome = (
  facets: readonly (readonly [offNadir: number, facets: number])[],
): NonNullable<JobModel["lens"]> => ({
  shape: "dome",
  rings: facets.map(([offNadir, count]) => ({ offNadir, facets: count })),
  sectors: 4,
  radius: 0.022,
  elementOffset: 0.004,
});

/** Invented for the demo, and described by their data alone. An order list is refused while they are in it. */
const sheets: readonly Omit<RecordInputs["models"], "declaration" | "declaredBy" | "demo">[] = [
  {
    id: "demo-round-6",
    title: "Round, 6 m across at 2.5 m",
    mounting: { min: 2.2, max: 3.5 },
    zones: {
      seated: round([2.5, 1.8], [3, 1.8]),
      towards: round([2.5, 2.4], [3, 2.7]),
      across: round([2.5, 3], [3, 3.4]),
    },
    onset: 0.4,
    response: 0.3,
    warmUp: 40,
    deliveryState: "on during warm-up",
    cutOut: 0.035,
    cost: 62,
  },
  {
    id: "demo-round-8",
    title: "Round, 8 m across at 2.5 m",
    mounting: { min: 2.2, max: 4 },
    zones: {
      seated: round([2.5, 2.5], [3, 2.6], [3.5, 2.2]),
      towards: round([2.5, 3.2], [3, 3.6], [3.5, 3.6]),
      across: round([2.5, 4], [3, 4.6], [3.5, 4.8]),
    },
    onset: 0.5,
    response: 0.5,
    warmUp: 60,
    deliveryState: "on during warm-up",
    lens: dome([
      [0, 1],
      [18, 8],
      [36, 12],
      [48, 16],
      [56, 20],
    ]),
    cutOut: 0.064,
    cost: 78,
  },
  {
    id: "demo-round-8-sound",
    title: "Round, 8 m across at 2.5 m, hears",
    mounting: { min: 2.2, max: 4 },
    zones: {
      seated: round([2.5, 2.5], [3, 2.6], [3.5, 2.2]),
      towards: round([2.5, 3.2], [3, 3.6], [3.5, 3.6]),
      across: round([2.5, 4], [3, 4.6], [3.5, 4.8]),
      sound: round([2.5, 5], [3, 5], [3.5, 4.5]),
    },
    onset: 0.5,
    response: 0.5,
    warmUp: 60,
    deliveryState: "on during warm-up",
    cutOut: 0.064,
    cost: 99,
  },
  {
    id: "demo-round-10-desk",
    title: "Round, 10 m across at 2.5 m, fine for seated work",
    mounting: { min: 2.3, max: 4 },
    zones: {
      seated: round([2.5, 3.6], [3, 3.8], [3.5, 3.4]),
      towards: round([2.5, 4.2], [3, 4.5], [3.5, 4.5]),
      across: round([2.5, 5], [3, 5.6], [3.5, 5.8]),
    },
    onset: 0.3,
    response: 0.4,
    warmUp: 45,
    lens: dome([
      [0, 1],
      [14, 8],
      [28, 12],
      [40, 16],
      [50, 20],
      [58, 24],
      [63, 28],
    ]),
    cutOut: 0.068,
    cost: 134,
  },
  {
    id: "demo-round-12",
    title: "Round, 12 m across at 2.5 m",
    mounting: { min: 2.3, max: 5 },
    zones: {
      seated: round([2.5, 2.8], [3, 3], [4, 2.4]),
      towards: round([2.5, 4.6], [3, 5], [4, 5.4]),
      across: round([2.5, 6], [3, 6.8], [4, 7.6]),
    },
    onset: 0.6,
    response: 0.5,
    warmUp: 60,
    cutOut: 0.068,
    cost: 112,
  },
  {
    id: "demo-round-12-sound",
    title: "Round, 12 m across at 2.5 m, hears",
    mounting: { min: 2.3, max: 5 },
    zones: {
      seated: round([2.5, 2.8], [3, 3], [4, 2.4]),
      towards: round([2.5, 4.6], [3, 5], [4, 5.4]),
      across: round([2.5, 6], [3, 6.8], [4, 7.6]),
      sound: round([2.5, 6], [3, 6], [4, 5.5]),
    },
    onset: 0.6,
    response: 0.5,
    warmUp: 60,
    cutOut: 0.068,
    cost: 142,
  },
  {
    id: "demo-square-7",
    title: "Square, 7 m by 7 m at 2.5 m",
    mounting: { min: 2.3, max: 3.5 },
    zones: {
      seated: squared([2.5, 2.2], [3, 2.3]),
      towards: squared([2.5, 3], [3, 3.2]),
      across: squared([2.5, 3.5], [3, 4]),
    },
    onset: 0.4,
    response: 0.4,
    cost: 96,
  },
  {
    id: "demo-corridor-20",
    title: "Corridor-shaped, 20 m long at 2.5 m",
    mounting: { min: 2.3, max: 3.5 },
    zones: {
      seated: round([2.5, 1.5], [3, 1.5]),
      towards: drawnOut([2.5, 8, 2.2], [3, 9, 2.5]),
      across: drawnOut([2.5, 10, 2.6], [3, 11, 3]),
    },
    onset: 0.7,
    response: 0.5,
    warmUp: 60,
    deliveryState: "off during warm-up",
    cutOut: 0.068,
    cost: 118,
  },
  {
    id: "demo-high-16",
    title: "Round, 16 m across at 6 m, for ceilings of 4 m to 8 m",
    mounting: { min: 4, max: 8 },
    zones: {
      seated: round([4, 2], [6, 1.6]),
      towards: round([4, 4.8], [6, 6], [8, 6.2]),
      across: round([4, 6.5], [6, 8], [8, 8.6]),
    },
    onset: 0.8,
    response: 0.6,
    warmUp: 90,
    lens: dome([
      [0, 1],
      [12, 12],
      [24, 16],
      [34, 20],
      [42, 24],
      [50, 28],
    ]),
    cost: 176,
  },
  {
    id: "demo-high-24",
    title: "Round, 24 m across at 10 m, for ceilings of 6 m to 12 m",
    mounting: { min: 6, max: 12 },
    zones: {
      towards: round([6, 7], [10, 9], [12, 9]),
      across: round([6, 9], [10, 12], [12, 12.5]),
    },
    onset: 1,
    response: 0.8,
    cost: 228,
  },
];

/** The models of the demo, for any job that has none of its own yet. */
export const demoModels: readonly JobModel[] = sheets.map((sheet) => {
  const read = readRecord("models", {
    ...sheet,
    ...demoModelWiring[sheet.id],
    declaration: "assumed",
    declaredBy: "invented for the demo",
    demo: true,
  });
  if (!read.record) throw new Error(`Demo model ${sheet.id} is broken: ${JSON.stringify(read.problems)}`);
  return read.record;
});
