import { correctionsOf, factsOf, faultCauses, roomCoverage, wiringOfSite } from "#engine";
import { answerLine } from "./answer-line.ts";
import type { FaultAnswer, FaultQuestion } from "./fault-protocol.ts";

// Looks at the plan of a room with a complaint, beside the screen.
answerLine(({ site, room, found, settings }: FaultQuestion): FaultAnswer => {
  const place = { site, room, settings, wiring: wiringOfSite(site, found).model };
  const coverage = roomCoverage(site, room);
  return {
    facts: [...factsOf(place, coverage)],
    corrections: new Map(faultCauses.map((cause) => [cause, correctionsOf(cause, place, coverage)])),
  };
});
