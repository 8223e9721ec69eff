import type { SettingValues } from "../../settings/index.ts";
import type { Site } from "../../site/index.ts";
import type { WiringModel } from "../../wiring/index.ts";

/** A room as planned: all that is known before anybody drives there. */
export interface FaultPlace {
  readonly site: Site;
  /** Id of the room with the complaint. */
  readonly room: string;
  /** What was to be set, by the detector's id. */
  readonly settings: Readonly<Record<string, SettingValues>>;
  /** Wiring as planned; absent: nothing of it is on record. */
  readonly wiring?: WiringModel;
}
