import { useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { differencesOf, handedState, nextLetter } from "#engine";
import { installationOf } from "#job";
import type { OpenJob } from "../contract.ts";
import { More, TextBox } from "../fields/index.ts";
import { useUnits } from "../settings/preferences.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { localDay } from "../site-test/local-time.ts";
import { tester } from "../site-test/tester.ts";
import { t } from "../texts/hand-over.ts";
import { dayText } from "../texts/index.ts";
import { type DifferenceLines, differenceLines } from "./difference-words.ts";

/** Differences that are shown without asking. */
const shownFirst = 8;

/** What was handed over when, what was changed since, and the next revision. */
export function RevisionsSection({
  job,
  store,
}: {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
}) {
  const units = useUnits();
  const { settings } = usePart(store, (bench) => ({ settings: bench.settings }));
  const [reason, setReason] = useState("");
  const { site, kept, file } = job;
  const { revisions } = kept;
  const last = revisions.at(-1);
  const now = useMemo(
    () => settings && handedState(site, { settings, found: installationOf(file) }),
    [site, settings, file],
  );
  const lines = useMemo(
    () =>
      last?.state && now
        ? differencesOf(last.state, now).map((difference) => differenceLines(difference, units))
        : undefined,
    [last, now, units],
  );
  const letter = nextLetter(revisions.map((one) => one.letter));
  const issue = (): void => {
    if (!now) return;
    const by = tester().name || job.details.drawnBy;
    const date = localDay(new Date());
    job.keep("hand-over.edit.revision", [
      {
        do: "put",
        kind: "revisions",
        record: {
          id: job.newId("revisions"),
          letter,
          date,
          ...(by === "" ? {} : { by }),
          reason: reason || (last ? "" : t("hand-over.revision.first")),
          state: now as never,
        },
      },
      { do: "details", fields: { revision: letter, date } },
    ]);
    setReason("");
    store.set({ notice: t("hand-over.revision.issued", { letter }) });
  };
  const nothing = last?.state !== undefined && lines?.length === 0;
  return (
    <section className="stack" aria-label={t("hand-over.revisions")}>
      <h3 className="hand-over-head">{t("hand-over.revisions")}</h3>
      {last ? (
        <ul className="hand-over-list">
          {revisions.map((one) => (
            <li key={one.id}>
              <strong>{one.letter}</strong>{" "}
              {[dayText(one.date), one.by, one.reason].filter(Boolean).join(" · ")}
            </li>
          ))}
        </ul>
      ) : (
        <p className="hint">{t("hand-over.revision.none")}</p>
      )}
      {!now ? (
        <p className="hint" role="status">
          {t("hand-over.revision.waits")}
        </p>
      ) : last === undefined ? null : lines === undefined ? (
        <p>{t("hand-over.revision.unknown", { letter: last.letter })}</p>
      ) : lines.length === 0 ? (
        <p>{t("hand-over.revision.same", { letter: last.letter })}</p>
      ) : (
        <Changes lines={lines} letter={last.letter} />
      )}
      {job.readOnly || nothing ? null : (
        <>
          <TextBox
            label={t("hand-over.revision.reason")}
            value={reason}
            placeholder={last ? "" : t("hand-over.revision.first")}
            onChange={setReason}
          />
          <Button className="button wide-button" isDisabled={!now} onPress={issue}>
            {t(last ? "hand-over.revision.issue" : "hand-over.revision.hand-over", { letter })}
          </Button>
        </>
      )}
    </section>
  );
}

function Changes({ lines, letter }: { readonly lines: readonly DifferenceLines[]; readonly letter: string }) {
  const rest = lines.slice(shownFirst);
  return (
    <div className="stack">
      <p>
        <strong>{t("hand-over.revision.changed", { count: lines.length, letter })}</strong>
      </p>
      <ChangeList lines={lines.slice(0, shownFirst)} />
      {rest.length > 0 ? (
        <More word={t("hand-over.revision.others", { count: rest.length })}>
          <ChangeList lines={rest} />
        </More>
      ) : null}
    </div>
  );
}

const ChangeList = ({ lines }: { readonly lines: readonly DifferenceLines[] }) => (
  <ul className="hand-over-changes">
    {lines.map(({ key, thing, lines: changes }) => (
      <li key={key}>
        <span>{thing}</span>
        {changes.map((change) => (
          <span key={change} className="hint">
            {change}
          </span>
        ))}
      </li>
    ))}
  </ul>
);
