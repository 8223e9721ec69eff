import { Button } from "react-aria-components";
import type { JobCircuit } from "#job";
import type { OpenJob } from "../contract.ts";
import { t } from "../texts/wire.ts";
import { Amount } from "./amount.tsx";

type Curve = NonNullable<JobCircuit["pulseCurve"]>;

/** A point to begin with: at 10 ms the magnetic limit itself holds. */
const firstPoint = [0.01, 1] as const;

/** The breaker's curve below 10 ms, point by point as its maker prints it. Between points it is read on both scales as a power. */
export function PulseCurveFields({ job, circuit }: { readonly job: OpenJob; readonly circuit: JobCircuit }) {
  const curve = circuit.pulseCurve ?? [];
  const set = (next: Curve): void =>
    job.keep("wire.edit.circuit", [
      {
        do: "set",
        kind: "circuits",
        id: circuit.id,
        fields: { pulseCurve: next.length === 0 ? undefined : next.toSorted((a, b) => a[0] - b[0]) },
      },
    ]);
  const disabled = job.readOnly;
  return (
    <div className="stack">
      <p className="hint">{t("wire.curve.hint")}</p>
      {curve.map(([width, factor], index) => (
        <div key={width} className="fields">
          <Amount
            label={t("wire.curve.width")}
            value={width}
            per={0.001}
            unit="ms"
            least={0.001}
            most={10}
            disabled={disabled}
            onChange={(next) =>
              set(next === undefined ? curve.toSpliced(index, 1) : curve.with(index, [next, factor]))
            }
          />
          <Amount
            label={t("wire.curve.factor")}
            value={factor}
            least={0.1}
            most={10_000}
            disabled={disabled}
            onChange={(next) =>
              set(next === undefined ? curve.toSpliced(index, 1) : curve.with(index, [width, next]))
            }
          />
        </div>
      ))}
      {disabled ? null : (
        <div className="row">
          <Button
            className="button"
            onPress={() => {
              const [width = 0.01] = curve[0] ?? [];
              set(curve.length === 0 ? [[...firstPoint]] : [[width / 2, curve[0]?.[1] ?? 1], ...curve]);
            }}
          >
            {t("wire.curve.add")}
          </Button>
        </div>
      )}
    </div>
  );
}
