import {
  day,
  english,
  type Finding,
  type Handover,
  joined,
  messageSaid,
  remedySaid,
  roomTitle,
  type Said,
  say,
  useNames,
  type Verdict,
  type Words,
} from "#engine";
import { deviceHead, deviceRows } from "../csv/device-schedule.ts";
import type { OwedPoint } from "../handover/closing-pages.ts";
import { settingOrder, settingTitles, settingWords } from "../setting-sheets/setting-words.ts";
import { boxList, fittingList } from "../wiring/fitting-list.ts";
import type { WiringPlan } from "../wiring/plan.ts";
import { cableSchedule, terminalSchedule } from "../wiring/schedules.ts";
import type { Table } from "../wiring/table-sheets.ts";
import type { Speak } from "../words/speak.ts";
import { type WorkbookSheet, xlsxOf } from "../xlsx/xlsx.ts";

/** All schedules of a job in one workbook: rooms, devices, settings, checks, terminals, cables, boxes, fitting, open points. */
export const scheduleWorkbook = (handover: Handover, of: ScheduledBeside): Promise<Uint8Array> =>
  xlsxOf(scheduleSheets(handover, of), of.speak);

interface ScheduledBeside {
  readonly plan: WiringPlan | undefined;
  readonly speak: Speak;
  /** What people wrote down as open. */
  readonly owed: readonly OwedPoint[];
}

/** The same as data. A table without rows is left out. */
export function scheduleSheets(
  handover: Handover,
  { plan, owed }: Omit<ScheduledBeside, "speak">,
): readonly WorkbookSheet[] {
  const wiring =
    plan === undefined || plan.groups.length === 0
      ? []
      : [
          fromTable(say`Terminals`, terminalSchedule(plan)),
          fromTable(say`Cables`, cableSchedule(plan)),
          fromTable(say`Boxes`, boxList(handover.site, plan)),
        ];
  return [
    rooms(handover),
    devices(handover),
    settings(handover),
    checks(handover),
    ...wiring,
    fromTable(say`Fitting`, fittingList(handover.site)),
    openPoints(handover, owed),
  ].filter(({ rows }) => rows.length > 0);
}

/** Columns of paper are millimetres; those of a workbook about as many letters as go into two of them. */
const fromTable = (name: Words, { columns, rows }: Table): WorkbookSheet => ({
  name,
  head: columns.map(({ head, width }) => ({ title: head, width: Math.max(10, Math.round(width / 1.8)) })),
  rows,
});

const verdictNames: Readonly<Record<Verdict, Said>> = {
  pass: say`pass`,
  fail: say`fail`,
  "not-proven": say`not-proven`,
};

const severityNames: Readonly<Record<Finding["severity"], Said>> = {
  must: say`must`,
  should: say`should`,
  note: say`note`,
};

const rounded = (value: number): number => Math.round(value * 1000) / 1000;

function rooms({ rooms: records, site }: Handover): WorkbookSheet {
  const tag = (id: string): string => site.detectors.find((one) => one.id === id)?.tag ?? id;
  return {
    name: say`Rooms`,
    head: [
      { title: say`Storey`, width: 16 },
      { title: say`Number`, width: 10 },
      { title: say`Room`, width: 28 },
      { title: say`Use`, width: 12 },
      { title: say`Area m²`, width: 10 },
      { title: say`Ceiling m`, width: 10 },
      { title: say`Detectors`, width: 24 },
      { title: say`Walk asked m²`, width: 14 },
      { title: say`Walk seen m²`, width: 14 },
      { title: say`Hold asked m²`, width: 14 },
      { title: say`Hold seen m²`, width: 14 },
      { title: say`Doors asked`, width: 12 },
      { title: say`Doors seen`, width: 12 },
      { title: say`Longest dark walk m`, width: 18 },
    ],
    rows: records.map(({ room, storey, area, detectors, coverage }) => {
      const { demand, demanded, covered, darkWalks } = coverage;
      const lit = darkWalks.every((walk) => walk.lit) ? darkWalks.map((walk) => walk.metres) : [];
      const asked = (on: boolean, value: number): number | undefined => (on ? rounded(value) : undefined);
      return [
        storey,
        room.number,
        room.name,
        useNames[room.use],
        rounded(area),
        rounded(room.ceilingHeight),
        detectors.map(tag).join(", "),
        asked(demand.asked.walk, demanded.walk),
        asked(demand.asked.walk, covered.walk),
        asked(demand.asked.hold, demanded.hold),
        asked(demand.asked.hold, covered.hold),
        asked(demand.asked.catch, demanded.catch),
        asked(demand.asked.catch, covered.catch),
        lit.length === 0 ? undefined : rounded(Math.max(...lit)),
      ];
    }),
  };
}

