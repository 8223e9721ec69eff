import { useState } from "react";
import type { Luminaire } from "#engine";
import type { OpenJob } from "../contract.ts";
import { More, Pick, Tick } from "../fields/index.ts";
import { setStep } from "../plan/edit/steps.ts";
import { t } from "../texts/wire.ts";
import { Amount, Maybe, without } from "./amount.tsx";
import { assignSteps, circuitOf } from "./assign.ts";
import { EmergencyFields } from "./emergency-fields.tsx";

type Fields = { readonly [Name in keyof Luminaire]?: Luminaire[Name] | undefined };
type Inrush = NonNullable<Luminaire["inrush"]>;

const none = "";
const different = "different";
const fresh = "new circuit";
const loadKinds = ["led", "fluorescent", "incandescent", "resistive", "inductive"] as const;
const classes = ["I", "II", "III"] as const;
const breakers = ["B", "C", "D"] as const;

/** What the wiring must know of luminaires: all of them at once, and, if one wishes, of all that are alike. */
export function LuminairesWiring({
  job,
  records,
}: {
  readonly job: OpenJob;
  readonly records: readonly Luminaire[];
}) {
  const [alike, setAlike] = useState(false);
  const twins = alikeIn(job, records);
  const meant = alike ? [...records, ...twins] : records;
  const disabled = job.readOnly;
  const set = (fields: Fields): void =>
    job.edit(
      "wire.edit.luminaires",
      meant.map(({ id }) => setStep("luminaires", id, fields as Partial<Luminaire>)),
    );
  /** A figure that is a part of another: what the others of it are is left as it was, luminaire by luminaire. */
  const setInrush = (part: { readonly [Name in keyof Inrush]?: Inrush[Name] | undefined }): void =>
    job.edit(
      "wire.edit.luminaires",
      meant.map(({ id, inrush }) => {
        const next = without({ ...inrush, ...part });
        const whole = next.peak !== undefined && next.width !== undefined;
        return setStep("luminaires", id, { inrush: whole ? (next as Inrush) : undefined });
      }),
    );
  const inrush = records[0]?.inrush;
  const declared = records[0]?.driversPerBreaker?.[0];
  const field = <K extends keyof Luminaire>(key: K) => ({
    value: same(records, key),
    ...(differ(records, key) ? { placeholder: t("card.luminaires.different") } : {}),
    disabled,
  });
  return (
    <section className="stack" aria-label={t("wire.luminaires", { count: records.length })}>
      <CircuitPick job={job} records={records} />
      {twins.length > 0 ? (
        <Tick on={alike} onChange={setAlike} disabled={disabled}>
          {t("wire.luminaires.alike", { count: twins.length })}
        </Tick>
      ) : null}
      <div className="fields">
        <Amount
          {...field("power")}
          label={t("card.luminaire.power")}
          unit="W"
          least={0}
          most={5000}
          onChange={(power) => set({ power })}
        />
        <Amount
          {...field("drivers")}
          label={t("card.luminaire.drivers")}
          whole
          least={0}
          most={1000}
          onChange={(drivers) => set({ drivers })}
        />
      </div>
      <More word={t("wire.luminaires.more")}>
        <div className="stack">
          <div className="fields">
            <Maybe
              label={t("wire.luminaires.load")}
              value={same(records, "load")}
              options={loadKinds.map((value) => ({ value, word: t(`wire.load.${value}`) }))}
              onChange={(load) => set({ load })}
            />
            <Amount
              {...field("powerFactor")}
              label={t("wire.luminaires.power-factor")}
              least={0.1}
              most={1}
              onChange={(powerFactor) => set({ powerFactor })}
            />
            <Amount
              label={t("wire.luminaires.leakage")}
              {...field("leakage")}
              per={0.001}
              unit="mA"
              least={0}
              most={1000}
              onChange={(leakage) => set({ leakage })}
            />
            <Maybe
              label={t("wire.luminaires.class")}
              value={same(records, "protectionClass")}
              options={classes.map((value) => ({ value, word: value }))}
              onChange={(protectionClass) => set({ protectionClass })}
            />
          </div>
          <EmergencyFields job={job} records={records} set={(emergency) => set({ emergency })} />
          <p className="hint">{t("wire.luminaires.of-driver")}</p>
          <InrushFields inrush={inrush} disabled={disabled} set={setInrush} />
          <div className="fields">
            <Amount
              {...field("inputCapacitance")}
              label={t("wire.luminaires.capacitance")}
              per={1e-6}
              unit="µF"
              least={0}
              most={100_000}
              onChange={(inputCapacitance) => set({ inputCapacitance })}
            />
            <Amount
              label={t("wire.luminaires.declared")}
              value={declared?.count}
              whole
              least={1}
              most={100_000}
              disabled={disabled}
              onChange={(count) =>
                set({
                  driversPerBreaker:
                    count === undefined
                      ? undefined
                      : [{ type: declared?.type ?? "B", rating: declared?.rating ?? 16, count }],
                })
              }
            />
            {declared ? (
              <>
                <Pick
                  label={t("wire.luminaires.declared-on")}
                  value={declared.type}
                  options={breakers.map((value) => ({ value, word: value }))}
                  onChange={(type) => set({ driversPerBreaker: [{ ...declared, type }] })}
                />
                <Amount
                  label={t("wire.luminaires.declared-rating")}
                  value={declared.rating}
                  unit="A"
                  least={1}
                  most={1000}
                  disabled={disabled}
                  onChange={(rating) => {
                    if (rating !== undefined) set({ driversPerBreaker: [{ ...declared, rating }] });
                  }}
                />
              </>
            ) : null}
          </div>
        </div>
      </More>
    </section>
  );
}

