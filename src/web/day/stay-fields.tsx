import { Button } from "react-aria-components";
import { daySeconds, type Seconds, type Stay } from "#engine";
import { Pick } from "../fields/index.ts";
import { t } from "../texts/day.ts";
import { clockIn, clockText } from "./clock.ts";
import { shortestStay } from "./stay-edit.ts";

interface StayFieldsProps {
  readonly tag: string;
  readonly stay: Stay;
  readonly onChange: (stay: Stay | undefined) => void;
}

/** The chosen stay in figures: what the hand does in the row. */
export function StayFields({ tag, stay, onChange }: StayFieldsProps) {
  return (
    <fieldset className="plain-set day-stay-fields">
      <legend className="field-label">{t("day.stay.chosen", { tag })}</legend>
      <div className="fields">
        <ClockField
          label={t("day.stay.from")}
          time={stay.from}
          onChange={(from) => onChange({ ...stay, from: Math.min(from, stay.to - shortestStay) })}
        />
        <ClockField
          label={t("day.stay.to")}
          time={stay.to}
          // Midnight as an end is the end of the day.
          onChange={(to) =>
            onChange({ ...stay, to: Math.max(to === 0 ? daySeconds : to, stay.from + shortestStay) })
          }
        />
        <Pick
          label={t("day.stay.what")}
          value={stay.what}
          options={[
            { value: "somebody", word: t("day.stay.what.somebody") },
            { value: "only-movement", word: t("day.stay.what.only-movement") },
          ]}
          onChange={(what) => onChange({ ...stay, what })}
        />
        <Button className="button day-low" onPress={() => onChange(undefined)}>
          {t("day.stay.remove")}
        </Button>
      </div>
    </fieldset>
  );
}

interface ClockFieldProps {
  readonly label: string;
  readonly time: Seconds;
  readonly onChange: (time: Seconds) => void;
}

/** A time of the day. */
export function ClockField({ label, time, onChange }: ClockFieldProps) {
  return (
    <label className="field">
      <span className="field-label">{label}</span>
      <span className="field-box">
        <input
          type="time"
          className="field-input"
          value={time >= daySeconds ? "00:00" : clockText(time)}
          onChange={(event) => {
            const typed = clockIn(event.target.value);
            if (typed !== undefined) onChange(typed);
          }}
        />
      </span>
    </label>
  );
}
