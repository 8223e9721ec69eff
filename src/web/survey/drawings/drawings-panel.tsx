import { t } from "../../texts/index.ts";
import type { SurveyPanelProps } from "../panel.ts";

/** Drawings and pictures that lie under the plan. */
export function DrawingsPanel({ job }: SurveyPanelProps) {
  const { underlays } = job.kept;
  if (underlays.length === 0) return <p>{t("drawings.none")}</p>;
  return (
    <ul className="stack">
      {underlays.map(({ id, name, file }) => (
        <li key={id}>{name || file}</li>
      ))}
    </ul>
  );
}
