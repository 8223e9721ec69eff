import type { Told } from "../texts/told.ts";

/** To the worker that makes a picture of a page. */
export interface ScanQuestion {
  readonly bytes: ArrayBuffer;
  readonly page: number;
}

export type ScanAnswer =
  | { readonly tell: "scanned"; readonly picture: Blob }
  | { readonly tell: "refused"; readonly problems: readonly Told[] }
  /** The browser paints nothing beside the screen. */
  | { readonly tell: "unable" }
  | { readonly tell: "failed"; readonly sentence: string };
