import { Button } from "react-aria-components";
import { type DayDelays, type DelayResult, daySeconds, type Seconds, type Watts } from "#engine";
import { Problems, Running } from "../fields/index.ts";
import { t } from "../texts/day.ts";
import { delayText, numberText, percentText } from "../texts/index.ts";
import type { Answered } from "./use-day.ts";

interface DelaysTableProps {
  readonly delays: Answered<Pick<DayDelays, "results" | "recommended">> & { readonly stop: () => void };
  /** Of the load; undefined where it is not known. */
  readonly power: Watts | undefined;
  /** As set on the detectors. */
  readonly set: readonly Seconds[];
  /** On show. */
  readonly tried: Seconds | undefined;
  /** Hours of a day that the closed form speaks of. */
  readonly hours: number;
  readonly onTry: (delay: Seconds) => void;
}

/** Every delay with what it costs and how often it leaves somebody in the dark; by simulation, and in closed form where there is one. */
export function DelaysTable({ delays, power, set, tried, hours, onTry }: DelaysTableProps) {
  const { value, busy, trouble, stop } = delays;
  if (trouble !== undefined) return <p className="hint">{t("day.trouble", { sentence: trouble })}</p>;
  if (!value)
    return busy ? (
      <Running doing={t("day.delays.running")} share={undefined} onStop={stop} />
    ) : (
      <p className="hint">{t("day.delays.stopped")}</p>
    );
  const closed = value.results.some(({ closedForm }) => closedForm);
  return (
    <div className="stack">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table that is wider than a phone is scrolled by keys as well */}
      <section className="day-scroll" tabIndex={0} aria-label={t("day.delays")}>
        <table className={busy ? "day-table day-stale" : "day-table"}>
          <thead>
            <tr>
              <th scope="col">{t("day.delays.delay")}</th>
              <th scope="col">{t("day.delays.lit")}</th>
              <th scope="col">{t("day.delays.dark")}</th>
              <th scope="col">{t("day.delays.cycles")}</th>
              {power === undefined ? null : <th scope="col">{t("day.delays.energy")}</th>}
              <th scope="col">{t("day.delays.spared")}</th>
            </tr>
          </thead>
          <tbody>
            {value.results.map((result) => (
              <DelayRow
                key={result.delay}
                result={result}
                power={power}
                hours={hours}
                marks={[
                  ...(set.includes(result.delay) ? [t("day.delays.set")] : []),
                  ...(value.recommended.delay === result.delay ? [t("day.delays.best")] : []),
                ]}
                tried={tried === result.delay}
                onTry={() => onTry(result.delay)}
              />
            ))}
          </tbody>
        </table>
      </section>
      <p className="hint">{t("day.delays.how")}</p>
      {closed ? <p className="hint">{t("day.delays.closed")}</p> : null}
      <div className="day-advice">
        <Problems of={[value.recommended.reason]} />
      </div>
    </div>
  );
}

interface DelayRowProps {
  readonly result: DelayResult;
  readonly power: Watts | undefined;
  readonly hours: number;
  readonly marks: readonly string[];
  readonly tried: boolean;
  readonly onTry: () => void;
}

function DelayRow({ result, power, hours, marks, tried, onTry }: DelayRowProps) {
  const { delay, used, saving, closedForm } = result;
  const days = used.span / daySeconds;
  const litHours = used.litHours / days;
  const year = 365 * (closedForm?.offPerHour ?? 0) * hours;
  return (
    <tr {...(tried ? { "aria-current": "true" as const } : {})}>
      <th scope="row">
        <Button
          className="button button-quiet day-try"
          aria-label={t("day.delays.try.spoken", { delay: delayText(delay) })}
          aria-pressed={tried}
          onPress={onTry}
        >
          {delayText(delay)}
        </Button>
        {marks.map((mark) => (
          <small key={mark}>{mark}</small>
        ))}
      </th>
      <td>
        {t("day.hours", { hours: numberText(Math.round(litHours * 100) / 100) })}
        {closedForm ? (
          <small>
            {t("day.hours", { hours: numberText(Math.round(closedForm.lit * hours * 100) / 100) })}
          </small>
        ) : null}
      </td>
      <td className={used.offWhileOccupied > 0 ? "day-bad" : undefined}>
        {used.offWhileOccupied > 0 ? "! " : ""}
        {numberText(Math.round((used.offWhileOccupied / days) * 10) / 10)}
      </td>
      <td>
        {numberText(Math.round(used.cyclesPerYear))}
        {closedForm ? <small>{numberText(Math.round(year))}</small> : null}
      </td>
      {power === undefined ? null : (
        <td>{t("day.energy", { energy: numberText(Math.round(used.energyPerYear * power)) })}</td>
      )}
      <td>
        {saving === undefined ? "–" : percentText(saving)}
        {closedForm ? <small>{percentText(1 - (closedForm.lit * hours) / 24)}</small> : null}
      </td>
    </tr>
  );
}
