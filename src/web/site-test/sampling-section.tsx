import {
  resultOfDevice,
  type SampleState,
  type SamplingRule,
  sampleStates,
  samplingRules,
  sources,
  type WorkState,
} from "#engine";
import type { SettingsKnown } from "../calculate/set-protocol.ts";
import type { OpenJob } from "../contract.ts";
import { More, Pick } from "../fields/index.ts";
import { recordOf } from "../plan/pick.ts";
import { spoken } from "../texts/index.ts";
import { t } from "../texts/test.ts";
import { VerdictWord } from "./verdict-word.tsx";

interface SamplingSectionProps {
  readonly job: OpenJob;
  readonly state: WorkState;
  readonly settings: SettingsKnown | undefined;
}

/** Codes that allow a sample, by the packs of rules that are on. */
const packOf: Readonly<Record<SamplingRule["id"], RegExp>> = { iecc: /^iecc-/, "title-24": /^title-24-/ };
const rules = Object.keys(samplingRules) as readonly SamplingRule["id"][];

/** Which detectors a code has tested, where the job is in its region; all of them everywhere else. */
export function SamplingSection({ job, state, settings }: SamplingSectionProps) {
  const chosen = job.file.details.sampling;
  const on = (settings?.packs ?? []).filter((standing) => standing.on).map(({ pack }) => pack.code);
  const offered = rules.filter((rule) => rule === chosen || on.some((code) => packOf[rule].test(code)));
  if (offered.length === 0) return null;
  const choose = (rule: string): void =>
    job.keep("test.edit.sampling", [
      {
        do: "details",
        fields: { sampling: rules.find((one) => one === rule) },
      },
    ]);
  const groups =
    chosen === undefined
      ? []
      : sampleStates(job.site, { rule: chosen, resultOf: (device) => resultOfDevice(state, device) });
  return (
    <section className="stack" aria-label={t("test.sampling")}>
      <h3 className="test-stage">{t("test.sampling")}</h3>
      <Pick
        label={t("test.sampling.which")}
        value={chosen ?? ""}
        options={[
          { value: "", word: t("test.sampling.all") },
          ...offered.map((rule) => ({ value: rule, word: t(`test.sampling.${rule}`) })),
        ]}
        onChange={choose}
      />
      {chosen !== undefined && sources[samplingRules[chosen].source].verify ? (
        <p className="hint">{t("test.sampling.verify")}</p>
      ) : null}
      {groups.map((group) => (
        <Group key={group.devices.join(" ")} job={job} group={group} state={state} />
      ))}
    </section>
  );
}

function Group({
  job,
  group,
  state,
}: {
  readonly job: OpenJob;
  readonly group: SampleState;
  readonly state: WorkState;
}) {
  const { combination, devices, asked, escalated, failed } = group;
  const tag = (id: string): string => recordOf(job.site, "detectors", id)?.tag || id;
  const open = asked.filter((id) => resultOfDevice(state, id) === "open");
  const rest = devices.filter((id) => !asked.includes(id));
  return (
    <div className="test-sample">
      <p>
        <strong>{t("test.sampling.asked", { asked: asked.length, all: devices.length })}</strong>
        <span className="hint test-of">{spoken(combination)}</span>
      </p>
      {failed > 0 ? (
        <VerdictWord verdict="fail" />
      ) : open.length === 0 ? (
        <VerdictWord verdict="pass" />
      ) : null}
      <p className="test-sample-tags">
        {open.length > 0
          ? t("test.sampling.open", { tags: open.map(tag).join(", ") })
          : t("test.sampling.done")}
        {escalated ? <span className="test-of test-word-fail">{t("test.sampling.escalated")}</span> : null}
      </p>
      {rest.length > 0 ? (
        <More word={t("test.sampling.rest", { count: rest.length })}>
          <p className="hint">{rest.map(tag).join(", ")}</p>
        </More>
      ) : null}
    </div>
  );
}
