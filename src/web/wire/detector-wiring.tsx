import { Button } from "react-aria-components";
import type { Detector, GroupChoice } from "#engine";
import type { OpenJob } from "../contract.ts";
import { Choice, More } from "../fields/index.ts";
import { setStep } from "../plan/edit/steps.ts";
import { spoken } from "../texts/index.ts";
import { t } from "../texts/wire.ts";
import { Amount, Known, Maybe } from "./amount.tsx";
import { circuitOf, referenceTo } from "./assign.ts";

type Fields = { readonly [Name in keyof Detector]?: Detector[Name] | undefined };

/** How detectors are fed, and what they switch. Luminaires that are selected with them are offered. */
export function DetectorsWiring({
  job,
  records,
  luminaires,
  groups,
}: {
  readonly job: OpenJob;
  readonly records: readonly Detector[];
  /** Ids of the luminaires that are selected as well. */
  readonly luminaires: readonly string[];
  /** How switched lines are best switched. */
  readonly groups: readonly GroupChoice[];
}) {
  const set = (fields: Fields): void => {
    if (!job.readOnly)
      job.edit(
        "wire.edit.detector",
        records.map(({ id }) => setStep("detectors", id, fields as Partial<Detector>)),
      );
  };
  const [first] = records;
  if (!first) return null;
  const { circuits } = job.kept;
  const signals = records.every(({ output }) => output === "signals");
  const chosen = records.every((one) => same(one.luminaires, first.luminaires))
    ? first.luminaires
    : undefined;
  return (
    <section className="stack" aria-label={t("wire.detector", { count: records.length })}>
      <Maybe
        label={t("wire.detector.circuit", { count: records.length })}
        value={circuitOf(job, first)}
        none={t("wire.detector.circuit-of-load")}
        options={circuits.map(({ id, name }) => ({ value: id, word: name || id }))}
        onChange={(id) => {
          const circuit = circuits.find((one) => one.id === id);
          set({ circuit: circuit && referenceTo(circuits, circuit) });
        }}
      />
      <Choice
        label={t("wire.detector.output")}
        value={signals ? "signals" : "switches"}
        options={(["switches", "signals"] as const).map((value) => ({
          value,
          word: t(`wire.output.${value}`),
        }))}
        onChange={(output) => set({ output: output === "signals" ? output : undefined })}
      />
      {signals ? null : (
        <>
          <p>
            {chosen === undefined
              ? t("wire.detector.by-rooms")
              : t("wire.detector.chosen", { count: chosen.length })}
          </p>
          {job.readOnly ? null : (
            <div className="row">
              {luminaires.length > 0 ? (
                <Button className="button button-first" onPress={() => set({ luminaires })}>
                  {t("wire.detector.take", { count: luminaires.length })}
                </Button>
              ) : null}
              {chosen === undefined ? null : (
                <Button className="button" onPress={() => set({ luminaires: undefined })}>
                  {t("wire.detector.take-rooms")}
                </Button>
              )}
            </div>
          )}
          <BestSwitched job={job} group={groups.find(({ detectors }) => detectors.includes(first.id))} />
          {luminaires.length === 0 ? <p className="hint">{t("wire.detector.hint")}</p> : null}
        </>
      )}
      <Mounted job={job} records={records} set={set} />
      {signals ? null : (
        <More word={t("wire.detector.more")}>
          <AtOutput records={records} set={set} />
        </More>
      )}
    </section>
  );
}

