import type { Point, Problem, Site } from "#engine";
import type { JobForHandOver } from "#job";
import type { PaperLanguage } from "#output";

/** To the worker that makes papers. */
export interface PackQuestion {
  readonly site: Site;
  readonly job: JobForHandOver;
  /** Which files, by the beginnings of their names; the whole pack if absent. */
  readonly only?: readonly string[];
  /** The only detector of which a setting sheet is made; all if absent. */
  readonly device?: string;
  /** Id of the storey whose papers they are; of the whole job if absent. */
  readonly storey?: string;
  /** The building model that the job was read from, and what was taken off its x and y then. [m] */
  readonly model?: { readonly name: string; readonly bytes: Uint8Array; readonly shift: Point };
  /** What the papers speak, and what the room cards do. */
  readonly language: PaperLanguage;
  readonly cards: PaperLanguage;
  /** Addresses of the two weights of the lettering. */
  readonly fonts: { readonly regular: string; readonly semibold: string };
}

/** From the worker: what it is doing, how far it is, and at last the file. */
export type PackAnswer =
  | { readonly tell: "checking"; readonly done: number; readonly total: number }
  | { readonly tell: "drawing"; readonly file: string; readonly share: number }
  /** The job has nothing of what was asked for. */
  | { readonly tell: "nothing" }
  | { readonly tell: "made"; readonly name: string; readonly type: string; readonly bytes: Uint8Array }
  /** What the job keeps cannot be used: a price list, an accepted quote, a model. */
  | { readonly tell: "refused"; readonly problems: readonly Problem[] }
  | { readonly tell: "trouble"; readonly sentence: string };
