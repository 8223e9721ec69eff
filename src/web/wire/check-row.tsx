import { Button, Disclosure, DisclosurePanel, Heading } from "react-aria-components";
import type { Check } from "#engine";
import { distinct, english, sources, sourceTitle } from "#engine";
import { VerifyMark } from "../findings/evidence.tsx";
import { useUnits } from "../settings/preferences.ts";
import { spoken } from "../texts/index.ts";
import { t } from "../texts/wire.ts";
import { amountText } from "./wire-figures.ts";

/** One check: what, how much of how much, whether it holds; opened: where the limit comes from, and what was assumed. */
export function CheckRow({ check }: { readonly check: Check }) {
  const units = useUnits();
  const { edition, clause, verify } = sources[check.source];
  return (
    <Disclosure className="wire-check">
      <Heading level={5}>
        <Button slot="trigger" className="line-button wire-check-trigger">
          <span className="wire-check-what">{spoken(check.what)}</span>
          <span className="wire-check-figure">
            {check.actual === undefined ? t("fields.unknown") : amountText(check.actual, check.unit, units)}
            {check.limit === undefined ? null : (
              <span className="hint">
                {" "}
                {t("wire.of-limit", { limit: amountText(check.limit, check.unit, units) })}
              </span>
            )}
          </span>
          <span className={`wire-verdict wire-verdict-${check.verdict}`}>
            {t(`findings.verdict.${check.verdict}`)}
          </span>
        </Button>
      </Heading>
      <DisclosurePanel className="wire-check-panel">
        <p>
          <span className="hint">{t("wire.check.source")}</span>{" "}
          {[spoken(sourceTitle(check.source)), edition, clause]
            .filter((part) => part !== undefined)
            .join(", ")}{" "}
          {verify ? <VerifyMark /> : null}
        </p>
        {check.assumptions.length > 0 ? (
          <ul className="wire-assumed hint">
            {distinct(check.assumptions).map((assumption) => (
              <li key={english(assumption)}>{spoken(assumption)}</li>
            ))}
          </ul>
        ) : null}
      </DisclosurePanel>
    </Disclosure>
  );
}
