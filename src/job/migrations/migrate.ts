/** One step of the file's history. It adds, and never takes away or renames: an older program must still find what it knows. */
export interface Migration {
  /** The version that it makes. */
  readonly to: number;
  readonly adds: string;
  readonly change: (file: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;
}

/** The history of the file in order. Each needs `version-N.job.json` beside it: a file as the version before wrote it. */
export const migrations: readonly Migration[] = [
  { to: 2, adds: "underlays: drawings under the plan", change: (file) => ({ underlays: [], ...file }) },
  {
    to: 3,
    adds: "visit, switches, boards, circuits, notes and photos",
    change: (file) => ({ visit: {}, switches: [], boards: [], circuits: [], photos: [], notes: [], ...file }),
  },
  {
    to: 4,
    adds: "instruments, entries of the test, open points, signatures and revisions",
    change: (file) => ({
      instruments: [],
      testEntries: [],
      openPoints: [],
      signatures: [],
      revisions: [],
      ...file,
    }),
  },
  {
    to: 5,
    adds: "swaps of devices; what was handed over with each revision",
    change: (file) => ({ swaps: [], ...file }),
  },
];

/**
 * Brings a file of an older version up to the newest, step by step.
 *
 * @param file - Content of a file, with its version.
 * @returns The same content with what was added since; a file of a newer version comes back as it is.
 */
export function migrated(
  file: Readonly<Record<string, unknown>>,
  history: readonly Migration[] = migrations,
): Readonly<Record<string, unknown>> {
  return history
    .filter((step) => typeof file.version === "number" && step.to > file.version)
    .reduce((content, step) => ({ ...step.change(content), version: step.to }), file);
}
