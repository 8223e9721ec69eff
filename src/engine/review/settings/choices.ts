import type { RulePack } from "../../rules/index.ts";
import type { ChosenSettings, ReadingPair, SettingContext } from "../../settings/index.ts";
import type { FoundInstallation } from "../../wiring/index.ts";

/** Ceiling and work plane as somebody read them on site. */
export interface LightReadings {
  /** Illuminance wanted at the task. [lx] */
  readonly target: number;
  readonly lampsOff: readonly ReadingPair[];
  /** Read with the lamps on, right after the last of `lampsOff`. */
  readonly lampsOn?: ReadingPair;
  /** The sun shone on floor or desk in view of the detector. */
  readonly sunPatch: boolean;
}

/** What people decided and read beside the site itself; by id of the detector. What is absent nobody chose, read or entered. */
export interface SettingChoices {
  readonly chosen?: ReadonlyMap<string, ChosenSettings>;
  readonly readings?: ReadonlyMap<string, LightReadings>;
  /** Timers that the pulses of a detector start. */
  readonly timers?: ReadonlyMap<string, NonNullable<SettingContext["stairTimer"]>>;
  /** What delay against saving recommends. */
  readonly recommended?: ReadonlyMap<string, NonNullable<SettingContext["recommendedDelay"]>>;
  /** Packs of rules that are on. */
  readonly packs?: readonly RulePack[];
  readonly installation?: FoundInstallation;
  /** Day for which the job is judged, YYYY-MM-DD. */
  readonly day?: string;
  /** Rated output of heating and air conditioning of the building. [W] */
  readonly plant?: number;
}
