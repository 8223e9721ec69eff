import type { DayRun, Seconds, SwitchedLoad } from "#engine";
import { t } from "../texts/day.ts";
import { clockText } from "./clock.ts";
import { type DayFlag, flagWords } from "./day-flags.ts";

interface DayTableProps {
  readonly load: SwitchedLoad;
  readonly run: DayRun;
  readonly flags: readonly DayFlag[];
}

/** A longer table nobody reads. */
const mostRows = 400;

interface Happening {
  readonly at: Seconds;
  readonly order: number;
  readonly who: string;
  readonly what: string;
}

/** The same day as a table, for whoever reads rather than looks. */
export function DayTable({ load, run, flags }: DayTableProps) {
  const rows = happenings(load, run, flags);
  return (
    <>
      <table className="day-table day-happenings">
        <thead>
          <tr>
            <th scope="col">{t("day.table.time")}</th>
            <th scope="col">{t("day.table.who")}</th>
            <th scope="col">{t("day.table.what")}</th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, mostRows).map(({ at, who, what }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the same may happen twice in one second
            <tr key={index}>
              <td>{clockText(at)}</td>
              <td>{who}</td>
              <td>{what}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length > mostRows ? (
        <p className="hint">{t("day.table.more", { count: rows.length - mostRows })}</p>
      ) : null}
    </>
  );
}

function happenings(load: SwitchedLoad, run: DayRun, flags: readonly DayFlag[]): readonly Happening[] {
  const people = run.people.flatMap(([from, to]): Happening[] => [
    { at: from, order: 0, who: t("day.table.people"), what: t("day.table.come") },
    { at: to, order: 0, who: t("day.table.people"), what: t("day.table.go") },
  ]);
  const states = run.devices.flatMap(({ id, stretches }) =>
    stretches.map(
      ({ from, state }): Happening => ({
        at: from,
        order: 1,
        who: load.devices.find((device) => device.id === id)?.tag ?? id,
        what: t(`day.state.${state}`),
      }),
    ),
  );
  const light = run.lit.flatMap(({ from, to, onCause, offCause }): Happening[] => [
    {
      at: from,
      order: 2,
      who: t("day.row.light"),
      what: t("day.table.on", { cause: t(`day.cause.${onCause}`) }),
    },
    ...(offCause === "start"
      ? []
      : [
          {
            at: to,
            order: 2,
            who: t("day.row.light"),
            what: t("day.table.off", { cause: t(`day.cause.${offCause}`) }),
          },
        ]),
  ]);
  const faults = flags.map(
    (flag): Happening => ({
      at: flag.from,
      order: 3,
      who: t(`severity.${flag.severity}`),
      what: flagWords(flag),
    }),
  );
  return [...people, ...states, ...light, ...faults].sort((a, b) => a.at - b.at || a.order - b.order);
}
