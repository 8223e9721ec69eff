import { t } from "../../texts/index.ts";
import type { SurveyPanelProps } from "../panel.ts";

/** All rooms of the job as rows. */
export function RoomsTable({ job }: SurveyPanelProps) {
  return (
    <ul className="stack">
      {job.site.rooms.map((room) => (
        <li key={room.id}>{`${room.number} ${room.name}`.trim() || t("name.room")}</li>
      ))}
    </ul>
  );
}