/** Columns of the device schedule that hold figures. */
const figures = new Set(["Height m", "Turn °", "x m", "y m"]);

function devices({ site }: Handover): WorkbookSheet {
  return {
    name: say`Devices`,
    head: deviceHead.map((title) => ({
      title,
      width: Math.max(10, Math.min(30, 2 * english(title).length)),
    })),
    rows: deviceRows(site).map((row) =>
      row.map((cell, i) => (figures.has(english(deviceHead[i]!)) ? Number(english(cell)) : cell)),
    ),
  };
}

function settings({ settings: { devices: planned } }: Handover): WorkbookSheet {
  return {
    name: say`Settings`,
    head: [
      { title: say`Tag`, width: 10 },
      { title: say`Room`, width: 28 },
      ...settingOrder.map((name) => ({ title: settingTitles[name], width: 16 })),
      { title: say`Chosen by a person`, width: 40 },
    ],
    rows: planned.map(({ context, settings: set }) => [
      context.tag,
      context.room,
      ...settingOrder.map((name) => settingWords(name, set[name].value)),
      joined(
        settingOrder.filter((name) => set[name].kind === "chosen").map((name) => settingTitles[name]),
        ", ",
      ),
    ]),
  };
}

function checks({ rooms: records }: Handover): WorkbookSheet {
  return {
    name: say`Checks`,
    head: [
      { title: say`Room`, width: 28 },
      { title: say`What`, width: 44 },
      { title: say`Found`, width: 12 },
      { title: say`Limit`, width: 12 },
      { title: say`Unit`, width: 8 },
      { title: say`Verdict`, width: 12 },
      { title: say`Source`, width: 22 },
      { title: say`Taken for granted`, width: 60 },
    ],
    rows: records.flatMap(({ title, coverage }) =>
      coverage.checks.map(({ what, actual, limit, unit, verdict, source, assumptions }) => [
        title,
        what,
        actual === undefined || !Number.isFinite(actual) ? undefined : rounded(actual),
        limit === undefined || !Number.isFinite(limit) ? undefined : rounded(limit),
        unit,
        verdictNames[verdict],
        source,
        joined(assumptions, " "),
      ]),
    ),
  };
}

/** As on paper: what people wrote down, then what the program found. */
function openPoints({ findings, site }: Handover, owed: readonly OwedPoint[]): WorkbookSheet {
  return {
    name: say`Open points`,
    head: [
      { title: say`Severity`, width: 14 },
      { title: say`Room`, width: 28 },
      { title: say`What`, width: 80 },
      { title: say`Remedy`, width: 60 },
      { title: say`Who`, width: 20 },
      { title: say`Until`, width: 12 },
      { title: say`Closed`, width: 12 },
    ],
    rows: [
      ...owed.map(({ room, text, owner, due, closed }) => [
        say`written down`,
        room,
        text,
        "",
        owner,
        day(due),
        day(closed),
      ]),
      ...findings.map((finding) => [
        severityNames[finding.severity],
        finding.room === undefined ? "" : roomTitle(site.rooms.find(({ id }) => id === finding.room)),
        messageSaid(finding),
        remedySaid(finding),
      ]),
    ],
  };
}
