import {
  type Finding,
  type LoadDevice,
  type ReplayedDelay,
  type ReplayedLoad,
  remedyOf,
  type Site,
  sentenceOf,
} from "#engine";
import type { PresenceLog } from "#exchange";
import { assumptionsOf, roomNames, type SettingsById } from "./replay-loads.ts";
import { aligned, findingJson, findingLines, rounded } from "./words.ts";

export interface ReplayAbout {
  readonly file: string;
  readonly log: PresenceLog;
  readonly site: Site;
  readonly settings: SettingsById;
  readonly notes: readonly Finding[];
  /** [s] */
  readonly still: number;
}

/** Those that switch themselves: the others are among the assumptions. */
const switching = ({ load }: ReplayedLoad): readonly LoadDevice[] =>
  load.devices.filter(({ role }) => role === "switches");

const hours = (seconds: number): number => seconds / 3600;

/** For a load of some power, from the run for one watt. [kWh] */
const energyOf = ({ load: { power } }: ReplayedLoad, watt: number): number | undefined =>
  power === undefined ? undefined : power * watt;

const referenceOf = (
  load: ReplayedLoad,
): { readonly litHours: number; readonly energy: number | undefined } => ({
  litHours: hours(load.run.recorded),
  energy: energyOf(load, hours(load.run.recorded) / 1000),
});

/** The answer as data. */
export function jsonOf(loads: readonly ReplayedLoad[], about: ReplayAbout): unknown {
  const { file, log, notes } = about;
  const [first] = loads;
  return {
    log: {
      file,
      begins: log.begins,
      rows: log.times.length,
      step: log.step,
      hours: rounded(hours(first!.run.span), 3),
      recordedHours: rounded(hours(first!.run.recorded), 3),
    },
    loads: loads.map((load) => loadJson(load, about)),
    findings: notes.map(findingJson),
  };
}

function loadJson(load: ReplayedLoad, { site, settings, still }: ReplayAbout): unknown {
  const reference = referenceOf(load);
  const { delay, reason } = load.recommended;
  return {
    rooms: load.load.rooms,
    name: roomNames(site, load.load.rooms),
    devices: switching(load).map(({ id, tag, parameters: { mode, offDelay } }) => ({
      id,
      tag,
      mode,
      offMinutes: rounded(offDelay / 60),
      derived: derivedOf(id, settings),
    })),
    power: load.load.power === undefined ? null : rounded(load.load.power),
    reference: {
      what: "always lit while the log runs",
      litHours: rounded(reference.litHours, 3),
      energy: energyJson(reference.energy),
    },
    delays: load.run.results.map((result) => ({
      minutes: rounded(result.delay / 60),
      litHours: rounded(result.used.litHours, 3),
      switchOffs: result.used.cycles,
      switchOffsWhileThere: result.used.offWhileOccupied,
      cyclesPerYear: Math.round(result.used.cyclesPerYear),
      energy: energyJson(energyOf(load, result.used.energy)),
      spared: result.saving === undefined ? null : rounded(result.saving),
      rows:
        result.rows === undefined ? null : { lit: result.rows.litRows, switchOffs: result.rows.offEvents },
    })),
    recommended: {
      minutes: delay === undefined ? null : rounded(delay / 60),
      code: reason.code,
      message: sentenceOf(reason),
      remedy: remedyOf(reason),
    },
    assumptions: assumptionsOf(load, { settings, still }),
  };
}

/** Which of the two nobody chose. */
const derivedOf = (id: string, settings: SettingsById): readonly ("mode" | "offDelay")[] =>
  (["mode", "offDelay"] as const).filter((name) => settings.get(id)?.[name].kind === "derived");

const energyJson = (energy: number | undefined): number | null =>
  energy === undefined ? null : rounded(energy, 3);

/** The answer for a person. */
export function textOf(loads: readonly ReplayedLoad[], about: ReplayAbout): string {
  const { file, log, notes } = about;
  const { span, recorded } = loads[0]!.run;
  const gap = span - recorded > log.step ? `, ${hours(recorded).toFixed(1)} h of them recorded` : "";
  return [
    `${file}: ${log.times.length} rows from ${log.begins} on, ${hours(span).toFixed(1)} h${gap}`,
    ...loads.flatMap((load) => ["", ...loadLines(load, about)]),
    ...(notes.length > 0 ? ["", findingLines(notes)] : []),
  ].join("\n");
}

function loadLines(load: ReplayedLoad, about: ReplayAbout): string[] {
  const reference = referenceOf(load);
  const { site, settings, still } = about;
  const set = switching(load).map(({ id, tag, parameters: { mode, offDelay } }) => {
    const derived = new Set(derivedOf(id, settings));
    const how = (name: "mode" | "offDelay"): string => (derived.has(name) ? ", derived" : "");
    return `${tag} (${mode}${how("mode")}; delay ${minutes(offDelay)}${how("offDelay")})`;
  });
  const reason = load.recommended.reason;
  return [
    `${roomNames(site, load.load.rooms)}: ${set.join(", ")}`,
    aligned(
      ["Off delay", "Lit", "Switch-offs", "While somebody is there", "Cycles a year", "Energy", "Spared"],
      [
        [
          "always lit",
          `${reference.litHours.toFixed(1)} h`,
          "–",
          "–",
          "–",
          energyText(reference.energy),
          "0 %",
        ],
        ...load.run.results.map((result) => rowOf(load, result)),
      ],
      new Set([1, 2, 3, 4, 5, 6]),
    ),
    `Recommended: ${load.recommended.delay === undefined ? "none" : minutes(load.recommended.delay)}. ${sentenceOf(reason)} ${remedyOf(reason)}`,
    ...assumptionsOf(load, { settings, still }).map((assumption) => `Assumed: ${assumption}`),
  ];
}

const rowOf = (load: ReplayedLoad, { delay, used, saving }: ReplayedDelay): string[] => [
  `${minutes(delay)}${switching(load).some(({ chosen }) => chosen.offDelay === delay) ? " (set)" : ""}`,
  `${used.litHours.toFixed(1)} h`,
  String(used.cycles),
  String(used.offWhileOccupied),
  String(Math.round(used.cyclesPerYear)),
  energyText(energyOf(load, used.energy)),
  saving === undefined ? "–" : `${(100 * saving).toFixed(1)} %`,
];

const energyText = (energy: number | undefined): string =>
  energy === undefined ? "not known" : `${energy.toFixed(2)} kWh`;

const minutes = (seconds: number): string => `${Number((seconds / 60).toFixed(2))} min`;
