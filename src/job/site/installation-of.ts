import type { FoundInstallation } from "#engine";
import type { JobFile } from "../schema/job-file.ts";

/**
 * Boards and circuits of a job for the engine. A circuit whose board is no longer in the job has none.
 *
 * @param job - A job that was read or that a document holds.
 * @example A job without boards and circuits: two empty lists
 */
export function installationOf(job: Pick<JobFile, "boards" | "circuits">): FoundInstallation {
  const boards = new Set(job.boards.map(({ id }) => id));
  return {
    boards: job.boards,
    circuits: job.circuits.map(({ board, ...circuit }) =>
      board !== undefined && boards.has(board) ? { ...circuit, board } : circuit,
    ),
  };
}
