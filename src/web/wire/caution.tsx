import { More, Say } from "../fields/index.ts";
import { t } from "../texts/wire.ts";

/** What comes before any work on the installation: one line that is always there, the rest behind it. */
export function Caution() {
  return (
    <Say severity="must">
      <p>{t("wire.caution.short")}</p>
      <More word={t("wire.caution.more")}>
        <ul className="wire-cautions hint">
          <li>{t("home.cautions.dead")}</li>
          <li>{t("wire.caution.back")}</li>
          <li>{t("home.cautions.isolation")}</li>
          <li>{t("home.cautions.never")}</li>
          <li>{t("wire.caution.judgement")}</li>
          <li>{t("home.cautions.verify")}</li>
        </ul>
      </More>
    </Say>
  );
}
