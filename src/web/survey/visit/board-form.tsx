import { Button } from "react-aria-components";
import type { JobBoard } from "#job";
import { supplySystems } from "#job";
import type { OpenJob } from "../../contract.ts";
import { Choice, FigureField, More, Pick, TextBox } from "../../fields/index.ts";
import { t } from "../../texts/visit.ts";
import { boardQuestions } from "./questions.ts";
import { Questions } from "./record-fields.tsx";

const origins = ["measured", "assumed", "to-be-measured"] as const;
type Fields = { readonly [Name in Exclude<keyof JobBoard, "id">]?: JobBoard[Name] | undefined };

/** A board as found: three things first, its other readings behind "more". */
export function BoardForm({ job, board }: { readonly job: OpenJob; readonly board: JobBoard }) {
  const set = (fields: Fields): void =>
    job.keep("visit.edit.board", [{ do: "set", kind: "boards", id: board.id, fields }]);
  const reading = { disabled: job.readOnly, placeholder: t("fields.unknown"), least: 0 } as const;
  return (
    <fieldset className="visit-record stack">
      <legend className="visit-legend">{board.name || t("visit.board.unnamed")}</legend>
      <div className="fields">
        <TextBox
          label={t("visit.board.name")}
          value={board.name}
          disabled={job.readOnly}
          onChange={(name) => set({ name })}
        />
        <Pick
          label={t("visit.board.system")}
          value={board.system}
          options={supplySystems.map((system) => ({
            value: system,
            word: system === "unknown" ? t("fields.unknown") : system,
          }))}
          onChange={(system) => set({ system })}
        />
        <FigureField
          {...reading}
          label={t("visit.board.loop")}
          value={board.loopImpedance}
          unit="Ω"
          least={0.001}
          most={100_000}
          onChange={(loopImpedance) => set({ loopImpedance })}
          onClear={() => set({ loopImpedance: undefined })}
        />
      </div>
      <Questions questions={boardQuestions(board)} />
      <More>
        <div className="stack">
          <div className="fields">
            <FigureField
              {...reading}
              label={t("visit.board.voltage")}
              value={board.voltage}
              unit="V"
              least={1}
              most={1000}
              onChange={(voltage) => set({ voltage })}
              onClear={() => set({ voltage: undefined })}
            />
            <FigureField
              {...reading}
              label={t("visit.board.fault")}
              value={board.faultCurrent === undefined ? undefined : rounded(board.faultCurrent / 1000)}
              unit="kA"
              least={0.001}
              most={1000}
              onChange={(kiloamperes) => set({ faultCurrent: rounded(kiloamperes * 1000) })}
              onClear={() => set({ faultCurrent: undefined })}
            />
            <FigureField
              {...reading}
              label={t("visit.board.drop")}
              value={board.dropUsed === undefined ? undefined : rounded(board.dropUsed * 100)}
              unit="%"
              most={100}
              onChange={(percent) => set({ dropUsed: rounded(percent / 100) })}
              onClear={() => set({ dropUsed: undefined })}
            />
          </div>
          <Choice
            label={t("visit.board.readings")}
            value={board.readings}
            options={origins.map((value) => ({ value, word: t(`visit.readings.${value}`) }))}
            onChange={(readings) => {
              if (!job.readOnly) set({ readings });
            }}
          />
          {job.readOnly ? null : (
            <div>
              <Button
                className="button button-quiet"
                onPress={() =>
                  job.keep("visit.edit.remove", [{ do: "remove", kind: "boards", id: board.id }])
                }
              >
                {t("visit.board.remove")}
              </Button>
            </div>
          )}
        </div>
      </More>
    </fieldset>
  );
}

/** A millionth: units may be changed to and fro without a tail of decimals. */
export const rounded = (value: number): number => Math.round(value * 1e6) / 1e6;
