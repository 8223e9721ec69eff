import type { Problem } from "../check/index.ts";
import { doorStates, type Scene, sceneOf } from "../coverage/index.ts";
import { type PreparedRoom, prepareRoom } from "../coverage/prepared-room.ts";
import { type DetectorModel, seenReliably } from "../detector/index.ts";
import { COVER_SKIN } from "../geometry/index.ts";
import { roomTitle, rounded, type Site } from "../site/index.ts";
import { type Column, fitsHeight } from "./columns.ts";
import type { PlacementOptions } from "./contract.ts";
import { type DemandPart, demandParts } from "./demand-rows.ts";
import type { Scenes } from "./sight-book.ts";

/** Everything about a room that stays the same while devices are tried in it. */
export interface RoomTask {
  readonly prepared: PreparedRoom;
  /** What must be covered to the skin. */
  readonly parts: readonly DemandPart[];
  readonly models: readonly DetectorModel[];
  /** Devices that stay: pinned ones of the room at their cost, and those of other rooms that switch its light at none. */
  readonly fixed: readonly Column[];
  readonly scenes: Scenes;
  /** Solids shrunk by the skin, for bounds that must hold. */
  readonly eroded: Scenes;
  readonly problems: readonly Problem[];
}

/**
 * Prepares placing in a room: demand, suitable models, devices that stay, scenes.
 *
 * @param site - Snapshot of the job. @param options - Room and models.
 * @returns The task; its problems say why nothing can be placed, or what to bear in mind.
 * @example A room of 5 m with models for up to 4 m: no models, and "no-model-for-height"
 */
export function roomTask(site: Site, options: PlacementOptions): RoomTask {
  const prepared = prepareRoom(site, options.room);
  const { look, room, demand } = prepared;
  const states = doorStates(prepared).map(({ opening, taken }) => ({
    doors: opening?.id ?? "closed",
    taken,
  }));
  const parts = demandParts(demand, { states, defaults: site.defaults });
  const offered =
    options.models === undefined
      ? site.models
      : site.models.filter((model) => options.models?.includes(model.id));
  const hung = offered.filter((model) => fitsHeight(model, room.ceilingHeight));
  const anyHeight = look.floorPiecesOf(room.id).length > 0 ? offered : hung;
  // From 30 °C on no number of detectors makes it reliable: none are stacked.
  const warm = !seenReliably(room.highestTemperature ?? 22);
  const fixed = look.detectorsFor(room.id).flatMap((detector): Column[] => {
    const model = look.modelById.get(detector.model);
    const here = detector.room === room.id;
    if (model === undefined || (here && !detector.pinned)) return [];
    const { at, height, turn, masks } = detector;
    return [{ device: { model, at, height, turn, masks }, cost: here ? model.cost : 0, fixed: detector }];
  });
  const title = roomTitle(room);
  const about = { room: room.id, records: [room.id] };
  const problems: Problem[] = [];
  if (offered.length === 0) problems.push({ code: "no-models", values: { room: title }, ...about });
  else if (anyHeight.length === 0)
    problems.push({
      code: "no-model-for-height",
      values: {
        room: title,
        height: rounded(room.ceilingHeight, 2),
        least: Math.min(...offered.map((model) => model.mounting.min)),
        most: Math.max(...offered.map((model) => model.mounting.max)),
      },
      ...about,
    });
  if (warm)
    problems.push({
      code: "too-warm-to-place",
      values: { room: title, temperature: rounded(room.highestTemperature ?? 22, 1) },
      ...about,
    });
  if (parts.length === 0) problems.push({ code: "nothing-to-watch", values: { room: title }, ...about });
  return {
    prepared,
    parts,
    models: warm ? [] : anyHeight,
    fixed,
    scenes: (doors) => (doors === "closed" ? prepared.closed() : prepared.withOpen(doors)),
    eroded: erodedScenes(prepared),
    problems,
  };
}

function erodedScenes(prepared: PreparedRoom): Scenes {
  const known = new Map<string, Scene>();
  return (doors) => {
    let scene = known.get(doors);
    if (scene === undefined) {
      const plain = doors === "closed" ? prepared.closed() : prepared.withOpen(doors);
      scene = sceneOf(plain.site, { storey: plain.storey, doors: plain.doors, eroded: COVER_SKIN });
      known.set(doors, scene);
    }
    return scene;
  };
}
