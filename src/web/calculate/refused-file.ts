/** A page of a file that holds a picture instead of lines. */
export interface ScannedPageOf {
  readonly page: number;
  readonly pages: number;
}

/** A file that was not read, and why; `scan` where a page of it may lie under the plan as a picture. */
export class RefusedFile extends Error {
  readonly scan: ScannedPageOf | undefined;
  constructor(sentences: readonly string[], scan?: ScannedPageOf) {
    super(sentences.join(" "));
    this.scan = scan;
  }
}
