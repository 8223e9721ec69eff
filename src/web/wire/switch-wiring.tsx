import type { Switch } from "#engine";
import type { OpenJob } from "../contract.ts";
import { Choice, More, Pick, Tick } from "../fields/index.ts";
import { setStep } from "../plan/edit/steps.ts";
import { t } from "../texts/wire.ts";
import { Amount, Known, Maybe } from "./amount.tsx";
import { circuitOf, referenceTo } from "./assign.ts";

type Fields = { readonly [Name in keyof Switch]?: Switch[Name] | undefined };

const kinds = ["switch", "two-way", "intermediate", "push-button", "dimmer"] as const;
const plans = ["parallel", "button", "removed"] as const;

/** What becomes of a switch or button on the wall, and which detectors it speaks to. */
export function SwitchWiring({ job, record }: { readonly job: OpenJob; readonly record: Switch }) {
  const { circuits } = job.kept;
  const set = (fields: Fields): void => {
    if (!job.readOnly)
      job.edit("wire.edit.switch", [setStep("switches", record.id, fields as Partial<Switch>)]);
  };
  const speaks = record.detectors ?? [];
  const near = job.site.detectors.filter(
    ({ id, room, controls }) => room === record.room || controls.includes(record.room) || speaks.includes(id),
  );
  const lamp = record.glowLamp;
  return (
    <section className="stack" aria-label={t("wire.switch")}>
      <Choice
        label={t("wire.switch.planned")}
        value={record.planned ?? "unknown"}
        options={[
          ...plans.map((value) => ({ value, word: t(`wire.planned.${value}`) })),
          { value: "unknown" as const, word: t("fields.unknown") },
        ]}
        onChange={(planned) =>
          set(
            planned === "unknown"
              ? { planned: undefined, detectors: undefined }
              : planned === "button"
                ? { planned, ...(speaks.length > 0 ? {} : { detectors: near.map(({ id }) => id) }) }
                : { planned, detectors: undefined },
          )
        }
      />
      {record.planned === "button" ? (
        <fieldset className="plain-set">
          <legend className="field-label">{t("wire.switch.detectors")}</legend>
          {near.map(({ id, tag }) => (
            <Tick
              key={id}
              on={speaks.includes(id)}
              disabled={job.readOnly}
              onChange={(on) =>
                set({ detectors: on ? [...speaks, id] : speaks.filter((other) => other !== id) })
              }
            >
              {tag || id}
            </Tick>
          ))}
          {near.length === 0 ? <p className="hint">{t("wire.switch.no-detector")}</p> : null}
        </fieldset>
      ) : null}
      <div className="fields">
        <Pick
          label={t("card.kind")}
          value={record.kind}
          options={kinds.map((kind) => ({ value: kind, word: t(`switch.${kind}`) }))}
          onChange={(kind) => set({ kind })}
        />
        <Maybe
          label={t("wire.switch.circuit")}
          value={circuitOf(job, record)}
          options={circuits.map(({ id, name }) => ({ value: id, word: name || id }))}
          onChange={(id) => {
            const circuit = circuits.find((one) => one.id === id);
            set({ circuit: circuit && referenceTo(circuits, circuit) });
          }}
        />
      </div>
      <More word={t("wire.switch.glow")} open={lamp !== undefined}>
        <div className="fields">
          <Amount
            label={t("wire.switch.glow-current")}
            value={lamp?.current}
            per={0.001}
            unit="mA"
            least={0.001}
            most={1000}
            disabled={job.readOnly}
            onChange={(current) =>
              set({
                glowLamp:
                  current === undefined ? undefined : { current, ownNeutral: lamp?.ownNeutral ?? "unknown" },
              })
            }
          />
          {lamp ? (
            <Known
              label={t("wire.switch.glow-neutral")}
              value={lamp.ownNeutral}
              onChange={(ownNeutral) => set({ glowLamp: { ...lamp, ownNeutral: ownNeutral ?? "unknown" } })}
            />
          ) : null}
        </div>
      </More>
    </section>
  );
}
