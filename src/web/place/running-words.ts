import type { Room } from "#engine";
import { t } from "../texts/place.ts";
import type { RoomRun } from "./room-run.ts";

/** What a run is doing, in words, and how far it is. */
export function runningWords(
  rooms: readonly Room[],
  runs: ReadonlyMap<string, RoomRun>,
): { readonly doing: string; readonly share: number } {
  const states = rooms.map(({ id }) => runs.get(id));
  const finished = states.filter((run) => run?.state === "done" || run?.state === "failed").length;
  const index = states.findIndex((run) => run?.state === "running");
  const active = states[index];
  const step = active?.state === "running" ? active.step : undefined;
  const share = (finished + (step?.share ?? 0)) / Math.max(1, rooms.length);
  const phase = t(`place.phase.${step?.phase ?? "candidates"}`);
  const best = step?.best === undefined ? "" : t("place.so-far", { best: step.best });
  const doing =
    rooms.length === 1
      ? t("place.doing", { phase, best })
      : t("place.doing-many", { finished, count: rooms.length, room: rooms[index]?.name ?? "", phase });
  return { doing, share };
}
