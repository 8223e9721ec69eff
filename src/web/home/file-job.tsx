import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import type { Problem } from "#engine";
import type { FileJob, MergedCopy } from "../contract.ts";
import { intoView, Problems, Say } from "../fields/index.ts";
import { t } from "../texts/copies.ts";

interface FileJobCardProps {
  readonly file: string;
  readonly job: FileJob;
  readonly onOpen: (id: string) => void;
  readonly onTrouble: (trouble: unknown) => void;
  readonly onRefused: (problems: readonly Problem[]) => void;
  /** The list of jobs is another now. */
  readonly onChanged: () => void;
  readonly onDrop: () => void;
}

/** A job that was read from a file: a copy of one that is here is merged into it, or opened apart. */
export function FileJobCard(props: FileJobCardProps) {
  const { file, job, onOpen, onTrouble, onRefused, onChanged, onDrop } = props;
  const [merged, setMerged] = useState<MergedCopy | undefined>();
  useEffect(() => () => void merged?.close(), [merged]);
  const { copyOf } = job;
  const merge = async (): Promise<void> => {
    const outcome = await job.merge();
    if ("problems" in outcome) return onRefused(outcome.problems);
    setMerged(outcome);
    onChanged();
  };
  const name = copyOf?.name || t("home.jobs.unnamed");
  if (merged && copyOf)
    return (
      <div className="home-report stack" role="status" ref={intoView}>
        <h3 className="home-subhead">{t("copy.merged", { file, name })}</h3>
        <MergedCount merged={merged} />
        <Notes notes={merged.notes} />
        <div className="row">
          <Button className="button button-first" onPress={() => onOpen(copyOf.id)}>
            {t("copy.merged.open")}
          </Button>
          {merged.how === "nothing-new" ? null : (
            <Button
              className="button"
              onPress={() =>
                void merged.undo().then(() => {
                  onChanged();
                  onDrop();
                }, onTrouble)
              }
            >
              {t("copy.merged.undo")}
            </Button>
          )}
        </div>
      </div>
    );
  return (
    <div className="home-report stack" role="status" ref={intoView}>
      <h3 className="home-subhead">{t("copy.read", { file })}</h3>
      <Notes notes={job.notes} />
      {copyOf ? <p>{t("copy.here", { name })}</p> : null}
      <div className="row">
        {copyOf ? (
          <>
            <Button className="button button-first" onPress={() => void merge().catch(onTrouble)}>
              {t("copy.merge")}
            </Button>
            <Button className="button" onPress={() => void job.keepApart().then(onOpen, onTrouble)}>
              {t("copy.apart")}
            </Button>
          </>
        ) : (
          <Button className="button button-first" onPress={() => void job.keep().then(onOpen, onTrouble)}>
            {t("copy.begin")}
          </Button>
        )}
        <Button className="button button-quiet" onPress={onDrop}>
          {t("copy.leave")}
        </Button>
      </div>
    </div>
  );
}

function MergedCount({ merged: { how, count } }: { readonly merged: MergedCopy }) {
  if (how === "nothing-new") return <p>{t("copy.merged.nothing")}</p>;
  return (
    <ul className="home-figures">
      {(["added", "changed", "removed"] as const)
        .filter((what) => count[what] > 0)
        .map((what) => (
          <li key={what}>{t(`copy.merged.${what}`, { count: count[what] })}</li>
        ))}
      {count.head ? <li>{t("copy.merged.head")}</li> : null}
    </ul>
  );
}

const Notes = ({ notes }: { readonly notes: readonly Problem[] }) =>
  notes.length === 0 ? null : (
    <Say severity="should">
      <Problems of={notes} />
    </Say>
  );
