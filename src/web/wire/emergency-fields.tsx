import type { Luminaire } from "#engine";
import type { OpenJob } from "../contract.ts";
import { t } from "../texts/wire.ts";
import { Maybe } from "./amount.tsx";
import { circuitOf, referenceTo } from "./assign.ts";

type Emergency = NonNullable<Luminaire["emergency"]>;
const feeds = ["before-contact", "after-contact", "unknown"] as const;

/** Escape luminaires: where their unswitched line is taken, and whose failure they sense. */
export function EmergencyFields({
  job,
  records,
  set,
}: {
  readonly job: OpenJob;
  readonly records: readonly Luminaire[];
  readonly set: (emergency: Emergency | undefined) => void;
}) {
  const { circuits } = job.kept;
  const first = records[0]?.emergency;
  const same = records.every(
    ({ emergency }) => emergency?.taken === first?.taken && emergency?.senses === first?.senses,
  );
  const known = same ? first : undefined;
  const ofFirst = records[0]?.circuit ?? "";
  return (
    <div className="fields">
      <Maybe
        label={t("wire.emergency")}
        value={known?.taken}
        none={t("wire.emergency.none")}
        options={feeds.map((value) => ({ value, word: t(`wire.emergency.${value}`) }))}
        onChange={(taken) => {
          if (!job.readOnly) set(taken && { taken, senses: known?.senses ?? ofFirst });
        }}
      />
      {known === undefined ? null : (
        <Maybe
          label={t("wire.emergency.senses")}
          value={circuitOf(job, { circuit: known.senses })}
          options={circuits.map(({ id, name }) => ({ value: id, word: name || id }))}
          onChange={(id) => {
            const circuit = circuits.find((one) => one.id === id);
            if (!job.readOnly)
              set({ taken: known.taken, senses: circuit ? referenceTo(circuits, circuit) : "" });
          }}
        />
      )}
    </div>
  );
}
