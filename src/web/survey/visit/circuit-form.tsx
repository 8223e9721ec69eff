import { Button } from "react-aria-components";
import type { JobCircuit } from "#job";
import { breakerTypes } from "#job";
import type { OpenJob } from "../../contract.ts";
import { Choice, FigureField, More, Pick, TextBox } from "../../fields/index.ts";
import { t } from "../../texts/visit.ts";
import { removeSteps, renameSteps } from "../../wire/assign.ts";
import { rounded } from "./board-form.tsx";
import { knownPoints } from "./open-points.ts";
import { circuitQuestions } from "./questions.ts";
import { Questions } from "./record-fields.tsx";

const known = ["yes", "no", "unknown"] as const;
const noBoard = "";
type Fields = { readonly [Name in Exclude<keyof JobCircuit, "id">]?: JobCircuit[Name] | undefined };

/** A lighting circuit as found: its name and its breaker first, what one sees when a cover is open behind "more". */
export function CircuitForm({ job, circuit }: { readonly job: OpenJob; readonly circuit: JobCircuit }) {
  const set = (fields: Fields): void =>
    job.keep("visit.edit.circuit", [{ do: "set", kind: "circuits", id: circuit.id, fields }]);
  return (
    <fieldset className="visit-record stack">
      <legend className="visit-legend">{circuit.name || t("visit.circuit.unnamed")}</legend>
      <div className="fields">
        <TextBox
          label={t("visit.circuit.name")}
          value={circuit.name}
          disabled={job.readOnly}
          onChange={(name) => job.editBoth("visit.edit.circuit", renameSteps(job, circuit, name))}
        />
        <Pick
          label={t("visit.circuit.breaker")}
          value={circuit.breaker}
          options={breakerTypes.map((value) => ({ value, word: t(`visit.breaker.${value}`) }))}
          onChange={(breaker) => set({ breaker })}
        />
        <FigureField
          label={t("visit.circuit.rating")}
          value={circuit.rating}
          unit="A"
          least={0.1}
          most={10_000}
          placeholder={t("fields.unknown")}
          disabled={job.readOnly}
          onChange={(rating) => set({ rating })}
          onClear={() => set({ rating: undefined })}
        />
      </div>
      <Questions questions={circuitQuestions(circuit)} />
      <More>
        <div className="stack">
          <Pick
            label={t("visit.circuit.board")}
            value={circuit.board ?? noBoard}
            options={[
              { value: noBoard, word: t("fields.unknown") },
              ...job.kept.boards.map(({ id, name }) => ({
                value: id,
                word: name || t("visit.board.unnamed"),
              })),
            ]}
            onChange={(board) => set({ board: board === noBoard ? undefined : board })}
          />
          {knownPoints.map((point) => (
            <div key={point} className="visit-known">
              <Choice
                label={t(`visit.circuit.${point}`)}
                value={circuit[point]}
                options={known.map((value) => ({ value, word: t(`visit.known.${value}`) }))}
                onChange={(value) => {
                  if (!job.readOnly) set({ [point]: value });
                }}
              />
              {point === "rcd" && circuit.rcd !== "no" ? (
                <FigureField
                  label={t("visit.circuit.residual")}
                  value={
                    circuit.residualCurrent === undefined
                      ? undefined
                      : rounded(circuit.residualCurrent * 1000)
                  }
                  unit="mA"
                  least={1}
                  most={100_000}
                  placeholder={t("fields.unknown")}
                  disabled={job.readOnly}
                  onChange={(milliamperes) =>
                    set({ residualCurrent: rounded(milliamperes / 1000), rcd: "yes" })
                  }
                  onClear={() => set({ residualCurrent: undefined })}
                />
              ) : null}
            </div>
          ))}
          <TextBox
            label={t("visit.circuit.remark")}
            value={circuit.remark}
            disabled={job.readOnly}
            onChange={(remark) => set({ remark })}
          />
          {job.readOnly ? null : (
            <div>
              <Button
                className="button button-quiet"
                onPress={() => job.editBoth("visit.edit.remove", removeSteps(job, circuit))}
              >
                {t("visit.circuit.remove")}
              </Button>
            </div>
          )}
        </div>
      </More>
    </fieldset>
  );
}
