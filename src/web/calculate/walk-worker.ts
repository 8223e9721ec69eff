import { walkTest } from "#engine";
import { answerLine } from "./answer-line.ts";
import type { PlannedWalk, WalkQuestion } from "./walk-protocol.ts";

// Plans walk tests beside the screen.
answerLine(
  ({ site, room, extent }: WalkQuestion): PlannedWalk => ({ extent, test: walkTest(site, room, { extent }) }),
);
