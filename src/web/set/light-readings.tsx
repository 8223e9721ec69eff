import { useState } from "react";
import { Button } from "react-aria-components";
import { type ReadThreshold, readThreshold } from "#engine";
import type { JobDetector } from "#job";
import type { OpenJob } from "../contract.ts";
import { FigureField, More, Say, Tick } from "../fields/index.ts";
import { nameOf } from "../plan/names.ts";
import { numberText, percentText } from "../texts/index.ts";
import { sentenceOf } from "../texts/problems.ts";
import { t } from "../texts/set.ts";
import { inFile, keepOn } from "./choose.ts";

type Kept = NonNullable<JobDetector["lightReadings"]>;
interface PairDraft {
  readonly ceiling?: number | undefined;
  readonly task?: number | undefined;
}
interface Draft {
  readonly target?: number | undefined;
  readonly lampsOff: readonly PairDraft[];
  readonly lampsOn: PairDraft;
  readonly sunPatch: boolean;
}

const draftOf = (kept: Kept | undefined): Draft =>
  kept
    ? { target: kept.target, lampsOff: kept.lampsOff, lampsOn: kept.lampsOn ?? {}, sunPatch: kept.sunPatch }
    : { lampsOff: [{}], lampsOn: {}, sunPatch: false };

const whole = ({ ceiling, task }: PairDraft): Kept["lampsOff"] =>
  ceiling === undefined || task === undefined ? [] : [{ ceiling, task }];

/** What was typed as the file holds it; undefined as long as there is no target or no whole pair. */
function readingsIn({ target, lampsOff, lampsOn, sunPatch }: Draft): Kept | undefined {
  const pairs = lampsOff.flatMap(whole);
  const [on] = whole(lampsOn);
  return target === undefined || pairs.length === 0
    ? undefined
    : { target, lampsOff: pairs, ...(on && { lampsOn: on }), sunPatch };
}

/** Ceiling and work plane, lamps off and on: what they give as a threshold, or the sentence why they cannot. */
export function LightReadingsForm({ job, device }: { readonly job: OpenJob; readonly device: string }) {
  const kept = inFile(job, device)?.lightReadings;
  const [draft, setDraft] = useState(() => draftOf(kept));
  const inJob = JSON.stringify(kept);
  const [seen, setSeen] = useState(inJob);
  // What the job holds was changed from elsewhere, by undo above all: the form begins anew with it.
  if (inJob !== seen) {
    setSeen(inJob);
    if (inJob !== JSON.stringify(readingsIn(draft))) setDraft(draftOf(kept));
  }
  const change = (part: Partial<Draft>): void => setDraft((before) => ({ ...before, ...part }));
  const readings = readingsIn(draft);
  const room = job.site.detectors.find(({ id }) => id === device)?.room ?? "";
  return (
    <More word={t("set.readings")} open={kept !== undefined}>
      <div className="stack">
        <p className="hint">{t("set.readings.hint")}</p>
        <div className="fields">
          <FigureField
            label={t("set.readings.target")}
            value={draft.target}
            least={1}
            most={100_000}
            unit="lx"
            onChange={(target) => change({ target })}
            onClear={() => change({ target: undefined })}
          />
        </div>
        {draft.lampsOff.map((pair, at) => (
          <PairFields
            // biome-ignore lint/suspicious/noArrayIndexKey: pairs have no name but their place
            key={at}
            word={t("set.readings.lamps-off", { number: at + 1 })}
            pair={pair}
            onChange={(next) => change({ lampsOff: draft.lampsOff.map((one, i) => (i === at ? next : one)) })}
          />
        ))}
        <PairFields
          word={t("set.readings.lamps-on")}
          pair={draft.lampsOn}
          onChange={(lampsOn) => change({ lampsOn })}
        />
        <Tick on={draft.sunPatch} onChange={(sunPatch) => change({ sunPatch })}>
          {t("set.readings.sun")}
        </Tick>
        <div className="row">
          <Button
            className="button"
            isDisabled={readings === undefined}
            onPress={() => keepOn(job, device, { lightReadings: readings })}
          >
            {t("set.readings.use")}
          </Button>
          <Button
            className="button button-quiet"
            onPress={() => change({ lampsOff: [...draft.lampsOff, {}] })}
          >
            {t("set.readings.add")}
          </Button>
          {kept ? (
            <Button
              className="button button-quiet"
              onPress={() => keepOn(job, device, { lightReadings: undefined })}
            >
              {t("set.readings.forget")}
            </Button>
          ) : null}
        </div>
        {kept ? <Result read={readThreshold(nameOf(job.site, { kind: "rooms", id: room }), kept)} /> : null}
      </div>
    </More>
  );
}

function PairFields({
  word,
  pair,
  onChange,
}: {
  readonly word: string;
  readonly pair: PairDraft;
  readonly onChange: (pair: PairDraft) => void;
}) {
  const field = (name: keyof PairDraft) => (
    <FigureField
      label={t(`set.readings.${name}`)}
      value={pair[name]}
      least={0}
      most={200_000}
      unit="lx"
      onChange={(value) => onChange({ ...pair, [name]: value })}
      onClear={() => onChange({ ...pair, [name]: undefined })}
    />
  );
  return (
    <fieldset className="plain-set">
      <legend className="field-label">{word}</legend>
      <div className="fields">
        {field("ceiling")}
        {field("task")}
      </div>
    </fieldset>
  );
}

function Result({ read }: { readonly read: ReadThreshold }) {
  if ("problems" in read)
    return (
      <Say severity="must">
        {read.problems.map((problem) => (
          <p key={problem.code}>{sentenceOf(problem)}</p>
        ))}
      </Say>
    );
  const { on, off, spread, notes } = read;
  return (
    <Say severity="note">
      <p>{t("set.readings.result", { on: numberText(Math.round(on)) })}</p>
      <p>
        {off === undefined
          ? t("set.readings.result-off-unknown")
          : t("set.readings.result-off", { off: numberText(Math.round(off)) })}
      </p>
      {spread > 0.005 ? <p>{t("set.readings.spread", { spread: percentText(spread) })}</p> : null}
      {notes.map((note) => (
        <p key={note.code} className="hint">
          {sentenceOf(note)}
        </p>
      ))}
    </Say>
  );
}
