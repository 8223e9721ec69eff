import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import { roomAt } from "../../plan/pick.ts";
import { toPoint } from "../../plan/view.ts";
import { usePart } from "../../shell/workbench.ts";
import { t } from "../../texts/index.ts";
import type { SurveyPanelProps } from "../panel.ts";
import { NoteFields } from "./note-fields.tsx";
import "./notes.css";

/** Notes and photographs, each where it belongs on the plan. */
export function NotesPanel({ job, store, onClose }: SurveyPanelProps) {
  const storey = usePart(store, (bench) => bench.storey);
  const [placing, setPlacing] = useState<string | undefined>();
  const notes = job.kept.notes.filter((note) => note.storey === storey);
  useEffect(() => {
    const plan = document.querySelector<HTMLElement>(".plan");
    if (placing === undefined || !plan) return;
    const put = (event: PointerEvent): void => {
      if (event.button !== 0) return;
      event.stopPropagation();
      event.preventDefault();
      const box = plan.getBoundingClientRect();
      const { view, job: now } = store.get();
      const [x, y] = toPoint(view, { px: event.clientX - box.left, py: event.clientY - box.top });
      const at: [number, number] = [Math.round(x * 100) / 100, Math.round(y * 100) / 100];
      const room = roomAt(now.site, storey, at)?.id;
      now.keep("notes.place", [{ do: "set", kind: "notes", id: placing, fields: { at, room } }]);
      setPlacing(undefined);
    };
    // Before the plan itself hears of the press.
    plan.addEventListener("pointerdown", put, { capture: true });
    return () => plan.removeEventListener("pointerdown", put, { capture: true });
  }, [placing, store, storey]);
  const add = (): void => {
    const { view } = store.get();
    const at: [number, number] = [Math.round(view.x * 100) / 100, Math.round(view.y * 100) / 100];
    const id = job.newId("notes");
    job.keep("notes.add", [{ do: "put", kind: "notes", record: { id, storey, at, text: "", photos: [] } }]);
    setPlacing(id);
  };
  return (
    <div className="stack">
      <div className="row row-apart">
        <h2 className="panel-title">{t("shell.panel.notes")}</h2>
        <Button className="button" onPress={onClose}>
          {t("shell.close")}
        </Button>
      </div>
      {notes.length === 0 ? <p className="hint">{t("notes.none")}</p> : null}
      {placing === undefined ? null : (
        <p className="hint" role="status">
          {t("notes.place.how")}
        </p>
      )}
      {notes.map((note, index) => (
        <NoteFields
          key={note.id}
          job={job}
          note={note}
          number={index + 1}
          placing={placing === note.id}
          onPlace={() => setPlacing(placing === note.id ? undefined : note.id)}
        />
      ))}
      {job.readOnly ? null : (
        <Button className="button button-first" onPress={add}>
          {t("notes.add")}
        </Button>
      )}
    </div>
  );
}
