import type { Command } from "./command.ts";
import { editKept, type KeptStep } from "./edit-kept.ts";
import { editSite, type SiteStep } from "./edit-site.ts";

/** Changes what calculations look at and what they do not in one step: circuits together with the luminaires on them. */
export const editBoth = (
  name: string,
  steps: { readonly site: readonly SiteStep[]; readonly kept: readonly KeptStep[] },
): Command => ({
  name,
  edits: (job, world) => {
    const site = editSite(name, steps.site).edits(job, world);
    if ("problems" in site) return site;
    const kept = editKept(name, steps.kept).edits(job, world);
    return "problems" in kept ? kept : { edits: [...site.edits, ...kept.edits] };
  },
});
