import { Button } from "react-aria-components";
import type { JobInstrument } from "#job";
import type { OpenJob } from "../contract.ts";
import { More, TextBox } from "../fields/index.ts";
import { t } from "../texts/test.ts";
import { localDay } from "./local-time.ts";

/** The measuring instruments of the test, with the day on which their calibration ends. */
export function Instruments({ job }: { readonly job: OpenJob }) {
  const set = (id: string, fields: Partial<JobInstrument>): void =>
    job.keep("test.edit.instrument", [{ do: "set", kind: "instruments", id, fields }]);
  const today = localDay(new Date());
  return (
    <More word={t("test.instruments")}>
      <div className="stack">
        {job.kept.instruments.map(({ id, name, serial, calibratedUntil }) => (
          <div key={id} className="fields">
            <TextBox
              label={t("test.instrument.name")}
              value={name}
              onChange={(next) => set(id, { name: next })}
            />
            <TextBox
              label={t("test.instrument.serial")}
              value={serial ?? ""}
              onChange={(next) => set(id, { serial: next })}
            />
            <TextBox
              label={t("test.instrument.until")}
              value={calibratedUntil ?? ""}
              placeholder="2027-03-31"
              hint={calibratedUntil && calibratedUntil < today ? t("test.instrument.past") : undefined}
              onChange={(next) => set(id, { calibratedUntil: next })}
            />
            {job.readOnly ? null : (
              <Button
                className="button"
                onPress={() => job.keep("test.edit.instrument", [{ do: "remove", kind: "instruments", id }])}
              >
                {t("test.remove")}
              </Button>
            )}
          </div>
        ))}
        {job.readOnly ? null : (
          <Button
            className="button"
            onPress={() =>
              job.keep("test.edit.instrument", [
                { do: "put", kind: "instruments", record: { id: job.newId("instruments"), name: "" } },
              ])
            }
          >
            {t("test.instrument.add")}
          </Button>
        )}
      </div>
    </More>
  );
}
