import {
  type DetectorModel,
  type LensMask,
  longestReach,
  maskedSectors,
  type Reach,
  type ReachShape,
  reachOf,
  scaledReach,
  warmthFactor,
  type ZoneKind,
} from "../detector/index.ts";
import { COVER_SKIN, contains, intersection, type Point, type Region, union } from "../geometry/index.ts";
import { regionOfWedges, type Wedges, wedgesHave } from "../geometry/sweep/index.ts";
import type { Celsius, Metres } from "../quantity/index.ts";
import type { PlanningDefaults, Site } from "../site/index.ts";
import { maskChains, reachPolygon } from "./reach-polygon.ts";
import { floorIn, type Level, partAt, type Scene, type ScenePart, sceneOf } from "./scene.ts";
import { sightSweep } from "./sight-sweep.ts";
import { soundZone } from "./sound-zone.ts";
import type { DeviceLike, DeviceZoneQuestion, Zone, ZoneOptions, ZonePurpose } from "./zone-types.ts";

/**
 * The exact zone of a detector with its planning margin: where coverage counts on it.
 *
 * @param site - Snapshot of the job.
 * @param question - Detector by id, kind of zone, state of the doors, sight height (the kind's default if absent).
 * @returns Pieces in plan; nothing for a detector outside rooms, or without its model. [m]
 * @throws If the site has no detector of that id.
 * @source SIGHT-GEOMETRY
 * @example Towards 4 m in a large empty room: a disc of 4 × 0.85 = 3.4 m
 */
export function deviceZone(site: Site, question: DeviceZoneQuestion): Region {
  return zoneById(site, { ...question, purpose: "coverage" });
}

/** The zone of a detector as declared, with nothing kept in hand and whatever the mounting limits say: for the screen. @example Towards 4 m in a large empty room: a disc of 4 m */
export function declaredZone(site: Site, question: DeviceZoneQuestion): Region {
  return zoneById(site, { ...question, purpose: "declared" });
}

/**
 * The zone of a detector that hangs or might hang in a prepared scene.
 *
 * @param scene - From `sceneOf`; eroded for the purpose "outward".
 * @param options - Detector, kind, sight height, purpose.
 * @returns Zone as polygon and as a quick test of points.
 * @source SIGHT-GEOMETRY
 * @example zoneInScene(scene, { device, kind: "towards" }).has(2, 3)
 */
export function zoneInScene(scene: Scene, options: ZoneOptions): Zone {
  const { device, kind } = options;
  const found = partAt(scene, device.at);
  if (!found) return NOTHING;
  if (kind === "sound") return soundZone(scene, { ...options, part: found.part });
  const purpose = options.purpose ?? "coverage";
  const sight = options.sightHeight ?? sightHeightOf(kind, scene.site.defaults);
  const lens = floorIn(scene, device.at) + device.height;
  const { part } = found;
  const looks = part.levels.map((level) => {
    const height = lens - level.height;
    const reach = planningReach(scene.site.defaults, {
      device,
      kind,
      height,
      sight,
      purpose,
      temperature: level.temperature,
    });
    const wedges = lookAt(part, {
      device,
      purpose,
      eye: device.at,
      from: lens,
      plane: level.height + sight,
      drop: height - sight,
      shape: reach.shape,
      turned: 0,
    });
    return { level, wedges, verify: reach.standing === "verify" };
  });
  return zoneOf(looks);
}

/**
 * Where a detector of a kind, height and turn may hang and see a witness, who stands at `device.at`.
 *
 * The same rays as `zoneInScene`, looked at from the witness: the plane is that of the lens, outline and masks are turned by half a turn.
 *
 * @param scene - From `sceneOf`; eroded for the purpose "outward".
 * @param options - As for a zone; the witness stands at `device.at`.
 * @returns Positions in plan, on the whole of the storey that sight joins to the witness.
 * @source SIGHT-GEOMETRY
 * @example In an empty room a round device: the same disc as its zone
 */
export function watchZone(scene: Scene, options: ZoneOptions): Zone {
  const { device, kind } = options;
  const found = partAt(scene, device.at);
  if (!found) return NOTHING;
  if (kind === "sound") return soundZone(scene, { ...options, part: found.part });
  const purpose = options.purpose ?? "coverage";
  const sight = options.sightHeight ?? sightHeightOf(kind, scene.site.defaults);
  const ground = floorIn(scene, device.at);
  const temperature = found.room.highestTemperature ?? 22;
  const looks = found.part.levels.map((level) => {
    const lens = level.height + device.height;
    const reach = planningReach(scene.site.defaults, {
      device,
      kind,
      height: lens - ground,
      sight,
      purpose,
      temperature,
    });
    const wedges = lookAt(found.part, {
      device,
      purpose,
      eye: device.at,
      from: ground + sight,
      plane: lens,
      drop: lens - ground - sight,
      shape: reach.shape,
      turned: Math.PI,
    });
    return { level, wedges, verify: reach.standing === "verify" };
  });
  return zoneOf(looks);
}

/** Height at which one is seen in a kind of zone unless told otherwise. @returns [m] @example Towards: 1.0 m */
export const sightHeightOf = (kind: ZoneKind, defaults: PlanningDefaults): Metres =>
  kind === "seated" ? defaults.sightHeights.desk : defaults.sightHeights.walking;

