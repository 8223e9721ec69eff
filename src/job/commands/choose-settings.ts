import type { JobDetector, JobSettings } from "../schema/job-file.ts";
import { gone } from "./change-records.ts";
import type { Command } from "./command.ts";
import { recordOf, set } from "./record-edits.ts";

/** What changes in the settings of one detector; a setting that is undefined is chosen no more. */
export type SettingsChange = { readonly [Name in keyof JobSettings]?: JobSettings[Name] | undefined };

/** Sets what a person chose on detectors, by id; what is not named stays as it was chosen. One step of undo. */
export const chooseSettings = (name: string, changes: Readonly<Record<string, SettingsChange>>): Command => ({
  name,
  edits: (job) => {
    const ids = Object.keys(changes);
    const missing = ids.filter((id) => !recordOf(job, "detectors", id));
    if (missing.length > 0) return { problems: missing.map((id) => gone("detectors", id)) };
    return {
      edits: ids.map((id) => {
        const chosen = { ...recordOf(job, "detectors", id)!.settings, ...changes[id] };
        const left = Object.entries(chosen).filter(([, value]) => value !== undefined);
        const settings = left.length > 0 ? Object.fromEntries(left) : undefined;
        return set("detectors", id, { settings } as { readonly settings: JobDetector["settings"] });
      }),
    };
  },
});
