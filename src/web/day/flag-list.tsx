import { useState } from "react";
import { Button } from "react-aria-components";
import { SeverityMark } from "../fields/index.ts";
import { t } from "../texts/day.ts";
import { remedyOf } from "../texts/problems.ts";
import { type DayFlag, flagWords } from "./day-flags.ts";

/** So many of a kind are listed before one asks for all. */
const first = 4;

/** What stands out, in words; a press goes there. */
export function FlagList({
  flags,
  onFlag,
}: {
  readonly flags: readonly DayFlag[];
  readonly onFlag: (index: number) => void;
}) {
  if (flags.length === 0) return <p role="status">{t("day.flags.none")}</p>;
  const kinds = [...new Set(flags.map(({ kind }) => kind))];
  return (
    <div className="stack" role="status">
      {kinds.map((kind) => (
        <FlagsOfKind key={kind} kind={kind} flags={flags} onFlag={onFlag} />
      ))}
    </div>
  );
}

function FlagsOfKind({
  kind,
  flags,
  onFlag,
}: {
  readonly kind: DayFlag["kind"];
  readonly flags: readonly DayFlag[];
  readonly onFlag: (index: number) => void;
}) {
  const [all, setAll] = useState(false);
  const own = flags.map((flag, index) => ({ flag, index })).filter(({ flag }) => flag.kind === kind);
  const shown = all ? own : own.slice(0, first);
  return (
    <div className="day-flags-of">
      <p>
        <SeverityMark severity={own[0]!.flag.severity} />{" "}
        <span>{t(`day.flags.${kind}`, { count: own.length })}</span>
      </p>
      <ol className="day-flag-list">
        {shown.map(({ flag, index }) => (
          <li key={index}>
            <Button className="button button-quiet day-flag-go" onPress={() => onFlag(index)}>
              {flagWords(flag)}
            </Button>
          </li>
        ))}
      </ol>
      {own.length > shown.length ? (
        <Button className="button" onPress={() => setAll(true)}>
          {t("day.flags.all", { count: own.length })}
        </Button>
      ) : null}
      <p className="hint">
        {kind === "holds" ? t("day.flags.holds.remedy") : remedyOf({ code: kind, values: {} })}
      </p>
    </div>
  );
}
