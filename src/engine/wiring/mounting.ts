import { joined, type Said, say } from "../check/index.ts";
import type { DetectorModel, Fixing } from "../detector/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { Detector, Room, Site } from "../site/index.ts";
import type { SourceId } from "../source/index.ts";
import type { Known } from "./model.ts";
import { atMost, type WiringCheck } from "./wiring-check.ts";

/** Ceiling as far as mounting asks. What nobody measured stays absent. */
export interface CeilingBuild {
  /** Thickness of the panel. [m] */
  readonly thickness?: Metres;
  /** Free height above it. [m] */
  readonly voidHeight?: Metres;
  /** Depth of the boxes in it. [m] */
  readonly boxDepth?: Metres;
  /** From the middle of the device to the nearest bar of the ceiling grid; absent without a grid. [m] */
  readonly toBar?: Metres;
  /** Whether water may splash there; "unknown" where nobody said of a room in which it often does. */
  readonly wet?: Known;
}

/** What a data sheet says of mounting. */
export type MountedModel = Pick<
  DetectorModel,
  "fixing" | "otherFixings" | "depth" | "ceilingThickness" | "cutOut" | "entrySeal"
>;

/** A device in its ceiling, with every check. */
export interface Mounting {
  readonly detector: string;
  readonly fixing: Fixing | undefined;
  readonly ceiling: CeilingBuild;
  readonly checks: readonly WiringCheck[];
}

/** Rooms in which water often splashes: of them somebody has to say. Elsewhere a room is taken as dry. Common practice, no source. */
const oftenWet: ReadonlySet<Room["use"]> = new Set(["sanitary", "changing", "plant"]);

/** Half the width of a bar of a ceiling grid; bars are 24 mm wide. [m] */
const halfBar = {
  rows: 0.012,
  source: "CEILING-BAR",
} as const satisfies { readonly rows: Metres; readonly source: SourceId };

/** How a device is fixed: as chosen for it, otherwise as its data sheet says. @param detector - The device. @param model - Its data sheet. @returns Fixing; undefined where nobody knows. @example Chosen "surface" of a sheet that says "box": "surface" */
export const fixingOf = (
  detector: Pick<Detector, "fixing">,
  model: Pick<DetectorModel, "fixing"> | undefined,
): Fixing | undefined => detector.fixing ?? model?.fixing;

/**
 * Mounting of every device of a site, held against the ceiling of its room.
 *
 * @param site - Rooms with their ceilings, devices, data sheets.
 * @returns One for each device, in order.
 * @source DERIVED-HERE
 * @example A device 80 mm deep under a void of 60 mm: its depth fails
 */
export function mountingsOf(site: Pick<Site, "rooms" | "models" | "detectors">): readonly Mounting[] {
  const rooms = new Map(site.rooms.map((room) => [room.id, room]));
  const models = new Map(site.models.map((model) => [model.id, model]));
  return site.detectors.map((detector) => {
    const model = models.get(detector.model);
    const ceiling = ceilingOf(rooms.get(detector.room), detector);
    const device = { tag: detector.tag || detector.id, id: detector.id, room: detector.room };
    const fixing = fixingOf(detector, model);
    return {
      detector: detector.id,
      fixing,
      ceiling,
      checks: [
        ...declaredFixing(detector, model, device),
        ...mountingChecks({ ...model, ...(fixing === undefined ? {} : { fixing }) }, ceiling, device),
      ],
    };
  });
}

function ceilingOf(room: Room | undefined, { at }: Detector): CeilingBuild {
  if (!room) return {};
  const { ceilingThickness, ceilingVoid, ceilingBoxDepth, ceilingGrid, wet, use } = room;
  return {
    ...(ceilingThickness === undefined ? {} : { thickness: ceilingThickness }),
    ...(ceilingVoid === undefined ? {} : { voidHeight: ceilingVoid }),
    ...(ceilingBoxDepth === undefined ? {} : { boxDepth: ceilingBoxDepth }),
    ...(ceilingGrid === undefined ? {} : { toBar: distanceToBar(ceilingGrid, at) }),
    wet: wet === undefined ? (oftenWet.has(use) ? "unknown" : "no") : wet ? "yes" : "no",
  };
}

