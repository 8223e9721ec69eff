import { type Said, type Site, type SourceId, say, standbyOf, type Words } from "#engine";
import { csvOf } from "../csv/csv.ts";
import type { Variant } from "../drawing/ink.ts";
import type { SheetTitle } from "../drawing/title-block.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import type { Speak } from "../words/speak.ts";
import { colourSource } from "./conductors.ts";
import { ranges } from "./designations.ts";
import {
  boxList,
  boxNotes,
  fittingList,
  fittingNotes,
  indicatorList,
  indicatorNotes,
} from "./fitting-list.ts";
import { groupSheets } from "./group-sheets.ts";
import type { WiringPlan } from "./plan.ts";
import { assumptionList, cableNotes, cableSchedule, terminalNotes, terminalSchedule } from "./schedules.ts";
import { verifyWords } from "./sheet-frame.ts";
import { type Table, tableSheets } from "./table-sheets.ts";

export interface WiringPapersInput {
  readonly site: Site;
  readonly plan: WiringPlan;
  /** Title of a sheet by its name, and of the storey where a sheet is of one. */
  readonly title: (sheet: Words, storey: string | undefined) => Omit<SheetTitle, "page" | "pages">;
  readonly variant: Variant;
}

/** The drawings, a sheet or more for each switched group. */
export const wiringDrawings = ({
  site,
  plan,
  title,
  variant,
}: WiringPapersInput): readonly UnnumberedSheet[] =>
  plan.groups.flatMap((group) =>
    groupSheets({
      plan,
      group,
      title: title(say`Wiring`, storeyOf(site, group.detectors[0]?.wired.room)),
      variant,
    }),
  );

const storeyOf = (site: Site, room: string | undefined): string | undefined =>
  site.rooms.find(({ id }) => id === room)?.storey;

/** Schedules of terminals, cables and boxes, and what all of it takes for granted. */
export function wiringSchedules({ site, plan, title }: WiringPapersInput): readonly UnnumberedSheet[] {
  // Of several supplies the one that is worst to touch is named on the schedules of all.
  const supply = plan.groups
    .map((group) => group.supply)
    .reduce(
      (worst, one) => (one.voltage > worst.voltage ? one : worst),
      plan.groups[0]?.supply ?? plan.built.model.supply,
    );
  const colours = [...new Set(plan.groups.map((group) => colourSource[group.supply.region]))];
  const sheets = (
    name: string,
    heading: Said,
    table: Table,
    notes: readonly Words[],
    used: readonly SourceId[],
  ) => {
    const verify = verifyWords(used);
    return table.rows.length === 0
      ? []
      : tableSheets({
          name,
          heading,
          table,
          title: title(heading, undefined),
          supply,
          notes: [...notes, ...(verify ? [verify] : [])],
        });
  };
  return [
    ...sheets("terminals", say`Terminal schedule`, terminalSchedule(plan), terminalNotes, [
      "IEC-81346-2",
      ...colours,
    ]),
    ...sheets("cables", say`Cable schedule`, cableSchedule(plan), cableNotes, ["IEC-81346-2", ...colours]),
    ...sheets("boxes", say`Box list`, boxList(site, plan), boxNotes, ["IEC-81346-2"]),
    ...sheets(
      "fitting",
      say`Fitting list`,
      fittingList(site),
      [...fittingNotes, ...standbyNote(plan)],
      ["IEC-81346-2"],
    ),
    ...sheets("indicators", say`Indicators`, indicatorList(site), indicatorNotes, []),
    ...sheets("assumptions", say`Assumptions of the wiring`, assumptionList(site, plan), [], ["IEC-81346-2"]),
  ];
}

/** What the devices draw by being ready, where any declares it. */
function standbyNote({ built }: WiringPlan): readonly Said[] {
  const { perYear, unknown } = standbyOf(built.model.detectors);
  if (perYear === 0) return [];
  const drawn = Number(perYear.toPrecision(3));
  return [
    unknown.length === 0
      ? say`By being ready the devices draw ${drawn} kWh a year.`
      : say`By being ready the devices draw ${drawn} kWh a year, without ${ranges(unknown)}, whose data sheet does not say.`,
  ];
}

/** The same schedules for a spreadsheet. */
export const wiringTables = ({
  site,
  plan,
  speak,
}: Pick<WiringPapersInput, "site" | "plan"> & { readonly speak: Speak }): readonly {
  readonly name: string;
  readonly content: string;
}[] =>
  (
    [
      ["terminal-schedule", terminalSchedule(plan)],
      ["cable-schedule", cableSchedule(plan)],
      ["box-list", boxList(site, plan)],
      ["fitting-list", fittingList(site)],
    ] as const
  ).map(([name, { columns, rows }]) => ({
    name: `${name}.csv`,
    content: csvOf([columns.map(({ head }) => head), ...rows], speak),
  }));
