import { useState } from "react";
import { Button } from "react-aria-components";
import type { CareState, Occasion } from "#engine";
import type { JobTestEntry } from "#job";
import type { OpenJob } from "../contract.ts";
import { FigureField, More, TextBox } from "../fields/index.ts";
import { hum, tone, useAwake } from "../site-test/awake.ts";
import { Countdown } from "../site-test/countdown.tsx";
import { enterCare } from "../site-test/enter.ts";
import { VerdictWord } from "../site-test/verdict-word.tsx";
import { t } from "../texts/after.ts";
import { beforeWords, enteredWords, pointTitle, visitTitle } from "./care-words.ts";

interface CarePointsProps {
  readonly job: OpenJob;
  readonly occasion: Occasion;
  readonly states: readonly CareState<JobTestEntry>[];
  readonly room: string | undefined;
}

/** The points of one room: the next one large, all of them below. */
export function CarePoints({ job, occasion, states, room }: CarePointsProps) {
  useAwake();
  const [chosen, setChosen] = useState<string | undefined>();
  const current = states.find(({ point }) => point.id === chosen) ?? states.find(({ entry }) => !entry);
  return (
    <>
      {current ? (
        <PointCard
          key={`${current.point.id} ${current.entry?.id}`}
          job={job}
          occasion={occasion}
          state={current}
          room={room}
          onEntered={() => setChosen(undefined)}
        />
      ) : (
        <p role="status">{t("after.room.done")}</p>
      )}
      <div>
        {states.map((state) => (
          <Button
            key={state.point.id}
            className="line-button test-step-line"
            {...(state === current ? { "aria-current": "step" as const } : {})}
            onPress={() => setChosen(state.point.id)}
          >
            <span>
              {pointTitle(job, state.point)}
              <span className="hint test-of">{enteredWords(state)}</span>
            </span>
            {state.entry ? <VerdictWord verdict={state.check.verdict} /> : null}
          </Button>
        ))}
      </div>
    </>
  );
}

interface PointCardProps {
  readonly job: OpenJob;
  readonly occasion: Occasion;
  readonly state: CareState<JobTestEntry>;
  readonly room: string | undefined;
  readonly onEntered: () => void;
}

function PointCard({ job, occasion, state, room, onEntered }: PointCardProps) {
  const { point } = state;
  const [value, setValue] = useState<number | undefined>();
  const [remark, setRemark] = useState("");
  const title = pointTitle(job, point);
  const enter = (outcome: "passed" | "failed" | "read"): void => {
    const isBroken = outcome === "failed" || (outcome === "read" && !keeps(state, value));
    enterCare(job, point, {
      occasion: occasion.id,
      outcome,
      ...(outcome === "read" && value !== undefined ? { value } : {}),
      ...(remark === "" ? {} : { remark }),
      ...(isBroken
        ? {
            point: t("after.point.broken", {
              visit: visitTitle(occasion),
              what: title,
              remark: remark === "" ? "" : ` ${remark}`,
            }),
            room,
          }
        : {}),
    });
    hum("done");
    tone("done");
    onEntered();
  };
  const before = beforeWords(point);
  return (
    <section className="stack test-station" aria-label={title}>
      <p className="test-step-head">
        <strong>{title}</strong>
      </p>
      <p>{t(`after.deed.${point.name}`)}</p>
      {before === "" ? null : <p className="hint">{before}</p>}
      {point.waiting > 0 && point.result.kind === "verdict" ? (
        <Countdown parts={[{ seconds: point.waiting, word: t("after.clock.out") }]} />
      ) : null}
      {job.readOnly ? null : (
        <>
          {point.result.kind === "reading" ? (
            <FigureField
              label={t("after.reading")}
              value={value}
              unit={point.result.unit}
              least={0}
              when="typing"
              onChange={setValue}
              onClear={() => setValue(undefined)}
            />
          ) : null}
          <div className="test-answers">
            {point.result.kind === "reading" ? (
              <Button
                className="button button-first test-answer"
                isDisabled={value === undefined}
                onPress={() => enter("read")}
              >
                {t("after.enter")}
              </Button>
            ) : (
              <Button className="button button-first test-answer" onPress={() => enter("passed")}>
                {t("after.yes")}
              </Button>
            )}
            <Button className="button test-answer" onPress={() => enter("failed")}>
              {t(point.result.kind === "reading" ? "after.fail" : "after.no")}
            </Button>
          </div>
          <More word={t("after.remark.add")}>
            <TextBox label={t("after.remark")} value={remark} onChange={setRemark} />
          </More>
        </>
      )}
    </section>
  );
}

/** Whether a figure keeps the point's limit. */
function keeps({ point: { result } }: CareState, value: number | undefined): boolean {
  if (result.kind !== "reading" || value === undefined) return true;
  const { least, most } = result.limit ?? {};
  return (least === undefined || value >= least) && (most === undefined || value <= most);
}
