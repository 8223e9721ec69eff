import { useState } from "react";
import { Button } from "react-aria-components";
import { usePart } from "../../shell/workbench.ts";
import { t } from "../../texts/visit.ts";
import type { SurveyPanelProps } from "../panel.ts";
import { ListPaste } from "../rooms/list-paste.tsx";
import { Asbestos, CallSheet } from "./call-sheet.tsx";
import { Installation } from "./installation.tsx";
import { ToldRooms } from "./told-rooms.tsx";
import "./visit.css";

/** What one asks before the visit, and what was found on site. */
export function VisitPanel({ job, store, actions, onClose }: SurveyPanelProps) {
  const storey = usePart(store, (bench) => bench.storey);
  const [listing, setListing] = useState(false);
  const made = (rooms: readonly string[]): void => {
    setListing(false);
    const first = store.get().job.site.rooms.find(({ id }) => id === rooms[0]);
    if (!first) return;
    store.set({ storey: first.storey, selection: rooms.map((id) => ({ kind: "rooms", id })) });
    actions.showAll();
  };
  if (listing) return <ListPaste job={job} storey={storey} onDone={made} doubt={t("visit.told.doubt")} />;
  return (
    <div className="stack visit">
      <div className="row row-apart">
        <h2 className="panel-title">{t("shell.panel.visit")}</h2>
        <Button className="button" onPress={onClose}>
          {t("shell.close")}
        </Button>
      </div>
      <ToldRooms job={job} storey={storey} onList={() => setListing(true)} onMade={made} />
      <CallSheet job={job} />
      <Asbestos job={job} />
      <Installation job={job} />
    </div>
  );
}