/** Peak and width make sense together only: what is typed first waits for the other. */
function InrushFields({
  inrush,
  disabled,
  set,
}: {
  readonly inrush: Inrush | undefined;
  readonly disabled: boolean;
  readonly set: (part: { readonly [Name in keyof Inrush]?: Inrush[Name] | undefined }) => void;
}) {
  const [waiting, setWaiting] = useState<{ peak?: number | undefined; width?: number | undefined }>({});
  const take = (part: { peak?: number | undefined; width?: number | undefined }): void => {
    const next = { peak: inrush?.peak, width: inrush?.width, ...waiting, ...part };
    const whole = next.peak !== undefined && next.width !== undefined;
    setWaiting(whole ? {} : next);
    if (whole || inrush) set(next);
  };
  return (
    <div className="fields">
      <Amount
        label={t("wire.luminaires.inrush")}
        value={waiting.peak ?? inrush?.peak}
        unit="A"
        least={0.1}
        most={10_000}
        disabled={disabled}
        onChange={(peak) => take({ peak })}
      />
      <Amount
        label={t("wire.luminaires.width")}
        value={waiting.width ?? inrush?.width}
        per={1e-6}
        unit="µs"
        least={1}
        most={100_000}
        disabled={disabled}
        onChange={(width) => take({ width })}
      />
    </div>
  );
}

/** The circuit of luminaires, or a new one for them. */
export function CircuitPick({
  job,
  records,
}: {
  readonly job: OpenJob;
  readonly records: readonly Luminaire[];
}) {
  const { circuits, boards } = job.kept;
  const of = records.map((one) => circuitOf(job, one) ?? none);
  const value = of.every((one) => one === of[0]) ? (of[0] ?? none) : different;
  const take = (next: string): void => {
    if (next === different || job.readOnly) return;
    if (next !== fresh) {
      const circuit = circuits.find(({ id }) => id === next);
      job.edit("wire.edit.assign", assignSteps(circuits, records, circuit));
      return;
    }
    const id = job.newId("circuits");
    const name = nextName(circuits);
    const board = boards.length === 1 ? boards[0]?.id : undefined;
    job.editBoth("wire.edit.assign", {
      site: assignSteps(circuits, records, { id, name }),
      kept: [
        { do: "put", kind: "circuits", record: { id, name, ...(board === undefined ? {} : { board }) } },
      ],
    });
  };
  return (
    <Pick
      wide
      label={t("wire.circuit-of", { count: records.length })}
      value={value}
      options={[
        ...(value === different ? [{ value: different, word: t("card.luminaires.different") }] : []),
        { value: none, word: t("fields.unknown") },
        ...circuits.map(({ id, name }) => ({ value: id, word: name || id })),
        { value: fresh, word: t("wire.circuit.new") },
      ]}
      onChange={take}
    />
  );
}

/** The next free "Lighting 3". */
export function nextName(circuits: readonly { readonly name: string }[]): string {
  let number = circuits.length + 1;
  while (circuits.some(({ name }) => name === t("wire.circuit.name", { number }))) number += 1;
  return t("wire.circuit.name", { number });
}

/** What the same thing is: luminaires of the same name, type and size, beside those that are meant. */
function alikeIn(job: OpenJob, records: readonly Luminaire[]): readonly Luminaire[] {
  const own = new Set(records.map(({ id }) => id));
  const kinds = new Set(records.map(kindOf));
  return job.site.luminaires.filter((one) => !own.has(one.id) && kinds.has(kindOf(one)));
}

const kindOf = ({ name, type, length, width, mounting }: Luminaire): string =>
  JSON.stringify([name, type, length, width, mounting]);

/** The value that all have; undefined where they differ or none has one. */
function same<K extends keyof Luminaire>(records: readonly Luminaire[], key: K): Luminaire[K] | undefined {
  const value = records[0]?.[key];
  return records.every((record) => record[key] === value) ? value : undefined;
}

const differ = (records: readonly Luminaire[], key: keyof Luminaire): boolean =>
  records.some((record) => record[key] !== records[0]?.[key]);
