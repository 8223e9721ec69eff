import type { JobCircuit } from "#job";
import type { OnCircuit } from "../calculate/wire-protocol.ts";
import type { OpenJob } from "../contract.ts";
import { Choice, More, TextBox } from "../fields/index.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { CircuitForm } from "../survey/visit/circuit-form.tsx";
import { t } from "../texts/wire.ts";
import { Amount, Known, Maybe } from "./amount.tsx";
import { CableFields } from "./cable-fields.tsx";
import { Contactors } from "./contactors.tsx";
import { PulseCurveFields } from "./pulse-curve.tsx";
import { RoutePins } from "./route-pins.tsx";

type Fields = { readonly [Name in Exclude<keyof JobCircuit, "id">]?: JobCircuit[Name] | undefined };

const poles = ["one", "one-and-neutral", "three", "three-and-neutral"] as const;
const phases = ["single-phase", "three-phase"] as const;
const lines = ["L1", "L2", "L3"] as const;

/** What may be changed of a circuit: its cable, its breaker as the survey has it, and what protects it behind "more". */
export function CircuitEdit({
  job,
  circuit,
  derived,
  store,
}: {
  readonly job: OpenJob;
  readonly circuit: JobCircuit;
  readonly derived: OnCircuit["derived"];
  readonly store: Store<Workbench>;
}) {
  const set = (fields: Fields): void =>
    job.keep("wire.edit.circuit", [{ do: "set", kind: "circuits", id: circuit.id, fields }]);
  const disabled = job.readOnly;
  return (
    <div className="stack">
      {circuit.readings === "assumed" ? (
        <div className="stack">
          <p className="hint">{t("wire.assumed.circuit")}</p>
          <Choice
            label={t("wire.assumed.label")}
            value={circuit.readings}
            options={(["assumed", "measured"] as const).map((value) => ({
              value,
              word: t(`wire.readings.${value}`),
            }))}
            onChange={(readings) => {
              if (!disabled) set({ readings });
            }}
          />
        </div>
      ) : null}
      <CableFields job={job} circuit={circuit} derived={derived} />
      {derived?.toLast === undefined ? null : <RoutePins job={job} circuit={circuit} store={store} />}
      <More word={t("wire.circuit.edit")}>
        <CircuitForm job={job} circuit={circuit} />
      </More>
      <More word={t("wire.protection")}>
        <div className="fields">
          <TextBox
            label={t("wire.protection.rcd-name")}
            value={circuit.rcdName ?? ""}
            placeholder={t("fields.unknown")}
            disabled={disabled}
            onChange={(name) => set({ rcdName: name === "" ? undefined : name })}
          />
          <Amount
            label={t("wire.protection.breaking")}
            value={circuit.breakingCapacity}
            per={1000}
            unit="kA"
            least={0.1}
            most={1000}
            disabled={disabled}
            onChange={(breakingCapacity) => set({ breakingCapacity })}
          />
          <Amount
            label={t("wire.protection.let-through")}
            value={circuit.letThrough}
            unit="A²s"
            least={1}
            most={1_000_000}
            disabled={disabled}
            onChange={(letThrough) => set({ letThrough })}
          />
          <Maybe
            label={t("wire.protection.poles")}
            value={circuit.poles}
            options={poles.map((value) => ({ value, word: t(`wire.poles.${value}`) }))}
            onChange={(value) => set({ poles: value })}
          />
          <Maybe
            label={t("wire.protection.phases")}
            value={circuit.phases}
            options={phases.map((value) => ({ value, word: t(`wire.phases.${value}`) }))}
            onChange={(value) => set({ phases: value })}
          />
          {circuit.phases === "three-phase" ? (
            <Amount
              label={t("wire.protection.third-harmonic")}
              value={circuit.thirdHarmonic}
              per={0.01}
              unit="%"
              least={0}
              most={100}
              disabled={disabled}
              onChange={(thirdHarmonic) => set({ thirdHarmonic })}
            />
          ) : (
            <Maybe
              label={t("wire.protection.line")}
              value={circuit.line}
              options={lines.map((value) => ({ value, word: value }))}
              onChange={(line) => set({ line })}
            />
          )}
          <Known
            label={t("wire.protection.isolator")}
            value={circuit.isolator}
            onChange={(isolator) => set({ isolator })}
          />
        </div>
      </More>
      <More word={t("wire.curve", { count: circuit.pulseCurve?.length ?? 0 })}>
        <PulseCurveFields job={job} circuit={circuit} />
      </More>
      <More word={t("wire.contactors", { count: circuit.contactors?.length ?? 0 })}>
        <Contactors job={job} circuit={circuit} />
      </More>
    </div>
  );
}
