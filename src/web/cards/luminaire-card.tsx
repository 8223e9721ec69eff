import { useId } from "react";
import type { Luminaire, LuminaireMounting } from "#engine";
import type { OpenJob } from "../contract.ts";
import { AngleField, Choice, FigureField, LengthField, More, Pick, TextBox, Tick } from "../fields/index.ts";
import { setStep } from "../plan/edit/steps.ts";
import { t } from "../texts/index.ts";
import { PlaceFields } from "./place-fields.tsx";

const mountings: readonly LuminaireMounting[] = ["flush", "surface", "pendant"];
/** More is a mistake of the unit: watts, not milliwatts. [W] */
const mostPower = 5000;
const mostDrivers = 1000;

/** Undefined takes a field away: not known. */
type Fields = { readonly [Name in keyof Luminaire]?: Luminaire[Name] | undefined };
type Set = (fields: Fields) => void;

const setOn =
  (job: OpenJob, records: readonly Luminaire[]): Set =>
  (fields) =>
    job.edit(
      "plan.edit.change",
      records.map(({ id }) => setStep("luminaires", id, fields as Partial<Luminaire>)),
    );

/** One luminaire: how it hangs, and what the wiring must know of it. */
export function LuminaireCard({ job, record }: { readonly job: OpenJob; readonly record: Luminaire }) {
  const set = setOn(job, [record]);
  return (
    <div className="stack">
      <Choice
        label={t("card.luminaire.mounting")}
        value={record.mounting}
        options={mountings.map((mounting) => ({ value: mounting, word: t(`luminaire.${mounting}`) }))}
        onChange={(mounting) => set({ mounting })}
      />
      <LengthField
        label={t("card.luminaire.height")}
        value={record.height}
        least={0.5}
        hint={record.mounting === "pendant" ? t("card.luminaire.pendant") : undefined}
        onChange={(height) => set({ height })}
      />
      <WiringFields job={job} records={[record]} set={set} />
      <Tick on={record.hot} onChange={(hot) => set({ hot })}>
        {t("card.luminaire.hot")}
      </Tick>
      <More>
        <div className="stack">
          <TextBox label={t("card.name")} value={record.name} onChange={(name) => set({ name })} />
          <div className="fields">
            <LengthField
              label={t("card.length")}
              value={record.length}
              least={0.02}
              onChange={(length) => set({ length })}
            />
            <LengthField
              label={t("card.width")}
              value={record.width}
              least={0.02}
              onChange={(width) => set({ width })}
            />
          </div>
          <AngleField label={t("card.turn")} value={record.turn} onChange={(turn) => set({ turn })} />
          <PlaceFields at={record.at} onChange={(at) => set({ at })} />
        </div>
      </More>
    </div>
  );
}

/** Several luminaires at once: what is typed holds for all of them, in one step of undo. */
export function LuminairesCard({
  job,
  records,
}: {
  readonly job: OpenJob;
  readonly records: readonly Luminaire[];
}) {
  const set = setOn(job, records);
  return (
    <div className="stack">
      <p className="hint">{t("card.luminaires.hint", { count: records.length })}</p>
      <WiringFields job={job} records={records} set={set} />
      <div className="fields">
        <Pick
          label={t("card.luminaire.mounting")}
          value={same(records, "mounting") ?? "different"}
          options={[
            ...(same(records, "mounting")
              ? []
              : [{ value: "different" as const, word: t("card.luminaires.different") }]),
            ...mountings.map((mounting) => ({ value: mounting, word: t(`luminaire.${mounting}`) })),
          ]}
          onChange={(mounting) => {
            if (mounting !== "different") set({ mounting });
          }}
        />
        <LengthField
          label={t("card.luminaire.height")}
          value={same(records, "height")}
          placeholder={placeholder(records, "height")}
          least={0.5}
          onChange={(height) => set({ height })}
        />
      </div>
    </div>
  );
}

/** Type, power, drivers and circuit; empty where nobody knows. */
function WiringFields({
  job,
  records,
  set,
}: {
  readonly job: OpenJob;
  readonly records: readonly Luminaire[];
  readonly set: Set;
}) {
  const list = useId();
  const names = [
    ...new Set([
      ...job.kept.circuits.map(({ name }) => name),
      ...job.site.luminaires.flatMap(({ circuit }) => circuit ?? []),
    ]),
  ].filter((name) => name !== "");
  return (
    <div className="fields">
      <TextBox
        label={t("card.luminaire.type")}
        value={same(records, "type") ?? ""}
        placeholder={placeholder(records, "type")}
        onChange={(type) => set({ type: type === "" ? undefined : type })}
      />
      <FigureField
        label={t("card.luminaire.power")}
        value={same(records, "power")}
        placeholder={placeholder(records, "power")}
        unit="W"
        least={0}
        most={mostPower}
        onChange={(power) => set({ power })}
        onClear={() => set({ power: undefined })}
      />
      <FigureField
        label={t("card.luminaire.drivers")}
        value={same(records, "drivers")}
        placeholder={placeholder(records, "drivers")}
        whole
        least={0}
        most={mostDrivers}
        onChange={(drivers) => set({ drivers })}
        onClear={() => set({ drivers: undefined })}
      />
      <TextBox
        label={t("card.luminaire.circuit")}
        value={same(records, "circuit") ?? ""}
        placeholder={placeholder(records, "circuit")}
        suggestions={list}
        onChange={(circuit) => set({ circuit: circuit === "" ? undefined : circuit })}
      />
      <datalist id={list}>
        {names.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
    </div>
  );
}

/** The value that all have; undefined where they differ or none has one. */
function same<K extends keyof Luminaire>(records: readonly Luminaire[], key: K): Luminaire[K] | undefined {
  const value = records[0]?.[key];
  return records.every((record) => record[key] === value) ? value : undefined;
}

const placeholder = (records: readonly Luminaire[], key: keyof Luminaire): string =>
  t(
    records.some((record) => record[key] !== records[0]?.[key])
      ? "card.luminaires.different"
      : "fields.unknown",
  );
