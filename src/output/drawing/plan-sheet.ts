import { type RoomCoverage, type Said, type Site, say } from "#engine";
import { darkWalkMarks, drawnWalks } from "./dark-walk-marks.ts";
import { detectorMarks } from "./detector-mark.ts";
import { drawingBox, frameMarks, type Paper, papers } from "./frame.ts";
import type { Variant } from "./ink.ts";
import { placedLabels } from "./labels.ts";
import type { LegendKey } from "./legend.ts";
import type { Mark, Sheet } from "./mark.ts";
import { openingMarks } from "./opening-marks.ts";
import { planGround, planLabels } from "./plan-labels.ts";
import { extentOf, onPaper, type Projection, projectionInto } from "./projection.ts";
import {
  dwellPlaceMarks,
  floorPieceMarks,
  interferenceMarks,
  luminaireMarks,
  obstacleMarks,
} from "./room-marks.ts";
import { type OnStorey, onStorey } from "./storey-records.ts";
import type { SheetTitle } from "./title-block.ts";
import { throughWalls, wallMarks } from "./wall-marks.ts";
import { type DeviceZone, gapMarks, spillMarks, zoneMarks } from "./zone-marks.ts";

export interface PlanSheetInput {
  readonly site: Site;
  /** Id of the storey. */
  readonly storey: string;
  readonly coverage: readonly RoomCoverage[];
  readonly zones: readonly DeviceZone[];
  readonly title: SheetTitle;
  readonly paper?: Paper;
  readonly variant?: Variant;
}

/** The plan of a storey with its detectors, what they see, what they miss and why, to scale. */
export function planSheet(input: PlanSheetInput): Sheet {
  const paper = input.paper ?? "A3";
  const variant = input.variant ?? "colour";
  const records = onStorey(input.site, input.storey);
  const window = drawingBox(paper);
  const extent = extentOf(records.rooms.map((room) => room.outline)) ?? {
    left: 0,
    right: 10,
    low: 0,
    high: 10,
  };
  const projection = projectionInto(extent, window, 14);
  const coverage = input.coverage.filter((one) => records.roomIds.has(one.room));
  const zones = input.zones.filter((zone) => records.detectors.some((one) => one.id === zone.device));
  const drawn = { variant, projection };
  const marks: readonly Mark[] = [
    ...spillMarks(
      coverage.flatMap((one) => one.spill),
      drawn,
    ),
    ...zoneMarks(zones, drawn),
    ...records.floorPieces.flatMap((piece) => floorPieceMarks(piece, projection)),
    ...records.obstacles.flatMap((obstacle) => obstacleMarks(obstacle, projection)),
    ...records.luminaires.flatMap((luminaire) => luminaireMarks(luminaire, projection)),
    ...records.dwellPlaces.flatMap((place) => dwellPlaceMarks(place, projection)),
    ...gapMarks(
      coverage.flatMap((one) => one.gaps),
      drawn,
    ),
    ...wallMarks(records.rooms, records.openings, projection),
    ...throughWalls(records.openings).flatMap((opening) => {
      const first = input.site.rooms.find((room) => room.id === opening.rooms[0]);
      return first ? openingMarks(opening, first, { projection }) : [];
    }),
    ...coverage.flatMap((one) => drawnWalks(one).flatMap((walk) => darkWalkMarks(walk, projection))),
    ...records.interference.flatMap((source) =>
      interferenceMarks(source, { seen: seenSources(coverage).has(source.id), variant, projection }),
    ),
    ...detectorSigns(records, input.site, projection),
  ];
  const labels = placedLabels(
    planLabels({ records, site: input.site, coverage, projection, variant, speak: input.title.speak }),
    planGround(records, coverage, { projection, window }),
  );
  const [width, height] = papers[paper];
  return {
    name: `plan-${input.storey}`,
    title: `${input.title.job}: ${input.title.speak(input.title.sheet)}, ${input.title.storey}`,
    width,
    height,
    scale: projection.scale,
    marks: [
      { kind: "clip", within: window, marks: [...marks, ...labels] },
      ...frameMarks({
        paper,
        title: input.title,
        scale: projection.scale,
        shown: shownOn(records, coverage, { zones, site: input.site }),
        notes: notesOf(input.site),
        variant,
      }),
    ],
  };
}

/** Signs of all detectors on a storey. */
export function detectorSigns(records: OnStorey, site: Site, projection: Projection): readonly Mark[] {
  return records.detectors.flatMap((detector) =>
    detectorMarks(onPaper(detector.at, projection), {
      turn: detector.turn,
      hears: hears(site, detector.model),
    }),
  );
}

export const hears = (site: Site, model: string): boolean =>
  (site.models.find((one) => one.id === model)?.zones.sound?.length ?? 0) > 0;

export const seenSources = (coverage: readonly RoomCoverage[]): ReadonlySet<string> =>
  new Set(coverage.flatMap((one) => one.interference.map((seen) => seen.source)));

function notesOf(site: Site): readonly Said[] {
  const { margin } = site.defaults;
  const percent = (share: number): string => `${Math.round(share * 100)} %`;
  return [
    say`Zones less margin: seated ${percent(margin.seated)}, towards ${percent(margin.towards)}, across ${percent(margin.across)}. Doors shut or leaf open, the worse counts.`,
  ];
}

function shownOn(
  records: OnStorey,
  coverage: readonly RoomCoverage[],
  more: { readonly zones: readonly DeviceZone[]; readonly site: Site },
): ReadonlySet<LegendKey> {
  const seen = seenSources(coverage);
  const shown = new Set<LegendKey>();
  const add = (key: LegendKey, when: unknown): void => {
    if (when) shown.add(key);
  };
  add(
    "detector",
    records.detectors.some((one) => !hears(more.site, one.model)),
  );
  add(
    "hearing-detector",
    records.detectors.some((one) => hears(more.site, one.model)),
  );
  for (const zone of more.zones) add(zone.kind, zone.region.length > 0);
  add(
    "gap",
    coverage.some((one) => one.gaps.length > 0),
  );
  add(
    "spill",
    coverage.some((one) => one.spill.some((spill) => spill.region.length > 0)),
  );
  add(
    "interference",
    records.interference.some((one) => !seen.has(one.id)),
  );
  add(
    "interference-seen",
    records.interference.some((one) => seen.has(one.id)),
  );
  add(
    "dark-walk",
    coverage.some((one) => drawnWalks(one).length > 0),
  );
  add("dwell-place", records.dwellPlaces.length > 0);
  add(
    "obstacle",
    records.obstacles.some((one) => one.base < 1.9),
  );
  add(
    "overhead",
    records.obstacles.some((one) => one.base >= 1.9),
  );
  add("luminaire", records.luminaires.length > 0);
  add(
    "flight",
    records.floorPieces.some((one) => one.kind === "flight"),
  );
  return shown;
}
