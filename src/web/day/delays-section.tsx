import { Button } from "react-aria-components";
import type { Detector, Seconds, SwitchedLoad } from "#engine";
import type { JobSettings } from "#job";
import type { OpenJob } from "../contract.ts";
import { FigureField } from "../fields/index.ts";
import { setStep } from "../plan/edit/steps.ts";
import { t } from "../texts/day.ts";
import { delayText, spoken } from "../texts/index.ts";
import type { DayDraft } from "./day-draft.ts";
import { DelaysTable } from "./delays-table.tsx";
import { type SetLoad, setDelays, switching } from "./set-loads.ts";
import type { useDelays } from "./use-day.ts";

interface DelaysSectionProps {
  readonly job: OpenJob;
  readonly set: SetLoad;
  readonly draft: DayDraft;
  readonly delays: ReturnType<typeof useDelays>;
  /** Another delay is put on show; undefined: the one that is set. */
  readonly onTried: (delay: Seconds | undefined) => void;
}

/** What another delay would change, and the deed that sets it. */
export function DelaysSection({ job, set, draft, delays, onTried }: DelaysSectionProps) {
  const { load, settings } = set;
  const { tried, source } = draft;
  const [first] = setDelays(load);
  return (
    <section className="stack day-part" aria-label={t("day.delays")}>
      <h3 className="day-head">{t("day.delays")}</h3>
      <div className="fields">
        <FigureField
          label={t("day.delay.tried")}
          value={Math.round(((tried ?? first ?? 600) / 60) * 100) / 100}
          unit="min"
          least={0.1}
          most={240}
          wide
          hint={setWords(load, settings)}
          onChange={(minutes) => onTried(minutes * 60)}
        />
      </div>
      <UseDelay
        job={job}
        set={set}
        delay={tried}
        recommended={bestOf(delays.value)}
        onUsed={() => onTried(undefined)}
      />
      <DelaysTable
        delays={delays}
        power={load.power}
        set={setDelays(load)}
        tried={tried ?? first}
        hours={source.kind === "turns" ? (source.hours.to - source.hours.from) / 3600 : 24}
        onTry={onTried}
      />
    </section>
  );
}

interface Best {
  readonly delay: Seconds;
  readonly saving?: number;
}

/** The recommended delay with what it spares; undefined where none fits. */
function bestOf(known: DelaysSectionProps["delays"]["value"]): Best | undefined {
  const delay = known?.recommended.delay;
  if (delay === undefined) return undefined;
  const saving = known?.results.find((result) => result.delay === delay)?.saving;
  return { delay, ...(saving === undefined ? {} : { saving }) };
}

/** What is set now, and why. */
function setWords(load: SwitchedLoad, settings: SetLoad["settings"]): string {
  const first = switching(load)[0];
  const setting = first && settings.get(first.id)?.offDelay;
  const delays = setDelays(load).map(delayText).join(", ");
  return setting?.kind === "derived"
    ? t("day.delay.derived", { delays, reason: spoken(setting.reason) })
    : t("day.delay.chosen", { delays });
}

/** One deed: the delay on show, or the recommended one, is written into the settings. */
function UseDelay({
  job,
  set: { load },
  delay,
  recommended,
  onUsed,
}: {
  readonly job: OpenJob;
  readonly set: SetLoad;
  readonly delay: Seconds | undefined;
  readonly recommended: Best | undefined;
  readonly onUsed: () => void;
}) {
  const wanted = delay ?? recommended?.delay;
  const already = wanted === undefined || setDelays(load).every((one) => one === wanted);
  if (job.readOnly || already) return null;
  const use = (): void => {
    // What the simulation recommends is no person's choice: it stays derived, with the simulation as its reason.
    if (recommended !== undefined && wanted === recommended.delay)
      job.edit(
        "day.use-delay",
        switching(load).map(({ id }) => {
          const { offDelay: _, ...others } =
            job.file.detectors.find((one) => one.id === id)?.settings ?? ({} as JobSettings);
          const settings = Object.keys(others).length === 0 ? undefined : others;
          return setStep("detectors", id, { settings, recommended } as Partial<Detector>);
        }),
      );
    else
      job.choose(
        "day.use-delay",
        Object.fromEntries(switching(load).map(({ id }) => [id, { offDelay: wanted }])),
      );
    onUsed();
  };
  return (
    <Button className="button button-first" onPress={use}>
      {t("day.delay.use", {
        delay: delayText(wanted),
        tags: switching(load)
          .map(({ tag }) => tag)
          .slice(0, 4)
          .join(", "),
      })}
    </Button>
  );
}