/** From a point to the nearest bar of a ceiling grid: bars run through the grid's origin and every tile from there. [m] */
function distanceToBar(grid: NonNullable<Room["ceilingGrid"]>, at: readonly [number, number]): Metres {
  const [dx, dy] = [at[0] - grid.origin[0], at[1] - grid.origin[1]];
  const [cos, sin] = [Math.cos(grid.turn), Math.sin(grid.turn)];
  const inFrame = [cos * dx + sin * dy, -sin * dx + cos * dy] as const;
  return Math.min(
    ...inFrame.map((along, axis) => {
      const tile = grid.tile[axis as 0 | 1];
      const rest = ((along % tile) + tile) % tile;
      return Math.min(rest, tile - rest);
    }),
  );
}

interface MountedDevice {
  readonly tag: string;
  readonly id: string;
  readonly room?: string;
}

/** A fixing that somebody chose is one that the data sheet declares. */
function declaredFixing(
  { fixing }: Detector,
  model: DetectorModel | undefined,
  device: MountedDevice,
): readonly WiringCheck[] {
  if (fixing === undefined) return [];
  const declared = [...(model?.fixing ? [model.fixing] : []), ...(model?.otherFixings ?? [])];
  if (declared.includes(fixing)) return [];
  return [
    {
      verdict: declared.length === 0 ? "not-proven" : "fail",
      what: say`Fixing, ${fixingWords[fixing]}`,
      actual: undefined,
      limit: undefined,
      unit: "",
      source: "DERIVED-HERE",
      assumptions:
        declared.length === 0
          ? [say`The data sheet's ways of fixing are not on record`]
          : [
              say`Its data sheet declares: ${joined(
                declared.map((one) => fixingWords[one]),
                ", ",
              )}`,
            ],
      missing: [say`how it may be fixed, from its data sheet`],
      code: "fixing-not-declared",
      name: device.tag,
      ...(device.room === undefined ? {} : { room: device.room }),
      records: [device.id],
    },
  ];
}

/** Ways of fixing in words. */
export const fixingWords: Readonly<Record<Fixing, Said>> = {
  box: say`in a ceiling box`,
  surface: say`on the surface`,
  "ceiling-panel": say`through the ceiling panel`,
};

/**
 * Whether a detector fits the ceiling of its room.
 *
 * @param model - Its data sheet. @param ceiling - The ceiling. @param device - Tag, record id, room.
 * @returns Depth, thickness, cut-out and bars of the grid for a ceiling panel; depth of the box for a box; the seal of the cable entry where water may splash or nobody says that it does not.
 * @source DERIVED-HERE
 * @example 80 mm deep under a void of 60 mm: fails
 */
export function mountingChecks(
  model: MountedModel,
  ceiling: CeilingBuild,
  device: MountedDevice,
): readonly WiringCheck[] {
  const shared = {
    unit: "mm",
    source: "DERIVED-HERE",
    code: "detector-does-not-fit",
    name: device.tag,
    ...(device.room === undefined ? {} : { room: device.room }),
    records: [device.id],
  } as const;
  const depth = (what: Said, free: Metres | undefined, missing: Said): WiringCheck => ({
    ...shared,
    verdict: atMost(model.depth, free),
    what,
    actual: millimetres(model.depth),
    limit: millimetres(free),
    assumptions: [],
    missing: [
      ...(model.depth === undefined ? [say`its depth, from its data sheet`] : []),
      ...(free === undefined ? [missing] : []),
    ],
  });
  const seal = sealCheck(model, ceiling, shared);
  const fixing: Fixing | undefined = model.fixing;
  switch (fixing) {
    case undefined:
      return [
        {
          ...shared,
          verdict: "not-proven",
          what: say`Mounting`,
          actual: undefined,
          limit: undefined,
          assumptions: [say`How it is fixed is not on record`],
          missing: [say`how it is fixed, from its data sheet`],
        },
        ...seal,
      ];
    case "surface":
      return seal;
    case "box":
      return [
        depth(
          say`Depth in the ceiling box`,
          ceiling.boxDepth,
          say`the depth of the ceiling boxes of the room`,
        ),
        ...seal,
      ];
    case "ceiling-panel":
      return [
        depth(
          say`Depth above the ceiling`,
          ceiling.voidHeight,
          say`the free height above the ceiling of the room`,
        ),
        thicknessCheck(model, ceiling, shared),
        ...barCheck(model, ceiling, shared),
        ...seal,
      ];
  }
}

