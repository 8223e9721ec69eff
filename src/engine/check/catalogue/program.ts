import type { CatalogueEntry } from "./entry.ts";

/** What can go wrong around the program itself: its server, its storage, its network. */
export const programProblems = {
  "server-port-taken": {
    severity: "must",
    message: "Port {port} on this machine is in use: Roomwake runs already, or another program has it.",
    remedy:
      "Open the address that the first start printed, or stop it, or start with --port and another number.",
  },
  "server-folder-unusable": {
    severity: "must",
    message: "The folder for jobs, {folder}, cannot be used: {reason}.",
    remedy: "Give a folder that you may write to with --data.",
  },
  "server-other-place": {
    severity: "must",
    message: "The request came from another place than Roomwake's own page.",
    remedy: "Open the address that Roomwake printed when it started.",
  },
  "server-token-missing": {
    severity: "must",
    message: "The request does not carry the token of this start.",
    remedy: "Open the address that Roomwake printed when it started.",
  },
  "server-job-unknown": {
    severity: "should",
    message: "There is no job “{id}” on this server.",
    remedy: "Choose a job from the list; somebody may have deleted this one.",
  },
  "server-request-too-large": {
    severity: "must",
    message: "The request is larger than {most} MB.",
    remedy: "Split the job, for instance by storeys.",
  },
  "storage-not-kept": {
    severity: "must",
    message: "A change could not be kept on this device: {reason}.",
    remedy: "Save the job as a file now, then free some space and open it again.",
  },
} as const satisfies Record<string, CatalogueEntry>;
