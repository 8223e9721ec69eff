/** What a reader of one kind of picture finds. */
export interface StoredPicture {
  readonly width: number;
  readonly height: number;
  readonly orientation: number;
  readonly bytes: Uint8Array;
  readonly removed: readonly string[];
}
