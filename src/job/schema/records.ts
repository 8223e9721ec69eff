import * as z from "zod";
import { model } from "./model.ts";
import { noteSchema, photoSchema } from "./notes.ts";
import { detectorSetting, settings } from "./settings.ts";
import { instrument, openPoint, revision, signature, swap, testEntry } from "./testing.ts";
import { underlay } from "./underlay.ts";
import {
  celsius,
  degrees,
  extent,
  id,
  kept,
  length,
  metres,
  outline,
  point,
  share,
  watts,
  words,
} from "./values.ts";
import { board, circuit, detectorWiring, luminaireWiring, switchWiring } from "./wiring.ts";

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
/** Kinds of space that codes tell apart. */
export const spaceKinds = [
  "classroom",
  "meeting",
  "copy",
  "break-room",
  "office-enclosed",
  "office-open",
  "restroom",
  "storage",
  "locker-room",
  "corridor",
  "stairway",
  "lobby",
  "library-stacks",
  "parking",
  "warehouse",
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
export const dwellKinds = [
  "desk",
  "seat",
  "wc",
  "bench",
  "basin",
  "shower",
  "bath",
  "panel",
  "machine",
] as const;
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
export const switchKinds = ["switch", "two-way", "intermediate", "push-button", "dimmer"] as const;

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
  proposed: kept({ confidence: share, reason: words.default("") }).optional(),
  /** Kind of space for rules, as somebody chose. */
  space: z.enum(spaceKinds).optional(),
  escapeRoute: z.boolean().optional(),
  /** Whether daylight reaches it; absent where nobody said. */
  daylight: z.boolean().optional(),
  fireRatedCeiling: z.boolean().optional(),
  penetrationsSealed: z.boolean().optional(),
  /** Of the panel [m], and what is free above it [m]. */
  ceilingThickness: length.optional(),
  ceilingVoid: length.optional(),
  /** Of the boxes in the ceiling. [m] */
  ceilingBoxDepth: length.optional(),
  wet: z.boolean().optional(),
  /** Highest fixed water outlet of a bath or shower, above the floor. [m] */
  highestOutlet: length.optional(),
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
  type: words.optional(),
  power: watts.optional(),
  drivers: z.number().int().min(0).max(1000).optional(),
  circuit: words.optional(),
  ...luminaireWiring,
});

const lightSwitch = kept({
  id,
  room: id,
  kind: z.enum(switchKinds).default("switch"),
  at: point,
  height: metres.default(1.1),
  circuit: words.optional(),
  ...switchWiring,
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
  settings: settings.optional(),
  /** The swap that put this device here; absent: the first one hangs here still. */
  fitted: id.optional(),
  ...detectorSetting,
  ...detectorWiring,
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
  switches: lightSwitch,
  models: model,
  detectors: detector,
  boards: board,
  circuits: circuit,
  photos: photoSchema,
  notes: noteSchema,
  instruments: instrument,
  testEntries: testEntry,
  openPoints: openPoint,
  signatures: signature,
  revisions: revision,
  swaps: swap,
} as const;
