import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import { type Advice, countedEntries, english, type FoundReach, type SettingGrade, type Site } from "#engine";
import { standingEntries, stationReadings } from "#job";
import { foundLine } from "../calculate/found-line.ts";
import type { FoundAnswer } from "../calculate/found-protocol.ts";
import { isTrouble } from "../calculate/line.ts";
import type { PlannedWalk } from "../calculate/walk-protocol.ts";
import type { EditStep, OpenJob } from "../contract.ts";
import { FigureField, More } from "../fields/index.ts";
import { recordOf } from "../plan/pick.ts";
import { useUnits } from "../settings/preferences.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { areaText, dayText, lengthText, percentText, spoken, type Units } from "../texts/index.ts";
import { t } from "../texts/test.ts";
import { ambientIn, enterAmbient } from "./enter.ts";
import { localDay } from "./local-time.ts";

interface FoundSectionProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly planned: PlannedWalk;
}

/** How far the detectors really reach by what was found, and what can be done where that is too little. */
export function FoundSection({ job, store, planned }: FoundSectionProps) {
  const units = useUnits();
  const settings = usePart(store, (bench) => ({ settings: bench.settings })).settings;
  const [answer, setAnswer] = useState<FoundAnswer | undefined>();
  const { site, kept, file } = job;
  const { testEntries, swaps } = kept;
  const { detectors } = file;
  const { test } = planned;
  useEffect(() => {
    const readings = stationReadings(testEntries, test.room);
    if (readings.length === 0) return setAnswer(undefined);
    const line = foundLine();
    const sensitivity = new Map<string, SettingGrade>(
      (settings?.devices ?? []).map(({ context, settings: own }) => [context.device, own.sensitivity.value]),
    );
    // Of several readings of one height the latest stays.
    const heights = new Map(
      countedEntries(standingEntries({ testEntries, swaps, detectors })).flatMap(
        ({ step, about, outcome, value }) =>
          step === "height" && about.kind === "detector" && outcome !== "failed" && value !== undefined
            ? [[about.id, value] as const]
            : [],
      ),
    );
    const ambient = ambientIn(testEntries, test.room);
    void line
      .ask({
        site,
        test,
        readings,
        sensitivity,
        heights,
        ...(ambient === undefined ? {} : { ambient }),
      })
      .then((told) => {
        if (told && !isTrouble(told)) setAnswer(told);
      });
    return line.stop;
  }, [site, testEntries, swaps, detectors, test, settings]);
  if (!answer || answer.reach.length === 0) return null;
  const tag = (id: string): string => recordOf(site, "detectors", id)?.tag || id;
  const take = (advice: Advice): void => {
    const steps = stepsOf(site, advice);
    if (steps.length > 0) job.edit("test.edit.advice", steps);
    else
      job.keep("test.edit.point", [
        {
          do: "put",
          kind: "openPoints",
          record: {
            id: job.newId("openPoints"),
            text: remedyWords(site, advice, units),
            room: test.room,
            photos: [],
          },
        },
      ]);
    store.set({ notice: t("test.advice.taken", { time: dayText(localDay(new Date())) }) });
  };
  return (
    <section aria-label={t("test.found")}>
      <h3 className="test-stage">{t("test.found")}</h3>
      <FigureField
        label={t("test.ambient")}
        value={ambientIn(testEntries, test.room)}
        unit="°C"
        least={-30}
        most={60}
        hint={t("test.ambient.hint")}
        disabled={job.readOnly}
        onChange={(value) => enterAmbient(job, test.room, value)}
      />
      <ul className="test-plain">
        {answer.reach.map((one) => (
          <li key={`${one.device} ${one.kind}`}>
            {t(`test.found.${one.kind}`, { device: tag(one.device) })} {reachWords(one)}
          </li>
        ))}
      </ul>
      {answer.advice.length > 0 ? (
        <>
          <h3 className="test-stage">{t("test.advice")}</h3>
          {answer.advice.slice(0, 4).map((advice) => (
            <div key={JSON.stringify(advice.remedy)} className="test-advice">
              <p>
                {remedyWords(site, advice, units)}
                {advice.about === "unseen" ? (
                  <span className="hint test-of">
                    {t("test.advice.leaves", {
                      before: areaText(advice.before, units),
                      after: areaText(advice.after, units),
                    })}
                  </span>
                ) : null}
              </p>
              {job.readOnly ? null : (
                <Button className="button" onPress={() => take(advice)}>
                  {t(stepsOf(site, advice).length > 0 ? "test.advice.take" : "test.advice.record")}
                </Button>
              )}
              {advice.evidence.length + advice.assumptions.length > 0 ? (
                <More word={t("test.advice.why")}>
                  <ul className="test-plain">
                    {[
                      ...advice.evidence.flatMap(({ what, assumptions }) => [what, ...assumptions]),
                      ...advice.assumptions,
                    ].map((one) => (
                      <li key={english(one)}>{spoken(one)}</li>
                    ))}
                  </ul>
                </More>
              ) : null}
            </div>
          ))}
        </>
      ) : null}
    </section>
  );
}

/** How far it reaches, and how sure that is; seen on one side only and too seldom, nothing is said of it. */
function reachWords({ factor, interval, enough, readings }: FoundReach): string {
  const few = enough ? [] : [t("test.found.few", { count: readings })];
  const [low, high] = interval.map(percentText) as [string, string];
  if (factor === undefined) return enough ? t("test.found.one-sided", { low, high }) : few.join(" ");
  return [t("test.found.factor", { factor: percentText(factor), low, high }), ...few].join(" ");
}

/** What to do, as a sentence. */
function remedyWords(site: Site, { remedy }: Advice, units: Units): string {
  const tag = (id: string): string => recordOf(site, "detectors", id)?.tag || id;
  switch (remedy.kind) {
    case "hang-as-planned":
    case "height":
      return t(`test.advice.${remedy.kind}`, {
        device: tag(remedy.device),
        height: lengthText(remedy.height, units),
      });
    case "move":
      return t("test.advice.move", { device: tag(remedy.device), by: lengthText(remedy.by, units) });
    case "add":
      return t("test.advice.add", { device: tag(remedy.like) });
    default:
      return t(`test.advice.${remedy.kind}`, { device: tag(remedy.device) });
  }
}

/** What of it the plan can take at once; the rest is work on site, and becomes an open point. */
function stepsOf(site: Site, { remedy }: Advice): readonly EditStep[] {
  if (
    remedy.kind !== "move" &&
    remedy.kind !== "mask" &&
    remedy.kind !== "unmask" &&
    remedy.kind !== "height"
  )
    return [];
  const record = recordOf(site, "detectors", remedy.device);
  if (!record) return [];
  const fields =
    remedy.kind === "move"
      ? { at: remedy.to }
      : remedy.kind === "height"
        ? { height: remedy.height }
        : remedy.kind === "mask"
          ? { masks: [...record.masks, ...remedy.masks] }
          : { masks: record.masks.filter((_, i) => i !== remedy.mask) };
  return [{ do: "set", kind: "detectors", id: record.id, fields }];
}
