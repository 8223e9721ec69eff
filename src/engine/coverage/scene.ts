import type { Metres } from "../quantity/index.ts";
import type { Site } from "../site/index.ts";
import type { DoorState } from "./results.ts";

export interface SceneOptions {
  readonly storey: string;
  readonly doors: DoorState;
  /** Solids shrunk by this much on all sides, for bounds that must hold. */
  readonly eroded?: Metres;
}

/** The solids of a storey, prepared once for many zones. */
export interface Scene extends SceneOptions {
  readonly site: Site;
}

export function sceneOf(site: Site, options: SceneOptions): Scene {
  return { site, ...options };
}