/** What hangs at the output beside luminaires. */
function AtOutput({
  records,
  set,
}: {
  readonly records: readonly Detector[];
  readonly set: (fields: Fields) => void;
}) {
  const common = <K extends keyof Detector>(key: K): Detector[K] | undefined =>
    records.every((one) => JSON.stringify(one[key]) === JSON.stringify(records[0]?.[key]))
      ? records[0]?.[key]
      : undefined;
  const suppressors = common("suppressors") ?? [];
  const across = (where: "contact" | "load"): number | undefined => {
    const sum = suppressors
      .filter((one) => one.across === where)
      .reduce((all, { capacitance }) => all + capacitance, 0);
    return sum === 0 ? undefined : sum;
  };
  const setAcross = (where: "contact" | "load", capacitance: number | undefined): void => {
    const others = suppressors.filter((one) => one.across !== where);
    const next = capacitance === undefined ? others : [...others, { across: where, capacitance }];
    set({ suppressors: next.length === 0 ? undefined : next });
  };
  return (
    <div className="fields">
      {(["contact", "load"] as const).map((where) => (
        <Amount
          key={where}
          label={t(`wire.detector.suppressor.${where}`)}
          value={across(where)}
          per={1e-6}
          unit="µF"
          least={0.001}
          most={1000}
          placeholder={t("wire.detector.suppressor.none")}
          onChange={(capacitance) => setAcross(where, capacitance)}
        />
      ))}
      <Known
        label={t("wire.detector.base-load")}
        value={common("baseLoad")}
        onChange={(baseLoad) => set({ baseLoad })}
      />
      <Known
        label={t("wire.detector.override")}
        value={common("override")}
        onChange={(override) => set({ override })}
      />
    </div>
  );
}

const fixings = ["box", "surface", "ceiling-panel"] as const;

/** How they are fixed, and what the room asks of that. */
function Mounted({
  job,
  records,
  set,
}: {
  readonly job: OpenJob;
  readonly records: readonly Detector[];
  readonly set: (fields: Fields) => void;
}) {
  const common = <K extends keyof Detector>(key: K): Detector[K] | undefined =>
    records.every((one) => one[key] === records[0]?.[key]) ? records[0]?.[key] : undefined;
  const rooms = job.site.rooms.filter(({ id }) => records.some(({ room }) => room === id));
  return (
    <>
      <Maybe
        label={t("wire.detector.fixing")}
        value={common("fixing")}
        none={t("wire.detector.fixing.of-sheet")}
        options={fixings.map((value) => ({ value, word: t(`wire.detector.fixing.${value}`) }))}
        onChange={(fixing) => set({ fixing })}
      />
      {rooms.some(({ fireRatedCeiling }) => fireRatedCeiling) ? (
        <Known
          label={t("wire.detector.cover")}
          value={common("testedCover")}
          onChange={(testedCover) => set({ testedCover })}
        />
      ) : null}
      {rooms.some(({ wet }) => wet) ? (
        <Maybe
          label={t("wire.detector.zone")}
          value={common("wetZone")}
          none={t("wire.detector.zone.by-height")}
          options={(["0", "1", "2", "outside"] as const).map((value) => ({
            value,
            word: t(`wire.detector.zone.${value}`),
          }))}
          onChange={(wetZone) => set({ wetZone })}
        />
      ) : null}
    </>
  );
}

/** What is best for the line that a detector switches, why, and, where that is to share its luminaires, the button that does it. */
function BestSwitched({ job, group }: { readonly job: OpenJob; readonly group: GroupChoice | undefined }) {
  if (!group) return null;
  const tag = (id: string): string => job.site.detectors.find((one) => one.id === id)?.tag || id;
  const share = (): void =>
    job.edit(
      "wire.edit.share",
      group.shares.map(({ detector, luminaires }) => setStep("detectors", detector, { luminaires })),
    );
  return (
    <div className="stack">
      <p>
        {t(`wire.group.${group.choice}`)} <span className="hint">{spoken(group.reason)}.</span>
      </p>
      {group.shares.length > 0 && !job.readOnly ? (
        <Button className="button button-first" onPress={share}>
          {t("wire.group.share", {
            shares: group.shares
              .map(({ detector, luminaires }) => `${tag(detector)}: ${luminaires.length}`)
              .join(", "),
          })}
        </Button>
      ) : null}
    </div>
  );
}

const same = (a: readonly string[] | undefined, b: readonly string[] | undefined): boolean =>
  a?.length === b?.length && (a ?? []).every((id) => b?.includes(id));
