import type { Check } from "#engine";
import { english, sources, sourceTitle } from "#engine";
import { More } from "../fields/index.ts";
import { useUnits } from "../settings/preferences.ts";
import { areaText, lengthText, numberText, spoken, t, type Units } from "../texts/index.ts";
import "./findings.css";

/** Why a finding was made: what was found, the limit, where the limit comes from, and what was assumed. */
export function Evidence({ checks }: { readonly checks: readonly Check[] }) {
  const units = useUnits();
  if (checks.length === 0) return null;
  return (
    <More word={t("findings.why")}>
      <div className="stack">
        {checks.map((check) => (
          <dl key={`${english(check.what)} ${check.source}`} className="evidence">
            <dt>{spoken(check.what)}</dt>
            <dd>
              {figureText(check.actual, check.unit, units)}{" "}
              <span className="hint">
                {check.limit === undefined
                  ? ""
                  : t("findings.limit", { limit: figureText(check.limit, check.unit, units) })}
              </span>{" "}
              <strong>{t(`findings.verdict.${check.verdict}`)}</strong>
            </dd>
            <dt>{t("findings.source")}</dt>
            <dd>
              {sourceText(check)} {sources[check.source].verify ? <VerifyMark /> : null}
            </dd>
            {check.assumptions.length > 0 ? (
              <>
                <dt>{t("findings.assumed")}</dt>
                {check.assumptions.map((assumption) => (
                  <dd key={english(assumption)}>{spoken(assumption)}</dd>
                ))}
              </>
            ) : null}
          </dl>
        ))}
      </div>
    </More>
  );
}

/** Beside every value that is from memory or weakly founded. */
export function VerifyMark() {
  return <span className="verify">{t("findings.verify")}</span>;
}

function sourceText({ source }: Check): string {
  const { edition, clause } = sources[source];
  return [spoken(sourceTitle(source)), edition, clause].filter((part) => part !== undefined).join(", ");
}

function figureText(figure: number | undefined, unit: string, units: Units): string {
  if (figure === undefined) return t("findings.unknown");
  if (unit === "m") return lengthText(figure, units);
  if (unit === "m²") return areaText(figure, units);
  return unit === "" ? numberText(figure) : `${numberText(figure)} ${unit}`;
}
