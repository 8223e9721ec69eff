import { type SwitchedLoad, usualDayCurve } from "#engine";
import { Choice, FigureField, Tick } from "../fields/index.ts";
import { t } from "../texts/day.ts";
import type { DayDraft } from "./day-draft.ts";
import { ClockField } from "./stay-fields.tsx";

interface DayOptionsProps {
  readonly draft: DayDraft;
  readonly load: SwitchedLoad;
  readonly onChange: (draft: DayDraft) => void;
}

/** What a day assumes, each to be changed. */
export function DayOptions({ draft, load, onChange }: DayOptionsProps) {
  const { daylight } = draft;
  const looks = load.devices.some(({ parameters }) => parameters.threshold !== undefined);
  return (
    <div className="stack">
      <div className="fields fields-roomy">
        <FigureField
          label={t(draft.source.kind === "log" ? "day.bridge" : "day.still")}
          value={draft.still / 60}
          unit="min"
          least={0}
          most={240}
          hint={t(draft.source.kind === "log" ? "day.bridge.hint" : "day.still.hint")}
          onChange={(minutes) => onChange({ ...draft, still: minutes * 60 })}
        />
        <FigureField
          label={t("day.background")}
          value={Math.round((draft.background ?? load.background) * 100)}
          unit="%"
          least={0}
          most={100}
          hint={t("day.background.hint")}
          onChange={(level) => onChange({ ...draft, background: level / 100 })}
        />
      </div>
      <Tick
        on={daylight !== undefined}
        onChange={(on) => onChange({ ...draft, daylight: on ? usualDayCurve : undefined })}
      >
        {t("day.daylight")}
      </Tick>
      <p className="hint">{t(looks ? "day.daylight.hint" : "day.daylight.unseen")}</p>
      {daylight ? (
        <div className="fields">
          <ClockField
            label={t("day.daylight.rise")}
            time={daylight.rise}
            onChange={(rise) =>
              onChange({ ...draft, daylight: { ...daylight, rise: Math.min(rise, daylight.set - 3600) } })
            }
          />
          <ClockField
            label={t("day.daylight.set")}
            time={daylight.set}
            onChange={(set) =>
              onChange({ ...draft, daylight: { ...daylight, set: Math.max(set, daylight.rise + 3600) } })
            }
          />
          <FigureField
            label={t("day.daylight.highest")}
            value={daylight.highest}
            unit="lx"
            least={0}
            most={20_000}
            onChange={(highest) => onChange({ ...draft, daylight: { ...daylight, highest } })}
          />
          <FigureField
            label={t("day.lamps")}
            value={draft.lightAt}
            unit="lx"
            least={0}
            most={20_000}
            onChange={(lightAt) => onChange({ ...draft, lightAt })}
          />
        </div>
      ) : null}
      {daylight && draft.lightAt > 0 ? (
        <Choice
          label={t("day.compensation")}
          value={draft.compensation}
          options={[
            { value: "learned", word: t("day.compensation.learned") },
            { value: "none", word: t("day.compensation.none") },
          ]}
          onChange={(compensation) => onChange({ ...draft, compensation })}
        />
      ) : null}
      <ul className="hint day-assumed">
        {assumed(draft, load).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}

/** What the simulation takes for granted of this load. */
function assumed(draft: DayDraft, load: SwitchedLoad): readonly string[] {
  const lines: string[] = [];
  if (draft.source.kind !== "log") lines.push(t("day.assumed.every-day"));
  if (load.devices.some(({ role }) => role === "reports")) lines.push(t("day.assumed.slaves"));
  if (load.devices.some(({ parameters }) => parameters.mode === "semi-automatic"))
    lines.push(t("day.assumed.button"));
  if (load.devices.some(({ chosen }) => typeof chosen.impulse === "object"))
    lines.push(t("day.assumed.timer"));
  if (load.devices.some(({ parameters }) => parameters.sound)) lines.push(t("day.assumed.sound"));
  if (load.power === undefined) lines.push(t("day.assumed.power", load.luminaires));
  return lines;
}