/**
 * Reach that planning counts on: declared × (1 − margin) × warmth; the declared one alone for the screen.
 *
 * @param defaults - Margins. @param question - Model, kind, height above the watched floor, sight height, temperature, purpose.
 * @returns Reach and its standing.
 * @source SIGHT-GEOMETRY
 * @example Towards 4 m at 26 °C: 4 × 0.85 × 0.672 = 2.285 m
 */
export function planningReach(
  defaults: PlanningDefaults,
  question: {
    readonly device: { readonly model: DetectorModel; readonly height: Metres };
    readonly kind: ZoneKind;
    readonly height: Metres;
    readonly sight: Metres;
    readonly purpose: ZonePurpose;
    readonly temperature: Celsius;
  },
): Reach {
  const { device, kind, height, sight, purpose, temperature } = question;
  const asked = { kind, height, sightHeight: sight, mounted: device.height };
  // On the screen a zone outside the mounting limits is drawn (dashed); planning does not count on it.
  const model =
    purpose === "declared" ? { ...device.model, mounting: { min: 0, max: Infinity } } : device.model;
  const reach = reachOf(model, asked);
  if (purpose === "declared" || kind === "sound") return reach;
  return {
    ...reach,
    shape: scaledReach(reach.shape, (1 - defaults.margin[kind]) * warmthFactor(temperature)),
  };
}

const NOTHING: Zone = { region: () => [], has: () => false, verify: false };

interface LevelLook {
  readonly level: Level;
  readonly wedges: Wedges | undefined;
  readonly verify: boolean;
}

function zoneOf(looks: readonly LevelLook[]): Zone {
  let region: Region | undefined;
  const verify = looks.some((look) => look.verify && look.wedges && look.wedges.near.length > 0);
  const compute = (): Region =>
    union(
      looks.map(({ level, wedges }) =>
        wedges ? intersection(regionOfWedges(wedges), level.region ?? []) : [],
      ),
    );
  const [only] = looks;
  if (looks.length === 1 && only?.level.region === undefined) {
    const wedges = only?.wedges;
    if (!wedges) return NOTHING;
    return {
      region: () => (region ??= regionOfWedges(wedges)),
      has: (x, y) => wedgesHave(wedges, x, y),
      verify,
    };
  }
  const has = (x: Metres, y: Metres): boolean =>
    looks.some(
      ({ level, wedges }) => wedges && wedgesHave(wedges, x, y) && contains(level.region ?? [], [x, y]),
    );
  return { region: () => (region ??= compute()), has, verify };
}

interface LookQuestion {
  readonly device: { readonly turn: number; readonly masks: readonly LensMask[] };
  readonly purpose: ZonePurpose;
  readonly eye: Point;
  readonly from: Metres;
  readonly plane: Metres;
  /** Height of the lens above the plane in which one is seen. */
  readonly drop: Metres;
  readonly shape: ReachShape;
  readonly turned: number;
}

function lookAt(part: ScenePart, question: LookQuestion): Wedges | undefined {
  const { device, purpose, eye, from, plane, drop, shape, turned } = question;
  if (drop <= 0 || longestReach(shape) <= 0) return undefined;
  const outward = purpose === "outward";
  const turn = device.turn + turned;
  const reach = reachPolygon(shape, {
    turn,
    arcs: outward ? "outside" : "inside",
    grown: outward ? COVER_SKIN : 0,
  });
  // A mask stays put under an outward look only where it hides for every place within the skin: it is left out, which is the careful side.
  const sectors = outward ? [] : maskedSectors(device.masks);
  const masks = maskChains(sectors, { turn, lowDrop: drop, highDrop: drop, masked: "large" });
  return sightSweep(part, { eye, from, plane, reach, masks });
}

function zoneById(site: Site, question: DeviceZoneQuestion & { readonly purpose: ZonePurpose }): Region {
  const placed = placedDevice(site, question.device);
  if (!placed) return [];
  const scene = sceneOf(site, { storey: placed.storey, doors: question.doors });
  const { kind, purpose, sightHeight } = question;
  return zoneInScene(scene, {
    device: placed.device,
    kind,
    purpose,
    ...(sightHeight === undefined ? {} : { sightHeight }),
  }).region();
}

/**
 * A placed detector with its model and storey.
 *
 * @param site - Snapshot of the job. @param id - Of the detector.
 * @returns undefined where its room or model is missing (a finding, not an error).
 * @throws If the site has no detector of that id.
 * @example placedDevice(site, "d1")?.storey
 */
export function placedDevice(
  site: Site,
  id: string,
): { readonly device: DeviceLike & { readonly id: string }; readonly storey: string } | undefined {
  const record = site.detectors.find((one) => one.id === id);
  if (!record) throw new Error(`No detector with the id ${id}`);
  const model = site.models.find((one) => one.id === record.model);
  const room = site.rooms.find((one) => one.id === record.room);
  if (!model || !room) return undefined;
  const { at, height, turn, masks } = record;
  return { device: { id, model, at, height, turn, masks }, storey: room.storey };
}
