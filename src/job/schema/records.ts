import * as z from "zod";
import { model } from "./model.ts";
import { celsius, degrees, extent, id, kept, length, metres, outline, point, words } from "./values.ts";

/** The closed list of what a room is used for. */
export const roomUses = [
  "passing",
  "stair",
  "moving",
  "sitting",
  "sanitary",
  "changing",
  "plant",
  "other",
] as const;
export const openingKinds = ["door", "passage", "window", "glazing"] as const;
export const obstacleKinds = [
  "rack",
  "partition",
  "glass",
  "cubicle",
  "column",
  "duct",
  "beam",
  "furniture",
  "other",
] as const;
export const dwellKinds = ["desk", "seat", "wc", "bench", "basin", "panel", "machine"] as const;
export const interferenceKinds = [
  "heater",
  "air-outlet",
  "machine",
  "sunlit-window",
  "door-curtain",
] as const;
export const ceilingThingKinds = [
  "smoke-head",
  "sprinkler",
  "speaker",
  "hatch",
  "luminaire-emergency",
  "other",
] as const;
export const luminaireMountings = ["flush", "surface", "pendant"] as const;

const storey = kept({ id, name: words.default(""), elevation: metres.default(0) });

const demand = kept({
  catch: z.boolean().default(true),
  walk: z.boolean().default(true),
  hold: z.boolean().default(true),
});

const ceilingGrid = kept({
  tile: z.tuple([extent, extent]).default([0.6, 0.6]),
  origin: point.default([0, 0]),
  turn: degrees.default(0),
});

const room = kept({
  id,
  storey: id.default("ground"),
  number: words.default(""),
  name: words.default(""),
  use: z.enum(roomUses).default("other"),
  outline,
  holes: z.array(outline).default([]),
  floor: metres.default(0),
  ceilingHeight: extent.default(2.7),
  highestTemperature: celsius.optional(),
  ceilingGrid: ceilingGrid.optional(),
  demand: demand.default({ catch: true, walk: true, hold: true }),
  noDevices: z.array(outline).default([]),
});

const floorPiece = kept({
  id,
  room: id,
  kind: z.enum(["flight", "landing"]),
  footprint: outline,
  from: point.optional(),
  to: point.optional(),
  low: metres.default(0),
  high: metres.default(0),
});

const opening = kept({
  id,
  rooms: z.tuple([id, id.nullable()]),
  kind: z.enum(openingKinds).default("door"),
  from: point,
  to: point,
  sill: metres.default(0),
  head: metres.default(2.1),
  thickness: length.default(0.1),
  hinge: z.enum(["from", "to"]).default("from"),
  opensInto: id.nullable().default(null),
  angle: degrees.default(90),
  state: z.enum(["open", "closed"]).default("closed"),
});

const obstacle = kept({
  id,
  room: id,
  kind: z.enum(obstacleKinds).default("other"),
  name: words.default(""),
  footprint: outline,
  base: metres.default(0),
  top: metres,
  seeThrough: z.boolean().default(false),
});

const dwellPlace = kept({
  id,
  room: id,
  kind: z.enum(dwellKinds),
  at: point,
  radius: extent.default(0.6),
});

const interference = kept({
  id,
  room: id,
  kind: z.enum(interferenceKinds),
  at: point,
  to: point.optional(),
  height: metres.default(2),
  clearance: length.optional(),
});

const ceilingThing = kept({ id, room: id, kind: z.enum(ceilingThingKinds).default("other"), at: point });

const luminaire = kept({
  id,
  room: id,
  name: words.default(""),
  at: point,
  height: metres.default(2.7),
  mounting: z.enum(luminaireMountings).default("surface"),
  hot: z.boolean().default(false),
  length: length.default(0.6),
  width: length.default(0.6),
  turn: degrees.default(0),
});

const mask = kept({ from: degrees, to: degrees, inner: degrees.default(0), outer: degrees.default(90) });

const detector = kept({
  id,
  tag: words.default(""),
  room: id,
  controls: z.array(id).default([]),
  group: words.default(""),
  model: id,
  at: point,
  height: extent.default(2.5),
  turn: degrees.default(0),
  masks: z.array(mask).default([]),
  pinned: z.boolean().default(false),
});

/** The most text that the lines of one underlay may be: about a million lines. */
const mostUnderlayText = 24_000_000;

const underlay = kept({
  id,
  storey: id.default("ground"),
  name: words.default(""),
  /** The file it was read from, and what was chosen, so that it can be read again. */
  file: words.default(""),
  shown: z.boolean().default(true),
  layers: z
    .array(kept({ name: words.default(""), colour: words.optional(), shown: z.boolean().default(true) }))
    .default([]),
  /** Where the underlay's own origin lies in the plan, and how it is turned there. */
  origin: point.default([0, 0]),
  turn: degrees.default(0),
  /** Millimetres of all lines, packed: see `underlay/line-text.ts`. */
  lines: z.string().max(mostUnderlayText).default(""),
});

/** The record shapes of a job by kind, in the order in which they stand in the file: what is referred to comes first. */
export const recordSchemas = {
  storeys: storey,
  underlays: underlay,
  rooms: room,
  floorPieces: floorPiece,
  openings: opening,
  obstacles: obstacle,
  dwellPlaces: dwellPlace,
  interference,
  ceilingThings: ceilingThing,
  luminaires: luminaire,
  models: model,
  detectors: detector,
} as const;
