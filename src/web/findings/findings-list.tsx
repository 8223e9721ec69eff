import { useEffect, useRef, useState } from "react";
import { Button } from "react-aria-components";
import type { Finding, Severity } from "#engine";
import type { FindingsListProps } from "../contract.ts";
import { Choice, SeverityMark } from "../fields/index.ts";
import { t } from "../texts/index.ts";
import { inWords } from "../texts/told.ts";
import { Evidence } from "./evidence.tsx";
import type { Remedy } from "./remedy.ts";
import { remedyActions } from "./remedy-actions.ts";
import "./findings.css";

const severities: readonly Severity[] = ["must", "should", "note"];

/** Everything that needs attention, numbered like the flags on the plan, with a button where the program can mend it. */
export function FindingsList(props: FindingsListProps) {
  const { job, findings, current, onShow, onOpen, onPlace, onClose } = props;
  const [only, setOnly] = useState<Severity | "all">("all");
  const list = useRef<HTMLOListElement>(null);
  // A flag that is touched on the plan brings its finding into sight.
  useEffect(() => {
    if (current !== undefined)
      list.current?.querySelector('[aria-current="true"]')?.scrollIntoView({ block: "nearest" });
  }, [current]);
  const counts = new Map(
    severities.map((severity) => [severity, findings.filter((one) => one.severity === severity).length]),
  );
  const shown = findings.flatMap((finding, index) =>
    only === "all" || finding.severity === only ? [{ finding, index }] : [],
  );
  const take = (remedy: Remedy) => {
    if (remedy.do === "place") onPlace(remedy.room);
    else job.edit(remedy.word, remedy.steps);
  };
  return (
    <div className="findings stack">
      <div className="row row-apart">
        <h2 className="findings-title">{t("findings.title")}</h2>
        <Button className="button button-quiet" onPress={onClose}>
          {t("findings.close")}
        </Button>
      </div>
      {findings.length === 0 ? (
        <p>{t("findings.none")}</p>
      ) : (
        <Choice
          label={t("findings.show-only")}
          value={only}
          onChange={setOnly}
          options={[
            { value: "all" as const, word: t("findings.all", { count: findings.length }) },
            ...severities
              .filter((severity) => (counts.get(severity) ?? 0) > 0)
              .map((severity) => ({
                value: severity,
                word: `${t(`severity.${severity}`)} ${counts.get(severity)}`,
              })),
          ]}
        />
      )}
      <ol ref={list} className="findings-list">
        {shown.map(({ finding, index }) => (
          <li
            key={`${finding.code} ${finding.records.join(" ")} ${index}`}
            className="finding"
            aria-current={index === current}
          >
            <Item
              finding={finding}
              number={index + 1}
              remedies={remediesOf(finding, job)}
              onShow={() => onShow(index)}
              {...(onOpen && !job.readOnly ? { onOpen: () => onOpen(index) } : {})}
              onTake={take}
            />
          </li>
        ))}
      </ol>
    </div>
  );
}

const remediesOf = (finding: Finding, { site, readOnly }: FindingsListProps["job"]): readonly Remedy[] =>
  readOnly
    ? []
    : (remedyActions[finding.code]?.(finding, site) ?? []).filter((remedy) => remedy !== undefined);

interface ItemProps {
  readonly finding: Finding;
  /** As on the flag. */
  readonly number: number;
  readonly remedies: readonly Remedy[];
  readonly onShow: () => void;
  readonly onOpen?: () => void;
  readonly onTake: (remedy: Remedy) => void;
}

function Item({ finding, number, remedies, onShow, onOpen, onTake }: ItemProps) {
  const { message, remedy } = inWords(finding);
  const findable = finding.at !== undefined || finding.records.length > 0 || finding.room !== undefined;
  return (
    <>
      <span className={`finding-number finding-${finding.severity}`} aria-hidden="true">
        {number}
      </span>
      <div className="finding-body">
        <SeverityMark severity={finding.severity} />
        <p>{message}</p>
        <p className="hint">{remedy}</p>
        <Evidence checks={finding.evidence} />
        <div className="row">
          {findable ? (
            <Button className="button" onPress={onShow}>
              {t(finding.code.endsWith("-gap") ? "findings.show-gap" : "findings.show")}
              <span className="unseen"> {number}</span>
            </Button>
          ) : null}
          {onOpen && finding.records.length > 0 ? (
            <Button className="button" onPress={onOpen}>
              {t("findings.open")}
              <span className="unseen"> {number}</span>
            </Button>
          ) : null}
          {remedies.map((remedy) => (
            <Button key={remedy.word} className="button" onPress={() => onTake(remedy)}>
              {t(remedy.word)}
            </Button>
          ))}
        </div>
      </div>
    </>
  );
}
