import { Button } from "react-aria-components";
import type { JobCircuit } from "#job";
import type { OpenJob } from "../contract.ts";
import { TextBox, Tick } from "../fields/index.ts";
import { t } from "../texts/wire.ts";
import { Amount, Known, Maybe, without } from "./amount.tsx";

type Contactor = NonNullable<JobCircuit["contactors"]>[number];
type Fields = { readonly [Name in keyof Contactor]?: Contactor[Name] | undefined };

/** Contactors whose main contacts feed from this circuit: what holds their coil, what they bear, how they are made safe. */
export function Contactors({ job, circuit }: { readonly job: OpenJob; readonly circuit: JobCircuit }) {
  const contactors = circuit.contactors ?? [];
  const keep = (next: readonly Contactor[]): void =>
    job.keep("wire.edit.circuit", [
      {
        do: "set",
        kind: "circuits",
        id: circuit.id,
        fields: { contactors: next.length === 0 ? undefined : next },
      },
    ]);
  const add = (): void =>
    keep([
      ...contactors,
      {
        id: job.newId("circuits"),
        name: t("wire.contactor.name", { number: contactors.length + 1 }),
        detectors: [],
        suppressor: "unknown",
        labelled: "unknown",
        isolatesAllPoles: "unknown",
      },
    ]);
  return (
    <div className="stack">
      {contactors.map((one) => (
        <ContactorFields
          key={one.id}
          job={job}
          contactor={one}
          onChange={(fields) =>
            keep(
              contactors.map((other) =>
                other.id === one.id ? (without({ ...one, ...fields }) as Contactor) : other,
              ),
            )
          }
          onRemove={() => keep(contactors.filter(({ id }) => id !== one.id))}
        />
      ))}
      {job.readOnly ? null : (
        <div>
          <Button className="button" onPress={add}>
            {t("wire.contactor.add")}
          </Button>
        </div>
      )}
    </div>
  );
}

function ContactorFields({
  job,
  contactor,
  onChange,
  onRemove,
}: {
  readonly job: OpenJob;
  readonly contactor: Contactor;
  readonly onChange: (fields: Fields) => void;
  readonly onRemove: () => void;
}) {
  const disabled = job.readOnly;
  const pack = contactor.kind === "relay-pack";
  const figures = [
    ["rated", "A", 1],
    ["makingPeak", "A", 1],
    ["makingWidth", "µs", 1e-6],
    ["drivers", undefined, 1],
    ["backUp", "A", 1],
    ...(pack
      ? ([["supplies", "mA", 1e-3]] as const)
      : ([
          ["coilCurrent", "mA", 1e-3],
          ["coilPullIn", "mA", 1e-3],
          ["coilLeast", "%", 0.01],
          ["coilLength", "m", 1],
          ["coilSection", "mm²", 1],
        ] as const)),
  ] as const;
  const facts = pack
    ? (["apart"] as const)
    : (["inBoard", "suppressor", "coilCable", "labelled", "isolatesAllPoles"] as const);
  return (
    <fieldset className="plain-set stack" aria-label={contactor.name || contactor.id}>
      <div className="fields">
        <TextBox
          label={t("wire.contactor.called")}
          value={contactor.name}
          disabled={disabled}
          wide
          onChange={(name) => onChange({ name })}
        />
        <Maybe
          label={t("wire.contactor.kind")}
          value={contactor.kind}
          none={t("wire.contactor.kind.contactor")}
          options={[{ value: "relay-pack" as const, word: t("wire.contactor.kind.relay-pack") }]}
          onChange={(kind) => onChange({ kind })}
        />
      </div>
      <div className="wire-rooms">
        <span className="field-label">{t(pack ? "wire.contactor.fed" : "wire.contactor.coil")}</span>
        {job.site.detectors.map(({ id, tag }) => (
          <Tick
            key={id}
            on={contactor.detectors.includes(id)}
            disabled={disabled}
            onChange={(on) =>
              onChange({
                detectors: on
                  ? [...contactor.detectors, id]
                  : contactor.detectors.filter((other) => other !== id),
              })
            }
          >
            {tag || id}
          </Tick>
        ))}
      </div>
      <div className="fields">
        {figures.map(([name, unit, per]) => (
          <Amount
            key={name}
            label={t(`wire.contactor.${name}`)}
            value={contactor[name]}
            per={per}
            {...(unit === undefined ? { whole: true } : { unit })}
            least={0.001}
            most={name === "coilLeast" ? 100 : 1_000_000}
            disabled={disabled}
            onChange={(value) => onChange({ [name]: value })}
          />
        ))}
        {facts.map((name) => (
          <Known
            key={name}
            label={t(`wire.contactor.${name}`)}
            value={contactor[name] ?? "unknown"}
            onChange={(known) => onChange({ [name]: known ?? "unknown" })}
          />
        ))}
      </div>
      {disabled ? null : (
        <div>
          <Button className="button button-quiet" onPress={onRemove}>
            {t("wire.contactor.remove", { name: contactor.name || contactor.id })}
          </Button>
        </div>
      )}
    </fieldset>
  );
}
