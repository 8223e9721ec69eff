import type { Problem, Said } from "#engine";

/** Stops the reading from deep inside; the reader's door turns it into the problem that it carries. */
export class DxfTrouble extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.code);
    this.problem = problem;
  }
}

/** Stops the reading because a limit was reached. */
export const overLimit = (what: Said, limit: number): DxfTrouble =>
  new DxfTrouble({
    code: "plan-too-much",
    values: { what, limit: limit.toLocaleString("en-GB").replaceAll(",", " ") },
  });
