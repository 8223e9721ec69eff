import {
  boxFill,
  type Check,
  cubicInches,
  type DetectorModel,
  english,
  fixingOf,
  fixingWords,
  type Mounting,
  mountingsOf,
  roomTitle,
  type Site,
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
      column("At", 16),
      column("What", 40),
      column("Room", 37),
      column("Storey", 23),
      column("Cut-out mm", 24, "end"),
      column("Depth mm", 22, "end"),
      column("Cables", 18, "end"),
    ],
    rows: [
      ...groups.flatMap((group) => [
        ...group.detectors.map(({ wired, model, room }) => [
          wired.tag,
          [fixingText(site, wired.id), ...volumeWords(group, wired.id)].join(", "),
          room,
          storeyOf(wired.room),
          cutOutWords(model).replace("*", ""),
          model?.depth === undefined ? "unknown" : millimetres(model.depth),
          String(group.cables.filter(({ from, to }) => from === wired.id || to === wired.id).length),
        ]),
        ...group.buttons.flatMap(({ button, designation, room }) => {
          if (seen.has(button.id)) return [];
          seen.add(button.id);
          const planned = site.switches.find(({ id }) => id === button.id)?.planned;
          return [
            [
              designation,
              planned === "button" ? "existing box of the switch" : "box in the wall",
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
          "branch box that can be got at",
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
function volumeWords({ cables, feed, supply, pack }: GroupPlan, detector: string): readonly string[] {
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
  return volume === undefined ? [] : [`box of ${cubicInches(volume).toFixed(1)} in³ at least`];
}

export const boxNotes: readonly string[] = [
  "Conductors loop in and out at the devices. Where more than two cables meet, a box that can be got at is listed, bought and counted in minutes; a joint made elsewhere needs one more. Cable entries sealed as the device's data sheet asks.",
];

/** How a detector of the site is fixed, in words. */
function fixingText(site: Site, id: string): string {
  const detector = site.detectors.find((one) => one.id === id);
  const fixing = detector && fixingOf(detector, modelOf(site, detector.model));
  return fixing === undefined
    ? "fixing unknown"
    : fixing === "box"
      ? "ceiling box"
      : english(fixingWords[fixing]);
}

const modelOf = (site: Site, id: string): DetectorModel | undefined =>
  site.models.find((one) => one.id === id);

/** What the fitter must know of each device before a hole is made: fixing, hole, depth, ceiling, cable entry, and whether it fits. */
export function fittingList(site: Site): Table {
  const mountings = new Map(mountingsOf(site).map((one) => [one.detector, one]));
  return {
    columns: [
      column("At", 16),
      column("Room", 36),
      column("Fixing", 30),
      column("Cut-out", 18, "end"),
      column("Depth", 14, "end"),
      column("Ceiling", 26),
      column("Entry", 24),
      column("Fits", 16),
    ],
    rows: site.detectors.flatMap((detector): readonly (readonly string[])[] => {
      const mounting = mountings.get(detector.id);
      const model = modelOf(site, detector.model);
      if (!mounting) return [];
      return [
        [
          detector.tag || detector.id,
          roomTitle(site.rooms.find(({ id }) => id === detector.room)),
          fixingText(site, detector.id),
          cutOutWords(model).replace("*", ""),
          model?.depth === undefined ? "unknown" : millimetres(model.depth),
          ceilingWords(mounting),
          entryWords(model),
          fitWords(mounting.checks),
        ],
      ];
    }),
  };
}

export const fittingNotes: readonly string[] = [
  "All in mm. Ceiling: thickness of the panel and free height above it, or depth of the ceiling box, as entered for the room. Entry: where cables enter, and its seal. Fits: depth, thickness, cut-out against the bars of the grid, seal of the cable entry. Make no hole where it says no or unknown.",
];

function ceilingWords({ fixing, ceiling }: Mounting): string {
  const size = (metres: number | undefined): string =>
    metres === undefined ? "unknown" : millimetres(metres);
  switch (fixing) {
    case "box":
      return `box ${size(ceiling.boxDepth)}`;
    case "ceiling-panel":
      return `panel ${size(ceiling.thickness)}, above ${size(ceiling.voidHeight)}`;
    case "surface":
      return "";
    case undefined:
      return "unknown";
  }
}

const sides = { back: "back", side: "side", either: "back or side" } as const;
const seals = { none: "no seal", grommet: "grommet", gland: "cable gland" } as const;

const entryWords = (model: DetectorModel | undefined): string =>
  model?.cableEntry === undefined && model?.entrySeal === undefined
    ? "unknown"
    : [
        ...(model.cableEntry === undefined ? [] : [sides[model.cableEntry]]),
        ...(model.entrySeal === undefined ? ["seal unknown"] : [seals[model.entrySeal]]),
      ].join(", ");

function fitWords(checks: readonly Check[]): string {
  if (checks.some(({ verdict }) => verdict === "fail")) return "no";
  return checks.some(({ verdict }) => verdict === "not-proven") ? "unknown" : "yes";
}

/** What the indicators of the models that hang in the job show, in the words of their data sheets. */
export function indicatorList(site: Site): Table {
  const used = new Set(site.detectors.map(({ model }) => model));
  return {
    columns: [column("Model", 66), column("Shows", 52), column("Means", 62)],
    rows: site.models
      .filter(({ id }) => used.has(id))
      .flatMap(({ title, indicators = [] }) => indicators.map(({ sign, meaning }) => [title, sign, meaning])),
  };
}

export const indicatorNotes: readonly string[] = [
  "As entered from each model's own data sheet. A dark indicator and a dark lamp prove nothing: test for voltage before work.",
];
