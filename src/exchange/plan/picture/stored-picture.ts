import type { Said } from "#engine";

/** What a reader of one kind of picture finds. */
export interface StoredPicture {
  readonly width: number;
  readonly height: number;
  readonly orientation: number;
  readonly bytes: Uint8Array;
  readonly removed: readonly string[];
}

/** What is wrong with a picture that cannot be read. */
export interface Damaged {
  readonly damage: Said;
}
