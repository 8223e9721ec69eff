import { t } from "../../texts/index.ts";
import type { SurveyPanelProps } from "../panel.ts";

/** Notes and photographs, each where it belongs on the plan. */
export function NotesPanel({ job }: SurveyPanelProps) {
  const { notes } = job.kept;
  if (notes.length === 0) return <p>{t("notes.none")}</p>;
  return (
    <ul className="stack">
      {notes.map(({ id, text }) => (
        <li key={id}>{text}</li>
      ))}
    </ul>
  );
}
