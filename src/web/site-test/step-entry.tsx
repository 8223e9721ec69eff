import { useState } from "react";
import { Button } from "react-aria-components";
import { checkStepReading, needsJudgement, readingRows, type StepState, type WorkStep } from "#engine";
import type { OpenJob } from "../contract.ts";
import { FigureField, More, Say, TextBox, Tick } from "../fields/index.ts";
import { numberText } from "../texts/index.ts";
import { remedyOf, sentenceOf } from "../texts/problems.ts";
import { t } from "../texts/test.ts";
import { hum, tone } from "./awake.ts";
import { type Done, enterStep } from "./enter.ts";
import { partWord } from "./step-words.ts";

interface StepEntryProps {
  readonly job: OpenJob;
  readonly current: StepState;
  /** May be entered now; what is seen to have failed may always be said. */
  readonly allowed: boolean;
  readonly onEntered: () => void;
}

/** The answers to one step: done, passed or failed, a figure, part by part. */
export function StepEntry({ job, current, allowed, onEntered }: StepEntryProps) {
  const { step, missing, status } = current;
  const [remark, setRemark] = useState("");
  const enter = (done: Done): void => {
    enterStep(job, step, { ...done, ...(remark === "" ? {} : { remark }) });
    hum("done");
    tone("done");
    onEntered();
  };
  const parts = step.parts.length === 0 ? [undefined] : step.parts;
  return (
    <>
      {step.result.kind === "reading" ? (
        <ReadingEntry step={step} allowed={allowed} onEnter={enter} />
      ) : (
        parts.map((part) => (
          <PartEntry
            key={part ?? ""}
            part={part}
            verdict={step.result.kind !== "done"}
            open={part === undefined ? status !== "done" : missing.includes(part)}
            allowed={allowed}
            onEnter={enter}
          />
        ))
      )}
      <More word={t("test.remark.add")}>
        <div className="stack">
          <TextBox label={t("test.remark")} value={remark} onChange={setRemark} />
          {step.mayNotApply ? (
            <Button
              className="button"
              isDisabled={remark.trim() === ""}
              onPress={() => enter({ outcome: "not-applicable" })}
            >
              {t("test.not-applicable")}
            </Button>
          ) : null}
        </div>
      </More>
      {step.mayNotApply ? <p className="hint">{t("test.not-applicable.how")}</p> : null}
    </>
  );
}

interface PartEntryProps {
  readonly part: string | undefined;
  readonly verdict: boolean;
  readonly open: boolean;
  readonly allowed: boolean;
  readonly onEnter: (done: Done) => void;
}

function PartEntry({ part, verdict, open, allowed, onEnter }: PartEntryProps) {
  const of = part === undefined ? {} : { part };
  return (
    <div className={part === undefined ? "test-answers" : "test-part"}>
      {part === undefined ? null : (
        <span className={open ? "" : "test-part-behind"}>
          {partWord(part)}
          {open ? null : <span className="unseen"> ({t("test.status.done")})</span>}
        </span>
      )}
      <Button
        className={
          part === undefined ? "button button-first test-answer" : open ? "button" : "button button-quiet"
        }
        isDisabled={!allowed}
        aria-label={
          part === undefined
            ? t(verdict ? "test.answer.passed" : "test.answer.done")
            : `${partWord(part)}: ${t(verdict ? "test.answer.passed" : "test.answer.done")}`
        }
        onPress={() => onEnter({ outcome: verdict ? "passed" : "done", ...of })}
      >
        {open ? t(verdict ? "test.answer.passed" : "test.answer.done") : "✓"}
      </Button>
      {verdict ? (
        <Button
          className={part === undefined ? "button test-answer" : "button button-quiet"}
          aria-label={
            part === undefined ? t("test.answer.failed") : `${partWord(part)}: ${t("test.answer.failed")}`
          }
          onPress={() => onEnter({ outcome: "failed", ...of })}
        >
          {t("test.answer.failed")}
        </Button>
      ) : null}
    </div>
  );
}

interface ReadingEntryProps {
  readonly step: WorkStep;
  readonly allowed: boolean;
  readonly onEnter: (done: Done) => void;
}

/** A figure with its unit and limit; what is unlikely is asked about, and may be kept. */
function ReadingEntry({ step, allowed, onEnter }: ReadingEntryProps) {
  const [value, setValue] = useState<number | undefined>();
  // The very figure that the tester judged: another one is another question.
  const [judged, setJudged] = useState<number | undefined>();
  if (step.result.kind !== "reading") return null;
  const { unit } = readingRows[step.result.reading];
  const { check, problems } = checkStepReading(step, value);
  const { least, most } = step.result.limit ?? {};
  const limit =
    least !== undefined && most !== undefined && Number.isFinite(most)
      ? t("test.limit.between", { least: numberText(least), most: numberText(most), unit })
      : least !== undefined
        ? t("test.limit.least", { least: numberText(least), unit })
        : most !== undefined && Number.isFinite(most)
          ? t("test.limit.most", { most: numberText(most), unit })
          : t("test.limit.none");
  const isJudged = value !== undefined && judged === value;
  const asked = needsJudgement(step, value);
  const refused = problems.some(({ code }) => code === "reading-impossible");
  return (
    <>
      <FigureField
        label={t("test.reading")}
        value={value}
        unit={unit}
        when="typing"
        onChange={setValue}
        onClear={() => setValue(undefined)}
        hint={
          step.planned === undefined
            ? limit
            : `${t("test.reading.planned", { value: numberText(step.planned), unit })} ${limit}`
        }
      />
      {value === undefined ? null : (
        <p role="status" className={check.verdict === "fail" ? "test-word test-word-fail" : "test-word"}>
          {t(`test.reading.${check.verdict}`)}
        </p>
      )}
      {problems.map((problem) => (
        <Say key={problem.code} severity={problem.code === "reading-impossible" ? "must" : "should"} live>
          <p>{sentenceOf(problem)}</p>
          <p className="hint">{remedyOf(problem)}</p>
        </Say>
      ))}
      {asked ? (
        <Tick on={isJudged} onChange={(on) => setJudged(on ? value : undefined)}>
          {t("test.reading.judged")}
        </Tick>
      ) : null}
      <div className="test-answers">
        <Button
          className="button button-first test-answer"
          isDisabled={!allowed || value === undefined || refused || (asked && !isJudged)}
          onPress={() => onEnter({ outcome: asked ? "passed" : "read", value, unit })}
        >
          {t("test.answer.enter")}
        </Button>
        {step.result.limit ? null : (
          <Button className="button test-answer" onPress={() => onEnter({ outcome: "failed", value, unit })}>
            {t("test.answer.failed")}
          </Button>
        )}
      </div>
    </>
  );
}
