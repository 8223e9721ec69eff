import { t } from "../../texts/index.ts";
import type { SurveyPanelProps } from "../panel.ts";

/** What one asks before the visit, and what was found on site. */
export function VisitPanel({ job }: SurveyPanelProps) {
  return <p>{job.kept.visit.complaint ?? t("visit.none")}</p>;
}
