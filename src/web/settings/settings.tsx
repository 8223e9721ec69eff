import { Button } from "react-aria-components";
import { planningDefaults } from "#engine";
import type { JobDetails, OpenJob, SettingsProps } from "../contract.ts";
import { Choice, FigureField, LengthField, More, Pick, TextBox, Tick } from "../fields/index.ts";
import { areaText, lengthText, numberText, percentText, type Units } from "../texts/index.ts";
import { languageNames, languages, spokenLanguage } from "../texts/language.ts";
import { t } from "../texts/settings.ts";
import {
  numberAt,
  type PlanningNumber,
  planningGroups,
  planningNumbers,
  usualNumber,
  withNumber,
} from "./planning-numbers.ts";
import { setPreferences, usePreferences, useUnits } from "./preferences.ts";
import "./settings.css";

/** How this browser shows things; and, with a job open, its title block and its planning numbers. */
export function Settings({ job, onClose }: SettingsProps) {
  return (
    <div className="settings stack">
      <div className="row row-apart">
        <h2 className="settings-title">{t("settings.title")}</h2>
        <Button className="button button-quiet" onPress={onClose}>
          {t("settings.close")}
        </Button>
      </div>
      <Display />
      {job === undefined ? null : (
        <>
          <Details job={job} />
          <Planning job={job} />
        </>
      )}
    </div>
  );
}

function Display() {
  const { units, theme, contrast, language } = usePreferences();
  return (
    <section className="stack">
      <Pick
        label={t("settings.language")}
        value={language}
        onChange={(next) => {
          setPreferences({ language: next });
          // Sentences are looked up once a page: a new language needs a new one. The job is kept at every step.
          location.reload();
        }}
        options={[
          { value: "browser", word: t("settings.language.browser") },
          ...languages.map((value) => ({ value, word: languageNames[value] })),
        ]}
      />
      {spokenLanguage() === "en" ? null : <p className="hint">{t("settings.language.still")}</p>}
      <Choice
        label={t("settings.units")}
        value={units}
        onChange={(next) => setPreferences({ units: next })}
        options={(["metric", "imperial"] as const).map((value) => ({
          value,
          word: t(`settings.units.${value}`),
        }))}
      />
      <Choice
        label={t("settings.theme")}
        value={theme}
        onChange={(next) => setPreferences({ theme: next })}
        options={(["system", "light", "dark"] as const).map((value) => ({
          value,
          word: t(`settings.theme.${value}`),
        }))}
      />
      <Tick on={contrast === "more"} onChange={(on) => setPreferences({ contrast: on ? "more" : "normal" })}>
        {t("settings.contrast")}
      </Tick>
    </section>
  );
}

const lines = [
  "client",
  "site",
  "drawnBy",
  "checkedBy",
  "date",
  "revision",
  "currency",
  "region",
  "call",
] as const satisfies readonly (keyof JobDetails)[];

/** What the title block of every sheet says. */
function Details({ job }: { readonly job: OpenJob }) {
  return (
    <section className="stack" aria-labelledby="settings-details">
      <h3 id="settings-details" className="settings-head">
        {t("settings.details")}
      </h3>
      <div className="fields settings-wide">
        <TextBox
          label={t("settings.name")}
          value={job.site.name}
          onChange={job.setName}
          disabled={job.readOnly}
          wide
        />
        {lines.map((line) => (
          <TextBox
            key={line}
            label={t(`settings.details.${line}`)}
            value={job.details[line]}
            disabled={job.readOnly}
            onChange={(text) => job.setDetails({ [line]: text })}
          />
        ))}
      </div>
    </section>
  );
}

/** The numbers that every calculation used; those that were changed say so and can be set back. */
function Planning({ job }: { readonly job: OpenJob }) {
  const { defaults } = job.site;
  const changed = planningGroups
    .flatMap((group) => planningNumbers[group])
    .filter(({ path }) => numberAt(defaults, path) !== usualNumber(path));
  return (
    <section className="stack" aria-labelledby="settings-planning">
      <h3 id="settings-planning" className="settings-head">
        {t("settings.planning")}
      </h3>
      <p className="hint">{t("settings.planning.what", { count: changed.length })}</p>
      {planningGroups.map((group) => (
        <More key={group} word={t(`settings.planning.${group}`)}>
          <div className="fields settings-wide">
            {planningNumbers[group].map((number) => (
              <NumberField key={number.word} number={number} job={job} />
            ))}
          </div>
        </More>
      ))}
      {changed.length > 0 && !job.readOnly ? (
        <div>
          <Button className="button" onPress={() => job.setDefaults(planningDefaults)}>
            {t("settings.reset-all")}
          </Button>
        </div>
      ) : null}
    </section>
  );
}

function NumberField({ number, job }: { readonly number: PlanningNumber; readonly job: OpenJob }) {
  const units = useUnits();
  const { path, word, unit, least, most } = number;
  const value = numberAt(job.site.defaults, path);
  const usual = usualNumber(path);
  const set = (next: number) => job.setDefaults(withNumber(job.site.defaults, path, next));
  const hint = value === usual ? undefined : t("settings.usual", { usual: shown(usual, number, units) });
  const common = { label: t(word), hint, disabled: job.readOnly };
  return (
    <div className="settings-number">
      {unit === "m" ? (
        <LengthField {...common} value={value} least={least} most={most} onChange={set} />
      ) : unit === "%" ? (
        <FigureField
          {...common}
          value={Math.round(value * 1000) / 10}
          unit="%"
          least={least * 100}
          most={most * 100}
          onChange={(percent) => set(percent / 100)}
        />
      ) : (
        <FigureField {...common} value={value} unit={unit} least={least} most={most} onChange={set} />
      )}
      {value === usual || job.readOnly ? null : (
        <Button className="button button-quiet settings-reset" onPress={() => set(usual)}>
          {t("settings.reset")}
          <span className="unseen"> {t(word)}</span>
        </Button>
      )}
    </div>
  );
}

function shown(value: number, { unit }: PlanningNumber, units: Units): string {
  switch (unit) {
    case "m":
      return lengthText(value, units);
    case "m²":
      return areaText(value, units);
    case "%":
      return percentText(value);
    case "s":
    case "m/s":
      return `${numberText(value)} ${unit}`;
  }
}
