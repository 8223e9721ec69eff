import type { Metres, Problem } from "#engine";
import { inKillableThread, type KillableOptions } from "../../killable.ts";

/** A page of a PDF file that is to become a picture. */
export interface ScanTask {
  readonly bytes: Uint8Array;
  /** From 1. */
  readonly page: number;
  /** Longest side of the picture. [px] */
  readonly longest: number;
}

export type ScanPictureResult =
  | {
      /** A PNG picture. */
      readonly picture: Uint8Array;
      /** Width and height of the paper that it covers. [m] */
      readonly paper: readonly [Metres, Metres];
    }
  | { readonly problems: readonly Problem[] };

/** Makes a picture of one page of a PDF file, in a thread of its own that is killed when it takes too long or too much memory. */
export const readScanInWorker = (task: ScanTask, options: KillableOptions = {}): Promise<ScanPictureResult> =>
  inKillableThread<ScanPictureResult>(
    {
      worker: "plan/pdf/scan-worker",
      task,
      overTime: (seconds) => ({ code: "plan-time-over", values: { seconds } }),
      overMemory: (megabytes) => ({ code: "plan-memory-over", values: { megabytes } }),
    },
    options,
  );
