import type { Point, Verdict } from "#engine";
import type { Workbench } from "../shell/workbench.ts";
import { verdictOf } from "../site-test/verdicts.ts";
import { recordOf } from "./pick.ts";

/** What the plan shows of the walk test of a room; the same object while nothing of it has changed. */
export interface WalkMarks {
  readonly stations: readonly WalkMark[];
}

export interface WalkMark {
  readonly number: number;
  readonly path: readonly Point[];
  readonly verdict: Verdict;
  /** One is there now. */
  readonly current: boolean;
  /** It is walked both ways. */
  readonly back: boolean;
}

let last: { readonly inputs: readonly unknown[]; readonly marks: WalkMarks } | undefined;

/** The stations of the room whose walk test is open, where that is on the storey on show. */
export function walkMarksOf(bench: Workbench): WalkMarks | undefined {
  const { stage, panel, walks, job, storey } = bench;
  if (stage !== "test" || panel.kind !== "walk" || walks.of !== job.site) return undefined;
  const planned = walks.rooms.get(panel.room);
  if (!planned || recordOf(job.site, "rooms", panel.room)?.storey !== storey) return undefined;
  const inputs = [planned, walks.station, job.kept.testEntries];
  if (!last || inputs.some((one, i) => one !== last?.inputs[i]))
    last = {
      inputs,
      marks: {
        stations: verdictOf(job, planned).stations.map(({ station, check }, i) => ({
          number: i + 1,
          path: station.path,
          verdict: check.verdict,
          current: station.id === walks.station,
          back: station.passes > 1,
        })),
      },
    };
  return last.marks;
}
