import { Button } from "react-aria-components";
import type { JobCircuit } from "#job";
import type { OnCircuit } from "../calculate/wire-protocol.ts";
import type { OpenJob } from "../contract.ts";
import { LengthField, More } from "../fields/index.ts";
import { useUnits } from "../settings/preferences.ts";
import { lengthText } from "../texts/index.ts";
import { t } from "../texts/wire.ts";
import { Amount, Known, Maybe, without } from "./amount.tsx";

type Cable = NonNullable<JobCircuit["cable"]>;
type Fields = { readonly [Name in keyof Cable]?: Cable[Name] | undefined };

const methods = ["A1", "A2", "B1", "B2", "C"] as const;
const arrangements = [
  "bunched",
  "layer-on-wall",
  "layer-under-ceiling",
  "perforated-tray",
  "ladder",
] as const;
const gauges = [18, 16, 14, 12, 10, 8, 6] as const;
const signals = ["none", "insulated-for-highest", "separated", "not-separated"] as const;

/** The cable of a circuit: section and length first, how it lies behind "more". */
export function CableFields({
  job,
  circuit,
  derived,
}: {
  readonly job: OpenJob;
  readonly circuit: JobCircuit;
  /** What follows from the plan where nobody has decided. */
  readonly derived: OnCircuit["derived"];
}) {
  const units = useUnits();
  const cable: Fields = circuit.cable ?? {};
  const disabled = job.readOnly;
  const along = derived?.toLast;
  const about = (length: number): string =>
    units === "metric" ? `${Math.round(length)} m` : lengthText(length, units);
  /** What the plan has an answer for and nobody has entered. */
  const take: Fields = disabled
    ? {}
    : without({
        length: cable.length === undefined && along !== undefined ? Math.ceil(along * 10) / 10 : undefined,
        section: cable.section === undefined ? derived?.section?.section : undefined,
      });
  const set = (fields: Fields): void =>
    job.keep("wire.edit.cable", [
      {
        do: "set",
        kind: "circuits",
        id: circuit.id,
        fields: { cable: without({ ...cable, ...fields }) as Cable },
      },
    ]);
  return (
    <div className="stack">
      <div className="fields">
        <Amount
          label={t("wire.cable.section")}
          value={cable.section}
          unit="mm²"
          least={0.5}
          most={1000}
          disabled={disabled}
          onChange={(section) => set({ section })}
        />
        <LengthField
          label={t("wire.cable.length")}
          value={cable.length}
          least={0.1}
          most={10_000}
          placeholder={t("fields.unknown")}
          disabled={disabled}
          hint={along === undefined ? undefined : t("wire.cable.by-plan", { length: about(along) })}
          onChange={(length) => set({ length })}
          onClear={() => set({ length: undefined })}
        />
      </div>
      {take.length === undefined && take.section === undefined ? null : (
        <Button className="button" onPress={() => set(take)}>
          {t("wire.cable.take", {
            what: [
              ...(take.section === undefined ? [] : [`${take.section} mm²`]),
              ...(take.length === undefined ? [] : [about(take.length)]),
            ].join(", "),
          })}
        </Button>
      )}
      <More word={t("wire.cable.more")}>
        <div className="fields">
          <Amount
            label={t("wire.cable.cores")}
            value={cable.cores}
            whole
            least={2}
            most={100}
            disabled={disabled}
            onChange={(cores) => set({ cores })}
          />
          <Maybe
            label={t("wire.cable.method")}
            value={cable.method}
            options={methods.map((value) => ({ value, word: t(`wire.method.${value}`) }))}
            onChange={(method) => set({ method })}
          />
          <Amount
            label={t("wire.cable.ambient")}
            value={cable.ambient}
            unit="°C"
            least={-60}
            most={150}
            disabled={disabled}
            onChange={(ambient) => set({ ambient })}
          />
          <Maybe
            label={t("wire.cable.material")}
            value={cable.material}
            options={(["copper", "aluminium"] as const).map((value) => ({
              value,
              word: t(`wire.material.${value}`),
            }))}
            onChange={(material) => set({ material })}
          />
          <Maybe
            label={t("wire.cable.insulation")}
            value={cable.insulation}
            options={(["PVC", "XLPE"] as const).map((value) => ({
              value,
              word: t(`wire.insulation.${value}`),
            }))}
            onChange={(insulation) => set({ insulation })}
          />
          <Amount
            label={t("wire.cable.beside")}
            value={cable.grouping?.circuits}
            whole
            least={1}
            most={1000}
            disabled={disabled}
            onChange={(circuits) =>
              set({
                grouping:
                  circuits === undefined
                    ? undefined
                    : { arrangement: cable.grouping?.arrangement ?? "bunched", circuits },
              })
            }
          />
          {cable.grouping ? (
            <Maybe
              label={t("wire.cable.arrangement")}
              value={cable.grouping.arrangement}
              options={arrangements.map((value) => ({ value, word: t(`wire.arrangement.${value}`) }))}
              onChange={(arrangement) =>
                set({
                  grouping: arrangement && {
                    arrangement,
                    circuits: cable.grouping?.circuits ?? 1,
                  },
                })
              }
            />
          ) : null}
          <LengthField
            label={t("wire.cable.in-insulation")}
            value={cable.inInsulation}
            least={0}
            placeholder={t("fields.unknown")}
            disabled={disabled}
            onChange={(inInsulation) => set({ inInsulation })}
            onClear={() => set({ inInsulation: undefined })}
          />
          <Amount
            label={t("wire.cable.protective")}
            value={cable.protective}
            unit="mm²"
            least={0.5}
            most={1000}
            placeholder={t("wire.cable.as-lines")}
            disabled={disabled}
            onChange={(protective) => set({ protective })}
          />
          <Maybe
            label={t("wire.cable.gauge")}
            value={cable.gauge === undefined ? undefined : `${cable.gauge}`}
            none={t("wire.cable.gauge.none")}
            options={gauges.map((gauge) => ({ value: `${gauge}` as const, word: `${gauge} AWG` }))}
            onChange={(word) =>
              set({
                gauge: gauges.find((gauge) => `${gauge}` === word),
                form: word === undefined ? undefined : cable.form,
                protectiveGauge: word === undefined ? undefined : cable.protectiveGauge,
              })
            }
          />
          {cable.gauge === undefined ? null : (
            <Maybe
              label={t("wire.cable.grounding")}
              value={cable.protectiveGauge === undefined ? undefined : `${cable.protectiveGauge}`}
              none={t("wire.cable.grounding.none")}
              options={gauges.map((gauge) => ({ value: `${gauge}` as const, word: `${gauge} AWG` }))}
              onChange={(word) => set({ protectiveGauge: gauges.find((gauge) => `${gauge}` === word) })}
            />
          )}
          {cable.gauge === undefined ? null : (
            <Maybe
              label={t("wire.cable.form")}
              value={cable.form}
              options={(["solid", "stranded"] as const).map((value) => ({
                value,
                word: t(`wire.form.${value}`),
              }))}
              onChange={(form) => set({ form })}
            />
          )}
          <Known
            label={t("wire.cable.concealed")}
            value={cable.concealed}
            onChange={(concealed) => set({ concealed })}
          />
          <Maybe
            label={t("wire.cable.signals")}
            value={cable.withSignals === "unknown" ? undefined : cable.withSignals}
            options={signals.map((value) => ({ value, word: t(`wire.signals.${value}`) }))}
            onChange={(withSignals) => set({ withSignals })}
          />
        </div>
      </More>
    </div>
  );
}
