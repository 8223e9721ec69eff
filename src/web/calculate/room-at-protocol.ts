import type { Metres, Opening, Point, Room, Storey } from "#engine";
import type { JobUnderlay } from "#job";

/** The room round a place on the drawing under the plan, with its openings. */
export interface RoomOnDrawing {
  readonly room: Room;
  readonly openings: readonly Opening[];
}

type Drawing = Pick<JobUnderlay, "file" | "lines" | "origin" | "turn" | "layers">;

export interface RoomAtQuestion {
  readonly number: number;
  /** The drawing itself only when it is new to the worker. */
  readonly drawings: readonly { readonly key: string; readonly drawing: Drawing | undefined }[];
  readonly point: Point;
  readonly of: { readonly storey: Storey; readonly ceiling: Metres };
}

export interface RoomAtAnswer {
  readonly number: number;
  readonly found: RoomOnDrawing | undefined;
}
