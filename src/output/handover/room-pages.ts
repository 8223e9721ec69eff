import {
  figured,
  type Handover,
  type PlannedDevice,
  type RoomRecord,
  type Said,
  type SourceId,
  say,
  type Words,
  type ZoneOfDevice,
} from "#engine";
import type { Variant } from "../drawing/ink.ts";
import type { Box, Mark } from "../drawing/mark.ts";
import { centred, type Extent, extentOf } from "../drawing/projection.ts";
import { scaleBar } from "../drawing/scale-bar.ts";
import type { SheetTitle } from "../drawing/title-block.ts";
import { gapMarks, zoneMarks } from "../drawing/zone-marks.ts";
import { millimetres, turnWords } from "../setting-out/device-rows.ts";
import { roomView } from "../setting-out/room-view.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { settingWords } from "../setting-sheets/setting-words.ts";
import { column } from "../wiring/schedules.ts";
import { verifyWords } from "../wiring/sheet-frame.ts";
import { uprightFrame } from "../wiring/table-sheets.ts";
import { checkBlock, figure, findingBlock } from "./check-rows.ts";
import { type Block, type Drawn, inset, uprightPages } from "./upright-pages.ts";

export interface RoomPagesInput {
  readonly handover: Handover;
  readonly room: RoomRecord;
  readonly title: Omit<SheetTitle, "page" | "pages">;
  readonly variant: Variant;
}

/** Height of the plan on the page of a room: the most, and what it is where the tables need a second page anyway. [mm] */
const heights = { most: 140, usual: 112 } as const;
/** The smallest plan that still reads, as a scale: rather a second page than a smaller one. */
const smallest = 200;
/** Under the plan, for the scale bar. [mm] */
const barHeight = 11;

/** One room: its plan with what is seen and missed, its detectors and what is set on them, demand and coverage with evidence, what is open. */
export function roomPages(input: RoomPagesInput): readonly UnnumberedSheet[] {
  const { handover, room, title } = input;
  const checks = [...room.coverage.checks, ...(room.walked ? [room.walked.check] : [])];
  const devices = handover.settings.devices.filter(({ context }) => room.detectors.includes(context.device));
  const verify = verifyWords([...checks.map(({ source }) => source), ...devices.flatMap(settingSources)]);
  return uprightPages({
    name: `room-${room.room.id.replace(/[^\w-]+/g, "-")}`,
    heading: room.title,
    intro: [
      say`${room.storey}, ${useWords[room.room.use]}, ${figure(room.area, "m²")}, ceiling ${figure(room.room.ceilingHeight, "m")}.`,
    ],
    blocks: [
      detectorBlock(handover, room, devices),
      coverageBlock(room),
      checkBlock(say`Checks`, checks),
      findingBlock(say`Open in this room`, room.findings, say`Nothing.`),
    ],
    title,
    notes: verify === undefined ? [] : [verify],
    drawn: (free) => drawnIn(input, free),
  });
}

const settingSources = ({ settings }: PlannedDevice): readonly SourceId[] =>
  Object.values(settings).flatMap((setting) => (setting.kind === "derived" ? [setting.source] : []));

const useWords = {
  passing: say`people pass through`,
  stair: say`stair`,
  moving: say`people move about`,
  sitting: say`people sit`,
  sanitary: say`sanitary room`,
  changing: say`changing room`,
  plant: say`plant room`,
  other: say`use not stated`,
} as const;

/** Scales of a room's own plan: small rooms are shown larger than on the plan of their storey. */
const scales = [20, 25, 50, 100, 200, 500, 1000] as const;
/** Free on all sides, for what lies at the walls. [mm] */
const rim = 6;

/** The plan as large as the page leaves room for: an ordinary room takes one page. */
function drawnIn(input: RoomPagesInput, free: number): Drawn | undefined {
  const extent = extentOf([input.room.room.outline]);
  if (!extent) return undefined;
  const alone = Math.min(free, heights.most) - barHeight;
  const onePage = alone > 0 && scaleFor(extent, alone) <= smallest;
  const given = (onePage ? alone : heights.usual - barHeight) + barHeight;
  const scale = scaleFor(extent, given - barHeight);
  const view = ((extent.high - extent.low) * 1000) / scale + 2 * rim;
  return {
    height: Math.min(given, view + barHeight),
    scale,
    marks: (top) => viewMarks(input, { top, bottom: top + view, scale }),
  };
}

