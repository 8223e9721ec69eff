import {
  boxFill,
  type Check,
  cubicInches,
  type DetectorModel,
  figured,
  first,
  fixingOf,
  fixingWords,
  joined,
  type Mounting,
  mountingsOf,
  roomTitle,
  type Said,
  type Site,
  say,
  type Words,
} from "#engine";
import { cutOutWords, millimetres } from "../setting-out/device-rows.ts";
import { branchPoints } from "./branch-points.ts";
import type { GroupPlan, WiringPlan } from "./plan.ts";
import { column } from "./schedules.ts";
import type { Table } from "./table-sheets.ts";

/** Boxes and mountings, one for each device. */
export function boxList(site: Site, plan: WiringPlan): Table {
  const { groups, names } = plan;
  const storeyOf = (room: string | undefined): string =>
    site.storeys.find(({ id }) => id === site.rooms.find((one) => one.id === room)?.storey)?.name ?? "";
  const seen = new Set<string>();
  return {
    columns: [
      column(say`At`, 16),
      column(say`What`, 40),
      column(say`Room`, 37),
      column(say`Storey`, 23),
      column(say`Cut-out mm`, 24, "end"),
      column(say`Depth mm`, 22, "end"),
      column(say`Cables`, 18, "end"),
    ],
    rows: [
      ...groups.flatMap((group) => [
        ...group.detectors.map(({ wired, model, room }) => [
          wired.tag,
          joined([fixingText(site, wired.id), ...volumeWords(group, wired.id)], ", "),
          room,
          storeyOf(wired.room),
          cutOutWords(model),
          model?.depth === undefined ? say`unknown` : millimetres(model.depth),
          String(group.cables.filter(({ from, to }) => from === wired.id || to === wired.id).length),
        ]),
        ...group.buttons.flatMap(({ button, designation, room }) => {
          if (seen.has(button.id)) return [];
          seen.add(button.id);
          const planned = site.switches.find(({ id }) => id === button.id)?.planned;
          return [
            [
              designation,
              planned === "button" ? say`existing box of the switch` : say`box in the wall`,
              room,
              storeyOf(button.room),
              "",
              "",
              String(group.cables.filter(({ from, to }) => from === button.id || to === button.id).length),
            ],
          ];
        }),
      ]),
      ...branchPoints(plan).map(({ id, cables }) => {
        const room = [...site.detectors, ...site.luminaires, ...site.switches].find(
          (one) => one.id === id,
        )?.room;
        return [
          names.of(id),
          say`branch box that can be got at`,
          roomTitle(site.rooms.find((one) => one.id === room)),
          storeyOf(room),
          "",
          "",
          String(cables),
        ];
      }),
    ],
  };
}

/** The least volume of a detector's box, where boxes are sized by what is in them. */
function volumeWords({ cables, feed, supply, pack }: GroupPlan, detector: string): readonly Said[] {
  const gauge = feed?.found?.cable?.gauge;
  if (supply.region !== "US" || gauge === undefined || pack) return [];
  const own = cables.filter(({ from, to }) => from === detector || to === detector);
  const all = own.flatMap(({ conductors }) => conductors);
  const grounding = all.filter((one) => one === "protective").length;
  const volume = boxFill({
    gauge,
    conductors: all.length - grounding,
    grounding,
    clamps: "inside",
    devices: 1,
  });
  return volume === undefined
    ? []
    : [say`box of ${figured(`${cubicInches(volume).toFixed(1)} in³`)} at least`];
}

export const boxNotes: readonly Said[] = [
  say`Conductors loop in and out at the devices. Where more than two cables meet, a box that can be got at is listed, bought and counted in minutes; a joint made elsewhere needs one more. Cable entries sealed as the device's data sheet asks.`,
];

