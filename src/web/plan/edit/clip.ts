import { type DetectorModel, type Point, planningDefaults, type Site } from "#engine";
import { fromSite, readRecord, toSite } from "#job";
import type { RecordKind, RecordRef } from "../../contract.ts";
import { applied } from "../../jobs/apply.ts";
import { roomsOn } from "../pick.ts";
import { type Copied, copiesOf } from "./copied.ts";
import { shiftBy } from "./plan-map.ts";
import { boundsOfWhole, middleOfBounds, type Whole, wholeOf } from "./selected.ts";
import { putStep } from "./steps.ts";

/** First words of our text on the clipboard, and the number of its form. */
const marker = "roomwake-selection";
const form = 1;

/** More text than this is not read: no selection of a real building is that long. [characters] */
const longest = 20_000_000;

const kinds = [
  "rooms",
  "floorPieces",
  "openings",
  "obstacles",
  "dwellPlaces",
  "interference",
  "ceilingThings",
  "luminaires",
  "switches",
  "models",
  "detectors",
] as const satisfies readonly RecordKind[];

/** A selection as text: records as they stand in a job file, and the models that its detectors need. Empty: nothing to copy. */
export function clipText(site: Site, refs: readonly RecordRef[]): string {
  const whole = wholeOf(site, refs);
  const clip = { ...site, storeys: [], models: [], ...recordsOf(site, whole) };
  const models = new Set(clip.detectors.map(({ model }) => model));
  const all = { ...clip, models: site.models.filter(({ id }) => models.has(id)) };
  const records = kinds.flatMap((kind) =>
    all[kind].length === 0 ? [] : [[kind, all[kind].map((record) => fromSite(kind, record as never))]],
  );
  return records.length === 0 ? "" : JSON.stringify({ [marker]: form, ...Object.fromEntries(records) });
}

function recordsOf(site: Site, whole: Whole): Pick<Site, Exclude<(typeof kinds)[number], "models">> {
  const of = <
    K extends
      | "floorPieces"
      | "obstacles"
      | "dwellPlaces"
      | "interference"
      | "ceilingThings"
      | "luminaires"
      | "switches"
      | "detectors",
  >(
    kind: K,
  ): Site[K] => {
    const ids = new Set(whole.placed.filter((one) => one.kind === kind).map(({ id }) => id));
    return (site[kind] as readonly { readonly id: string }[]).filter(({ id }) =>
      ids.has(id),
    ) as unknown as Site[K];
  };
  return {
    rooms: whole.rooms,
    openings: whole.openings,
    floorPieces: of("floorPieces"),
    obstacles: of("obstacles"),
    dwellPlaces: of("dwellPlaces"),
    interference: of("interference"),
    ceilingThings: of("ceilingThings"),
    luminaires: of("luminaires"),
    switches: of("switches"),
    detectors: of("detectors"),
  };
}

export type ReadClip =
  | { readonly clip: Site }
  /** "foreign": not ours; "newer": of a newer program; "damaged": ours, but a record of it is broken. */
  | { readonly refused: "foreign" | "newer" | "damaged" };

/** Reads text from the clipboard. Every record is judged as one of a job file is: whoever wrote the text. */
export function readClip(text: string): ReadClip {
  const raw = text.length > longest ? undefined : parsed(text);
  const version = raw?.[marker];
  if (raw === undefined || typeof version !== "number") return { refused: "foreign" };
  if (version > form) return { refused: "newer" };
  let clip: Site = { ...emptySite };
  for (const kind of kinds) {
    const list = raw[kind] ?? [];
    if (!Array.isArray(list)) return { refused: "damaged" };
    const records: unknown[] = [];
    for (const one of list) {
      const read = readRecord(kind, one);
      if (!read.record) return { refused: "damaged" };
      records.push(toSite(kind, read.record as never));
    }
    clip = { ...clip, [kind]: records } as Site;
  }
  const models = new Set(clip.models.map(({ id }) => id));
  return clip.detectors.every(({ model }) => models.has(model)) ? { clip } : { refused: "damaged" };
}

function parsed(text: string): Readonly<Record<string, unknown>> | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : undefined;
  } catch {
    return undefined;
  }
}

const emptySite: Site = {
  name: "",
  defaults: planningDefaults,
  storeys: [],
  rooms: [],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  ceilingThings: [],
  luminaires: [],
  switches: [],
  models: [],
  detectors: [],
};

export type Pasted = Copied | { readonly refused: "nothing" | "no-room" };

/**
 * Steps that put what was read into a job with its middle at a place. Everything gets new ids; a model that the job has already
 * is not brought twice. Things that came without their room stand in the room that they come to lie in.
 */
export function pasteSteps(
  site: Site,
  clip: Site,
  to: { readonly at: Point; readonly storey: string; readonly newId: (kind: RecordKind) => string },
): Pasted {
  const whole = everythingOf(clip);
  const bounds = boundsOfWhole(clip, whole);
  if (!bounds) return { refused: "nothing" };
  if (whole.rooms.length === 0 && roomsOn(site, to.storey).size === 0) return { refused: "no-room" };
  const middle = middleOfBounds(bounds);
  const by: Point = [centimetre(to.at[0] - middle[0]), centimetre(to.at[1] - middle[1])];
  const models = modelsFor(site, clip, to.newId);
  const put = [...models.values()].filter(({ isNew }) => isNew).map(({ model }) => putStep("models", model));
  const detectors = clip.detectors.map((one) => ({
    ...one,
    model: models.get(one.model)?.model.id ?? one.model,
  }));
  const copied = copiesOf({ ...clip, detectors }, whole, {
    map: shiftBy(by),
    newId: to.newId,
    storey: to.storey,
    into: applied(site, put),
  });
  return copied.made.length === 0 ? { refused: "nothing" } : { ...copied, steps: [...put, ...copied.steps] };
}

const centimetre = (value: number): number => Math.round(value * 100) / 100;

function everythingOf(clip: Site): Whole {
  const inClip = new Set(clip.rooms.map(({ id }) => id));
  return {
    ...wholeOf(
      clip,
      kinds.flatMap((kind) => clip[kind].map(({ id }): RecordRef => ({ kind, id }))),
    ),
    // An opening without a room of its own has no wall to stand in here.
    openings: clip.openings.filter(({ rooms }) => rooms.some((id) => id !== null && inClip.has(id))),
  };
}

/** For each model that came along the one to use: the job's own where it says the same, else a new one. */
function modelsFor(
  site: Site,
  clip: Site,
  newId: (kind: RecordKind) => string,
): ReadonlyMap<string, { readonly model: DetectorModel; readonly isNew: boolean }> {
  const said = (model: DetectorModel): string =>
    JSON.stringify(sorted({ ...fromSite("models", model), id: "" }));
  const known = new Map(site.models.map((model) => [said(model), model]));
  return new Map(
    clip.models.map((model) => {
      const own = known.get(said(model));
      return [
        model.id,
        own ? { model: own, isNew: false } : { model: { ...model, id: newId("models") }, isNew: true },
      ];
    }),
  );
}

/** The same value with the fields of all records in the order of the alphabet. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, part]) => part !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, part]) => [name, sorted(part)]),
  );
}
