import { adviceFor, foundReach, observationsOf, roomVerdict } from "#engine";
import { answerLine } from "./answer-line.ts";
import type { FoundAnswer, FoundQuestion } from "./found-protocol.ts";

// Weighs what a walk test has found, beside the screen.
answerLine(({ site, test, readings, sensitivity, heights, ambient }: FoundQuestion): FoundAnswer => {
  const reach = foundReach(observationsOf(site, [...test.stations, ...test.others], readings));
  const verdict = roomVerdict(test, readings);
  const advice = adviceFor(site, {
    room: test.room,
    found: reach,
    verdict,
    sensitivity,
    heights,
    ...(ambient === undefined ? {} : { ambient }),
  });
  return { reach, advice };
});
