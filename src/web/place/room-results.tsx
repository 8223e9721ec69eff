import { useState } from "react";
import { Button } from "react-aria-components";
import type { Layout, Room, Site } from "#engine";
import { SeverityMark, SeverityShape } from "../fields/index.ts";
import { t } from "../texts/place.ts";
import { measuredShort } from "./measured-against.ts";
import { RoomResult } from "./room-result.tsx";
import type { RoomRun } from "./room-run.ts";

interface RoomResultsProps {
  readonly site: Site;
  readonly rooms: readonly Room[];
  readonly runs: ReadonlyMap<string, RoomRun>;
  readonly models: readonly string[];
  readonly chosen: ReadonlyMap<string, number>;
  readonly onChoose: (room: string, index: number) => void;
  readonly onPreview: (room: string, layout: Layout | undefined) => void;
}

/** Every room of a run in one list; a press shows a room's layouts and draws them on the plan. */
export function RoomResults({ site, rooms, runs, models, chosen, onChoose, onPreview }: RoomResultsProps) {
  const [open, setOpen] = useState<string | undefined>();
  const layoutsOf = (room: string): readonly Layout[] => {
    const run = runs.get(room);
    return run?.state === "done" && run.result.best !== undefined
      ? [run.result.best, ...run.result.alternatives]
      : [];
  };
  const inPlay = site.models.filter(({ id }) => models.includes(id));
  const total = rooms.reduce(
    (sum, { id }) => sum + (layoutsOf(id)[chosen.get(id) ?? 0]?.devices.length ?? 0),
    0,
  );
  const proved = rooms.filter(({ id }) => {
    const run = runs.get(id);
    return run?.state === "done" && run.result.fewest;
  }).length;
  return (
    <div className="stack">
      <div role="status">
        <p className="place-count">{t("count.detectors", { count: total })}</p>
        <p className="hint">{t("place.rooms-fewest", { proved, count: rooms.length })}</p>
      </div>
      <ul className="place-rooms">
        {rooms.map((room) => {
          const run = runs.get(room.id);
          const shown = open === room.id;
          return (
            <li key={room.id} className="place-room">
              <Button
                className="place-room-open"
                aria-expanded={shown}
                onPress={() => {
                  if (open !== undefined) onPreview(open, undefined);
                  setOpen(shown ? undefined : room.id);
                  if (!shown) onPreview(room.id, layoutsOf(room.id)[chosen.get(room.id) ?? 0]);
                }}
              >
                <span className="place-room-name">
                  {[room.number, room.name].filter((part) => part !== "").join(" ")}
                </span>
                <RoomState run={run} models={inPlay} />
              </Button>
              {shown ? (
                <RoomResult
                  site={site}
                  run={run}
                  models={models}
                  chosen={chosen.get(room.id) ?? 0}
                  onChoose={(index) => {
                    onChoose(room.id, index);
                    onPreview(room.id, layoutsOf(room.id)[index]);
                  }}
                />
              ) : null}
            </li>
          );
        })}
      </ul>
    </div>
  );
}

interface RoomStateProps {
  readonly run: RoomRun | undefined;
  readonly models: Site["models"];
}

function RoomState({ run, models }: RoomStateProps) {
  if (run === undefined || run.state === "waiting")
    return <span className="hint">{t("place.state.waiting")}</span>;
  if (run.state === "left") return <span className="hint">{t("place.state.left")}</span>;
  if (run.state === "running") return <span className="hint">{t("place.state.running")}</span>;
  if (run.state === "failed") return <SeverityMark severity="must" />;
  const { best } = run.result;
  if (best === undefined)
    return (
      <span className="place-room-state">
        <SeverityShape severity="must" /> {t("place.state.none")}
      </span>
    );
  return (
    <span className="place-room-state">
      {best.gaps.length > 0 ? <SeverityMark severity="must" /> : null}
      <strong>{best.devices.length}</strong>
      <span className="hint">{measuredShort(run.result, models)}</span>
    </span>
  );
}
