import type {
  Detector,
  Finding,
  PlacementOptions,
  PlacementProgress,
  PlacementResult,
  RoomCoverage,
  Site,
} from "#engine";
import type { DeviceZones, EditStep, ModelRead, PlanWish } from "../contract.ts";
import type { Told } from "../texts/told.ts";
import type { ScannedPageOf } from "./refused-file.ts";

/** To the worker that reviews the open job. Every message carries the revision that it speaks of. */
export type ReviewQuestion =
  /** The whole job, once. */
  | { readonly ask: "site"; readonly revision: number; readonly site: Site }
  /** What has changed since the revision before; defaults too where they did. */
  | {
      readonly ask: "change";
      readonly revision: number;
      readonly steps: readonly EditStep[];
      readonly defaults?: Site["defaults"];
    }
  /** What a drag would do if it ended now; empty when it is over. Newest wins. */
  | {
      readonly ask: "live";
      readonly revision: number;
      readonly turn: number;
      readonly steps: readonly EditStep[];
    }
  /** Zones of a device that is not in the job. Newest wins. */
  | { readonly ask: "device"; readonly turn: number; readonly site: Site; readonly device: Detector };

/** What of a room's coverage is looked at while one drags; the rest is settled when the hand lets go. */
export type SeenCoverage = Omit<RoomCoverage, "demand" | "checks" | "problems">;

export type ReviewAnswer =
  | {
      readonly tell: "room";
      readonly revision: number;
      readonly coverage: RoomCoverage;
      readonly zones: readonly (readonly [string, DeviceZones])[];
    }
  /** All rooms of the revision are done. */
  | {
      readonly tell: "done";
      readonly revision: number;
      readonly findings: readonly Finding[];
      readonly rooms: readonly string[];
    }
  | {
      readonly tell: "live";
      readonly turn: number;
      readonly coverage: readonly SeenCoverage[];
      readonly zones: readonly (readonly [string, DeviceZones])[];
    }
  | { readonly tell: "device"; readonly turn: number; readonly zones: DeviceZones }
  | { readonly tell: "trouble"; readonly revision: number; readonly sentence: string };

export type PlaceQuestion =
  | {
      readonly ask: "place";
      readonly site: Site;
      readonly options: PlacementOptions;
      /** Not 0: stop. Seen even while the solver blocks the worker; only a page that is kept apart from others may share it. */
      readonly halt?: Int32Array | undefined;
    }
  | { readonly ask: "stop" };

export type PlaceAnswer =
  | { readonly tell: "progress"; readonly step: PlacementProgress }
  | { readonly tell: "placed"; readonly result: PlacementResult }
  | { readonly tell: "trouble"; readonly sentence: string };

export type ReadQuestion = {
  readonly ask: "read";
  readonly name: string;
  readonly bytes: ArrayBuffer;
  readonly choice?: PlanWish;
};

export type ReadAnswer =
  | { readonly tell: "progress"; readonly text: string; readonly share: number }
  | { readonly tell: "read"; readonly read: ModelRead }
  | {
      readonly tell: "refused";
      readonly problems: readonly Told[];
      /** A page that holds a picture instead of lines. */
      readonly scan?: ScannedPageOf;
    }
  | { readonly tell: "failed"; readonly sentence: string };
