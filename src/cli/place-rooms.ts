import type { PlacementOptions, PlacementProgress, PlacementResult, Site } from "#engine";

/** Places rooms of a site, several at once where the machine allows. */
export type PlaceRooms = (site: Site, work: PlacingWork) => Promise<readonly PlacementResult[]>;

export interface PlacingWork {
  readonly rooms: readonly PlacementOptions[];
  readonly cancelled: AbortSignal;
  readonly progress: (step: PlacementProgress) => void;
  /** Told of every finished room as soon as it is finished. */
  readonly finished: (result: PlacementResult) => void;
}

/** What a worker is told, and what it tells. */
export type ToWorker =
  | { readonly kind: "site"; readonly site: Site }
  | { readonly kind: "place"; readonly options: PlacementOptions };
export type FromWorker =
  | { readonly kind: "ready" }
  | { readonly kind: "progress"; readonly step: PlacementProgress }
  | { readonly kind: "placed"; readonly result: PlacementResult }
  | { readonly kind: "fault"; readonly room: string; readonly reason: string };
