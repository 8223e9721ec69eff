import type { DayRun, Seconds, SwitchedLoad } from "#engine";
import { t } from "../texts/day.ts";
import { clockText } from "./clock.ts";

/** What everything does at the time on show. */
export function DayNow({
  load,
  run,
  now,
}: {
  readonly load: SwitchedLoad;
  readonly run: DayRun | undefined;
  readonly now: Seconds;
}) {
  const at = <T extends { readonly from: Seconds; readonly to: Seconds }>(
    list: readonly T[],
  ): T | undefined => list.find(({ from, to }) => from <= now && now < to);
  const lit = run && at(run.lit);
  return (
    <dl className="figures day-now">
      {load.devices.map(({ id, tag }) => {
        const state = at(run?.devices.find((device) => device.id === id)?.stretches ?? [])?.state;
        return (
          <div key={id} className="figures-row">
            <dt>{tag}</dt>
            <dd>{state ? t(`day.state.${state}.long`) : "–"}</dd>
          </div>
        );
      })}
      <div className="figures-row">
        <dt>{t("day.row.light")}</dt>
        <dd>{lit ? t("day.light.since", { time: clockText(lit.from) }) : t("day.light.off")}</dd>
      </div>
    </dl>
  );
}
