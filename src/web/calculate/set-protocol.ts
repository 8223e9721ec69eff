import type { PackStanding, Site, SiteSettings } from "#engine";
import type { JobFile } from "#job";

/** What of the file the settings hang on, beside the site. */
export type SettingsFile = Pick<JobFile, "detectors" | "details" | "boards" | "circuits">;

/** To the worker that derives the settings of the open job. */
export interface SetQuestion {
  readonly site: Site;
  readonly file: SettingsFile;
}

/** All that the screen knows of the settings. */
export interface SettingsKnown extends SiteSettings {
  readonly packs: readonly PackStanding[];
}
