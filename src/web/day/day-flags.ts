import { catalogue, type DayRun, type Hold, type Seconds, type Severity, type SwitchedLoad } from "#engine";
import { t } from "../texts/day.ts";
import { clockText, spanText } from "./clock.ts";

/** Kinds of fault that a day may show. */
const kinds = ["switched-off-while-occupied", "lit-while-empty", "light-hunts", "never-off"] as const;
type FaultKind = (typeof kinds)[number];

/** What stands out in a day: a fault, or who holds whom. */
export interface DayFlag {
  readonly kind: FaultKind | "holds";
  readonly severity: Severity;
  readonly from: Seconds;
  readonly to: Seconds;
  /** Tags of the detectors that it is about. */
  readonly tags: readonly string[];
}

/** Faults and holds of a day, by time. */
export function flagsOfDay(load: SwitchedLoad, run: DayRun | undefined): readonly DayFlag[] {
  if (!run) return [];
  const tag = (id: string): string => load.devices.find((device) => device.id === id)?.tag ?? id;
  const faults = run.faults.flatMap(({ code, from, to, devices }): DayFlag[] =>
    isFault(code)
      ? [{ kind: code, severity: catalogue[code].severity, from, to, tags: devices.map(tag) }]
      : [],
  );
  const holds = run.holds.map(
    ({ holder, released, seconds, from }: Hold): DayFlag => ({
      kind: "holds",
      severity: "note",
      from,
      to: from + seconds,
      tags: [tag(holder), tag(released)],
    }),
  );
  return [...faults, ...holds].sort((a, b) => a.from - b.from);
}

const isFault = (code: string): code is FaultKind => (kinds as readonly string[]).includes(code);

/** What a flag says, with its time. */
export function flagWords({ kind, from, to, tags }: DayFlag): string {
  const values = { from: clockText(from), to: clockText(to), long: spanText(to - from) };
  return kind === "holds"
    ? t("day.flag.holds", { ...values, holder: tags[0] ?? "", released: tags[1] ?? "" })
    : t(`day.flag.${kind}`, { ...values, tags: tags.length > 0 ? tags.join(", ") : "none" });
}
