import type { PlanningDefaults } from "#engine";
import type { JobDetails } from "../schema/job-file.ts";
import { ownPlanning } from "../site/planning-of.ts";
import type { Command } from "./command.ts";

export const setName = (name: string): Command => ({
  name: "set-name",
  edits: () => ({ edits: [{ do: "name", name }] }),
});

/** Sets what the title block says; a field that is set to undefined goes. */
export const setDetails = (
  fields: { readonly [Name in keyof JobDetails]?: JobDetails[Name] | undefined },
): Command => ({
  name: "set-details",
  edits: () => ({ edits: [{ do: "details", fields }] }),
});

/** Sets the planning numbers; those that equal the program's are not kept, so that they go on following it. */
export const setDefaults = (defaults: PlanningDefaults): Command => ({
  name: "set-defaults",
  edits: () => ({ edits: [{ do: "defaults", defaults: ownPlanning(defaults) }] }),
});
