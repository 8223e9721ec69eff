import { Button, Disclosure, DisclosurePanel, Heading } from "react-aria-components";
import { SeverityShape } from "../fields/index.ts";
import { t } from "../texts/wire.ts";

/** What comes before any work on the installation: one line that is always there, the rest behind it. */
export function Caution() {
  return (
    <Disclosure className="wire-caution">
      <Heading level={3}>
        <Button slot="trigger" className="line-button wire-caution-trigger">
          <SeverityShape severity="must" />
          <span>{t("wire.caution.short")}</span>
          <svg viewBox="0 0 12 12" aria-hidden="true" className="more-sign">
            <path d="M4 2l4 4-4 4" />
          </svg>
        </Button>
      </Heading>
      <DisclosurePanel className="wire-caution-panel">
        <ul className="wire-cautions hint">
          <li>{t("home.cautions.dead")}</li>
          <li>{t("wire.caution.back")}</li>
          <li>{t("home.cautions.isolation")}</li>
          <li>{t("home.cautions.never")}</li>
          <li>{t("wire.caution.judgement")}</li>
          <li>{t("home.cautions.verify")}</li>
        </ul>
      </DisclosurePanel>
    </Disclosure>
  );
}