function scaleFor(extent: Extent, height: number): number {
  const width = uprightFrame.right - uprightFrame.left - 2 * inset;
  const fits = (scale: number): boolean =>
    ((extent.right - extent.left) * 1000) / scale <= width - 2 * rim &&
    ((extent.high - extent.low) * 1000) / scale <= height - 2 * rim;
  return scales.find(fits) ?? scales[scales.length - 1]!;
}

function viewMarks(
  { handover, room, variant, title }: RoomPagesInput,
  { top, bottom, scale }: { readonly top: number; readonly bottom: number; readonly scale: number },
): readonly Mark[] {
  const { site, zones } = handover;
  const window: Box = {
    left: uprightFrame.left + inset,
    right: uprightFrame.right - inset,
    top,
    bottom,
  };
  const extent = extentOf([room.room.outline]);
  if (!extent) return [];
  const projection = centred(extent, window, scale);
  const own: readonly ZoneOfDevice[] = zones.filter(({ device }) => room.detectors.includes(device));
  return [
    {
      kind: "clip",
      within: window,
      marks: [
        ...zoneMarks(own, { variant, projection }),
        ...gapMarks(room.coverage.gaps, { variant, projection }),
        ...roomView({
          site,
          room: room.room,
          devices: site.detectors
            .filter((detector) => detector.room === room.room.id)
            .map((detector) => ({ detector, measures: [] })),
          letters: new Map(),
          projection,
          window,
          title: "absent",
          speak: title.speak,
        }),
      ],
    },
    ...scaleBar([window.left + 1, window.bottom + 5], { scale: projection.scale, speak: title.speak }),
  ];
}

function detectorBlock(handover: Handover, room: RoomRecord, devices: readonly PlannedDevice[]): Block {
  const { site } = handover;
  return {
    heading: say`Detectors that switch its light`,
    columns: [
      column(say`Tag`, 16),
      column(say`Model`, 54),
      column(say`Height mm`, 22, "end"),
      column(say`Turn`, 12, "end"),
      column(say`Mode`, 24),
      column(say`Off delay`, 20, "end"),
      column(say`Brightness`, 24, "end"),
    ],
    rows: room.detectors.flatMap((id) => {
      const detector = site.detectors.find((one) => one.id === id);
      const planned = devices.find(({ context }) => context.device === id);
      if (!detector) return [];
      const model = site.models.find((one) => one.id === detector.model);
      return [
        [
          detector.tag,
          model?.title ?? detector.model,
          millimetres(detector.height),
          turnWords(detector.turn),
          planned ? settingWords("mode", planned.settings.mode.value) : "",
          planned ? settingWords("offDelay", planned.settings.offDelay.value) : "",
          planned ? settingWords("threshold", planned.settings.threshold.value) : "",
        ],
      ];
    }),
    empty: say`None.`,
  };
}

/** What must be seen, and how much of it is. */
function coverageBlock({ coverage }: RoomRecord): Block {
  const { demanded, covered, demand } = coverage;
  const share = (part: number, of: number): Said =>
    of === 0 ? say`nothing asked` : figured(`${((100 * part) / of).toFixed(1)} %`);
  const lit = coverage.darkWalks.filter((walk) => walk.lit).map((walk) => walk.metres);
  const dark = coverage.darkWalks.some((walk) => !walk.lit);
  const row = (
    name: Said,
    asked: boolean,
    [part, of, unit]: readonly [number, number, string],
  ): readonly Words[] =>
    asked
      ? [name, figure(of, unit), figure(part, unit), share(part, of)]
      : [name, say`not asked here`, "", ""];
  return {
    heading: say`What must be seen, and what is`,
    columns: [
      column(say`Demand`, 76),
      column(say`Asked`, 32, "end"),
      column(say`Seen`, 32, "end"),
      column(say`Share`, 32, "end"),
    ],
    rows: [
      row(say`Walking anywhere`, demand.asked.walk, [covered.walk, demanded.walk, "m²"]),
      row(say`Staying at a place`, demand.asked.hold, [covered.hold, demanded.hold, "m²"]),
      row(say`Coming in, by door`, demand.asked.catch, [covered.catch, demanded.catch, ""]),
      [
        say`Longest walk in the dark`,
        "",
        dark ? say`never lit` : lit.length === 0 ? say`no way in` : figure(Math.max(...lit), "m"),
        "",
      ],
    ],
  };
}
