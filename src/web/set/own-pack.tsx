import { useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import type { PackStanding, Problem } from "#engine";
import type { OpenJob } from "../contract.ts";
import { Problems, Say } from "../fields/index.ts";
import { t } from "../texts/set.ts";

/** The code that a pack says of itself, whatever else is wrong with it. */
function codeIn(text: string): string | undefined {
  try {
    return (JSON.parse(text) as { readonly code?: string }).code;
  } catch {
    return undefined;
  }
}

/** Takes a firm's own pack out of the job, with the switch that belonged to it. */
export function takeOut(job: OpenJob, code: string): void {
  const { ownRules = [], rulesOn = [], rulesOff = [] } = job.file.details;
  job.setRules({
    ownRules: ownRules.filter((text) => codeIn(text) !== code),
    rulesOn: rulesOn.filter((one) => one !== code),
    rulesOff: rulesOff.filter((one) => one !== code),
  });
}

/** Takes a file of one's own rules into the job, or says what is wrong with it and where. */
export function OwnPack({ job, packs }: { readonly job: OpenJob; readonly packs: readonly PackStanding[] }) {
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const take = async (files: FileList | null): Promise<void> => {
    const file = files?.[0];
    if (!file) return;
    const text = await file.text();
    const { readRulePacks } = await import("#exchange");
    const read = readRulePacks(
      [text],
      packs.map(({ pack }) => pack.code),
    );
    setProblems(read.problems);
    if (read.problems.length === 0) job.setRules({ ownRules: [...(job.file.details.ownRules ?? []), text] });
  };
  return (
    <div className="stack">
      <FileTrigger acceptedFileTypes={[".json"]} onSelect={(files) => void take(files)}>
        <Button className="button set-back">{t("set.rules.own")}</Button>
      </FileTrigger>
      <p className="hint">{t("set.rules.own.hint")}</p>
      {problems.length > 0 ? (
        <Say severity="must" live>
          <Problems of={problems.slice(0, 5)} />
        </Say>
      ) : null}
    </div>
  );
}
