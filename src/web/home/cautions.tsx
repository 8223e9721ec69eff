import { More } from "../fields/index.ts";
import { t } from "../texts/index.ts";

/** What the program is and what it is not, in few words. */
export function Cautions() {
  return (
    <footer className="home-cautions">
      <p className="hint">{t("home.cautions.short")}</p>
      <More word={t("home.cautions.more")}>
        <ul className="hint">
          <li>{t("home.cautions.licensed")}</li>
          <li>{t("home.cautions.dead")}</li>
          <li>{t("home.cautions.judgement")}</li>
          <li>{t("home.cautions.isolation")}</li>
          <li>{t("home.cautions.never")}</li>
          <li>{t("home.cautions.verify")}</li>
        </ul>
      </More>
    </footer>
  );
}