type Shared = Pick<WiringCheck, "unit" | "source" | "code" | "name" | "room" | "records">;

function thicknessCheck(model: MountedModel, { thickness }: CeilingBuild, shared: Shared): WiringCheck {
  const { min, max } = model.ceilingThickness ?? {};
  const thin = min !== undefined && thickness !== undefined && thickness < min;
  return {
    ...shared,
    verdict: thin ? "fail" : atMost(thickness, max),
    what: thin
      ? say`Thickness of the ceiling against the least that holds it`
      : say`Thickness of the ceiling`,
    actual: millimetres(thickness),
    limit: millimetres(thin ? min : max),
    assumptions: [],
    missing: [
      ...(thickness === undefined ? [say`the thickness of the ceiling of the room`] : []),
      ...(max === undefined ? [say`the thickness of ceiling that holds it, from its data sheet`] : []),
    ],
  };
}

/** The hole stays clear of the bars: half of the cut-out is at most the way to the edge of the nearest. */
function barCheck({ cutOut }: MountedModel, { toBar }: CeilingBuild, shared: Shared): readonly WiringCheck[] {
  if (cutOut === undefined)
    return [
      {
        ...shared,
        verdict: "not-proven",
        what: say`Cut-out`,
        actual: undefined,
        limit: undefined,
        assumptions: [say`The cut-out is not on record`],
        missing: [say`its cut-out, from its data sheet`],
      },
    ];
  if (toBar === undefined) return [];
  return [
    {
      ...shared,
      verdict: atMost(cutOut / 2, toBar - halfBar.rows),
      what: say`Half of the cut-out against the way to the edge of the nearest bar of the ceiling grid`,
      actual: millimetres(cutOut / 2),
      limit: millimetres(toBar - halfBar.rows),
      source: halfBar.source,
      assumptions: [say`The grid as drawn; its bars ${tenths(2 * halfBar.rows)} mm wide`],
    },
  ];
}

function sealCheck(
  { entrySeal }: MountedModel,
  { wet }: CeilingBuild,
  shared: Shared,
): readonly WiringCheck[] {
  if ((wet !== "yes" && wet !== "unknown") || (entrySeal !== undefined && entrySeal !== "none")) return [];
  return [
    {
      ...shared,
      verdict: entrySeal === undefined || wet === "unknown" ? "not-proven" : "fail",
      what: say`Seal of the cable entry`,
      actual: undefined,
      limit: undefined,
      unit: "",
      source: "COMMON-PRACTICE",
      assumptions: [
        wet === "unknown"
          ? say`Nobody said whether water may splash in the room`
          : say`Water may splash in the room`,
      ],
      missing: [
        ...(wet === "unknown" ? [say`whether water may splash in the room`] : []),
        ...(entrySeal === undefined ? [say`the seal of its cable entry, from its data sheet`] : []),
      ],
      code: "cable-entry-open",
    },
  ];
}

const millimetres = (metres: Metres | undefined): number | undefined =>
  metres === undefined ? undefined : tenths(metres);

/** Millimetres to a tenth, without the tails of binary fractions. */
const tenths = (metres: Metres): number => Math.round(metres * 1e4) / 10;