/** How a detector of the site is fixed, in words. */
function fixingText(site: Site, id: string): Words {
  const detector = site.detectors.find((one) => one.id === id);
  const fixing = detector && fixingOf(detector, modelOf(site, detector.model));
  return fixing === undefined
    ? say`fixing unknown`
    : fixing === "box"
      ? say`ceiling box`
      : fixingWords[fixing];
}

const modelOf = (site: Site, id: string): DetectorModel | undefined =>
  site.models.find((one) => one.id === id);

/** What the fitter must know of each device before a hole is made: fixing, hole, depth, ceiling, cable entry, and whether it fits. */
export function fittingList(site: Site): Table {
  const mountings = new Map(mountingsOf(site).map((one) => [one.detector, one]));
  return {
    columns: [
      column(say`At`, 16),
      column(say`Room`, 36),
      column(say`Fixing`, 30),
      column(first(say`cut-out`), 18, "end"),
      column(say`Depth`, 14, "end"),
      column(say`Ceiling`, 26),
      column(say`Entry`, 24),
      column(say`Fits`, 16),
    ],
    rows: site.detectors.flatMap((detector): readonly (readonly Words[])[] => {
      const mounting = mountings.get(detector.id);
      const model = modelOf(site, detector.model);
      if (!mounting) return [];
      return [
        [
          detector.tag || detector.id,
          roomTitle(site.rooms.find(({ id }) => id === detector.room)),
          fixingText(site, detector.id),
          cutOutWords(model),
          model?.depth === undefined ? say`unknown` : millimetres(model.depth),
          ceilingWords(mounting),
          entryWords(model),
          fitWords(mounting.checks),
        ],
      ];
    }),
  };
}

export const fittingNotes: readonly Said[] = [
  say`All in mm. Ceiling: thickness of the panel and free height above it, or depth of the ceiling box, as entered for the room. Entry: where cables enter, and its seal. Fits: depth, thickness, cut-out against the bars of the grid, seal of the cable entry. Make no hole where it says no or unknown.`,
];

function ceilingWords({ fixing, ceiling }: Mounting): Words {
  const size = (metres: number | undefined): Words =>
    metres === undefined ? say`unknown` : millimetres(metres);
  switch (fixing) {
    case "box":
      return say`box ${size(ceiling.boxDepth)}`;
    case "ceiling-panel":
      return say`panel ${size(ceiling.thickness)}, above ${size(ceiling.voidHeight)}`;
    case "surface":
      return "";
    case undefined:
      return say`unknown`;
  }
}

const sides = { back: say`back`, side: say`side`, either: say`back or side` } as const;
const seals = { none: say`no seal`, grommet: say`grommet`, gland: say`cable gland` } as const;

const entryWords = (model: DetectorModel | undefined): Words =>
  model?.cableEntry === undefined && model?.entrySeal === undefined
    ? say`unknown`
    : joined(
        [
          ...(model.cableEntry === undefined ? [] : [sides[model.cableEntry]]),
          ...(model.entrySeal === undefined ? [say`seal unknown`] : [seals[model.entrySeal]]),
        ],
        ", ",
      );

function fitWords(checks: readonly Check[]): Said {
  if (checks.some(({ verdict }) => verdict === "fail")) return say`no`;
  return checks.some(({ verdict }) => verdict === "not-proven") ? say`unknown` : say`yes`;
}

/** What the indicators of the models that hang in the job show, in the words of their data sheets. */
export function indicatorList(site: Site): Table {
  const used = new Set(site.detectors.map(({ model }) => model));
  return {
    columns: [column(say`Model`, 66), column(say`Shows`, 52), column(say`Means`, 62)],
    rows: site.models
      .filter(({ id }) => used.has(id))
      .flatMap(({ title, indicators = [] }) => indicators.map(({ sign, meaning }) => [title, sign, meaning])),
  };
}

export const indicatorNotes: readonly Said[] = [
  say`As entered from each model's own data sheet. A dark indicator and a dark lamp prove nothing: test for voltage before work.`,
];
