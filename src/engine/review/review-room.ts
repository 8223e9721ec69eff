import type { Problem } from "../check/index.ts";
import { entryOf, remedyOf, sentenceOf } from "../check/index.ts";
import { type RoomCoverage, roomCoverage } from "../coverage/index.ts";
import { type Site, siteProblems } from "../site/index.ts";
import type { Finding, Review } from "./findings.ts";

/**
 * Coverage of one room, and what is to be mended in it.
 *
 * Depends only on the room, its openings and what is in it, the rooms next to it, the rooms in which its detectors hang, and the planning
 * numbers; a caller keeps the result as long as none of these changes.
 *
 * @param site - Snapshot of the job. @param roomId - Id of a room of the site; throws on another.
 * @returns Coverage and the findings from it, without those about the plan itself.
 * @source COMMON-PRACTICE
 * @example A room without detector: one finding "no-detector"
 */
export function reviewRoom(
  site: Site,
  roomId: string,
): { readonly coverage: RoomCoverage; readonly findings: readonly Finding[] } {
  const coverage = roomCoverage(site, roomId);
  return { coverage, findings: findingsOf(coverage.problems) };
}

/**
 * Findings about the plan as it was drawn, read or merged.
 *
 * @param site - Snapshot of the job; any content.
 * @returns Findings from `siteProblems`.
 * @example A tag used twice: "duplicate-tag"
 */
export const reviewPlan = (site: Site): readonly Finding[] => findingsOf(siteProblems(site));

/**
 * A whole site in, every finding out, room by room.
 *
 * @param site - Snapshot of the job; any content. @param options.progress - Told after each room how many of how many are done.
 * @returns Coverage of every room, and all findings: must before should before note, rooms in the site's order.
 * @source COMMON-PRACTICE
 * @example An empty site: no rooms, no findings
 */
export function reviewSite(
  site: Site,
  options: {
    readonly progress?: (step: {
      readonly done: number;
      readonly total: number;
      readonly room: string;
    }) => void;
  } = {},
): Review {
  const rooms: RoomCoverage[] = [];
  const problems: Problem[] = [...siteProblems(site)];
  const ids = [...new Set(site.rooms.map((room) => room.id))];
  for (const [index, id] of ids.entries()) {
    const coverage = roomCoverage(site, id);
    rooms.push(coverage);
    problems.push(...coverage.problems);
    options.progress?.({ done: index + 1, total: ids.length, room: id });
  }
  return { rooms, findings: orderedFindings(site, findingsOf(problems)) };
}

/**
 * Findings in the order in which they are read, each said once.
 *
 * @param site - The site they are about. @param findings - Findings from any review of it.
 * @returns must before should before note; within these, plan first, then rooms in the site's order; duplicates dropped.
 * @example The same missing door reported for plan and demand: once
 */
export function orderedFindings(site: Site, findings: readonly Finding[]): readonly Finding[] {
  const order = new Map(site.rooms.map((room, index) => [room.id, index]));
  const weight = { must: 0, should: 1, note: 2 } as const;
  const place = (finding: Finding): number =>
    finding.room === undefined ? -1 : (order.get(finding.room) ?? -1);
  const seen = new Set<string>();
  return findings
    .filter((finding) => {
      const key = JSON.stringify([finding.code, finding.room, finding.records, finding.message]);
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    })
    .toSorted((a, b) => weight[a.severity] - weight[b.severity] || place(a) - place(b));
}

/**
 * Problems as a person reads them.
 *
 * @param problems - Problems as data.
 * @returns One finding each, with sentence and remedy filled in.
 * @example "detector-outside-room" with tag B3: "Detector B3 lies outside room Drying room."
 */
export function findingsOf(problems: readonly Problem[]): readonly Finding[] {
  return problems.map((problem) => ({
    code: problem.code,
    severity: entryOf(problem).severity,
    room: problem.room,
    records: problem.records ?? [],
    at: problem.at,
    values: problem.values,
    message: sentenceOf(problem),
    remedy: remedyOf(problem),
    evidence: problem.evidence ?? [],
  }));
}
