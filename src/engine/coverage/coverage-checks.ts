import { type Check, figured, type Said, say, type Verdict } from "../check/index.ts";
import { openingInSentence, rounded } from "../site/index.ts";
import type { Evidence } from "./evidence.ts";
import type { Gap } from "./results.ts";

/**
 * What a room was checked for: floor walked on, dwell places, ways in the dark, light before stairs, clearances.
 *
 * "not-proven" stands in place of a pass where a reach was extrapolated above its data sheet, an obstacle is taken as see-through, or no
 * entrance is known.
 *
 * @param evidence - What was calculated.
 * @returns One check for each demand that is asked for, with actual value, limit and assumptions.
 * @source COMMON-PRACTICE
 * @example A room all of whose floor is seen: actual 0 m² not seen, limit 0 m², pass
 */
export function coverageChecks(evidence: Evidence): readonly Check[] {
  const { prepared, darkWalks, demanded, stairs } = evidence;
  const { demand, look } = prepared;
  const { defaults } = look.site;
  const doubts = doubtsOf(evidence);
  if (!prepared.standing) return [outlineUnusable()];
  return [
    ...(demand.asked.walk
      ? [areaCheck(evidence, { kind: "walk", what: say`Floor walked on that is not seen`, doubts })]
      : []),
    ...(demand.asked.hold && demanded.hold > 0
      ? [areaCheck(evidence, { kind: "hold", what: say`Places of dwelling that are not seen`, doubts })]
      : []),
    ...(demand.asked.catch
      ? darkWalks.map((walk): Check => {
          const opening = look.openingById.get(walk.opening);
          return {
            verdict: verdictOf(walk.metres <= defaults.darkWalkLimit, doubts),
            what: say`Walk in the dark from ${opening ? openingInSentence(opening, look) : walk.opening}`,
            actual: walk.metres,
            limit: defaults.darkWalkLimit,
            unit: "m",
            source: "COMMON-PRACTICE",
            assumptions: [...walkAssumptions(evidence), ...doubts],
          };
        })
      : []),
    ...(demand.asked.catch && darkWalks.length === 0 && prepared.standing ? [noEntrance(evidence)] : []),
    ...stairs.map((stair): Check => {
      const opening = look.openingById.get(stair.opening);
      return {
        verdict: verdictOf(stair.lead >= defaults.stairLead, doubts),
        what: say`Light before the first step, coming from ${opening ? openingInSentence(opening, look) : stair.opening}`,
        actual: Number.isFinite(stair.lead) ? stair.lead : undefined,
        limit: defaults.stairLead,
        unit: "m",
        source: "COMMON-PRACTICE",
        assumptions: [...walkAssumptions(evidence), ...doubts],
      };
    }),
    ...evidence.broken.map(
      (pair): Check => ({
        verdict: "fail",
        what: say`Distance of detector ${pair.device.tag} from a source of false triggering`,
        actual: pair.distance,
        limit: pair.limit,
        unit: "m",
        source: "COMMON-PRACTICE",
        assumptions: [],
      }),
    ),
  ];
}

interface AreaQuestion {
  readonly kind: Gap["demand"];
  readonly what: Said;
  readonly doubts: readonly Said[];
}

function areaCheck(evidence: Evidence, { kind, what, doubts }: AreaQuestion): Check {
  const { prepared, gaps } = evidence;
  const { defaults } = prepared.look.site;
  const own = gaps.filter((gap) => gap.demand === kind);
  const open = own.filter((gap) => !gap.tolerated);
  const tolerated = own.filter((gap) => gap.tolerated).reduce((sum, gap) => sum + gap.area, 0);
  const percent = (share: number): Said => figured(`${rounded(100 * share, 1)} %`);
  const margin =
    kind === "walk"
      ? [
          say`Reach towards less ${percent(defaults.margin.towards)}`,
          say`Seen at ${defaults.sightHeights.walking} m`,
          say`Body radius ${defaults.bodyRadius} m`,
        ]
      : [
          say`Reach for seated people less ${percent(defaults.margin.seated)}`,
          say`Seen at the height of each place`,
        ];
  return {
    verdict: verdictOf(open.length === 0, doubts),
    what,
    actual: open.reduce((sum, gap) => sum + gap.area, 0),
    limit: 0,
    unit: "m²",
    source: "COMMON-PRACTICE",
    assumptions: [
      ...margin,
      say`Doors closed, and again with each leaf open; the worse counts`,
      ...temperatureAssumption(evidence),
      ...(tolerated > 0 ? [say`Gaps of ${rounded(tolerated, 3)} m² in all are tolerated`] : []),
      ...doubts,
    ],
  };
}

/** Nothing was calculated, so nothing may pass. */
const outlineUnusable = (): Check => ({
  verdict: "not-proven",
  what: say`Coverage of the room`,
  actual: undefined,
  limit: undefined,
  unit: "",
  source: "COMMON-PRACTICE",
  assumptions: [say`The outline or the heights of the room cannot be calculated with`],
});

function noEntrance({ prepared }: Evidence): Check {
  return {
    verdict: "not-proven",
    what: say`Walk in the dark`,
    actual: undefined,
    limit: prepared.look.site.defaults.darkWalkLimit,
    unit: "m",
    source: "COMMON-PRACTICE",
    assumptions: [say`No door through which somebody comes in is known`],
  };
}

function walkAssumptions({ prepared, counted }: Evidence): Said[] {
  const { look } = prepared;
  const { defaults } = look.site;
  const models = counted.map((detector) => look.modelById.get(detector.model));
  return [
    say`Walking at ${defaults.speed} m/s`,
    ...(models.some((model) => model?.onset === undefined)
      ? [say`A detector reacts after ${defaults.onset} m of walk; unknown for its model`]
      : []),
    ...(models.some((model) => model?.response === undefined)
      ? [say`Light ${defaults.response} s after the reaction, where its model gives no response`]
      : []),
    ...(models.some((model) => model?.response !== undefined)
      ? [say`Lamp start ${defaults.lampStart} s, added to the response of the data sheet`]
      : []),
    say`The door just opened is open, all others closed`,
  ];
}

function temperatureAssumption({ prepared: { room } }: Evidence): Said[] {
  return [
    room.highestTemperature === undefined
      ? say`22 °C, no temperature entered`
      : say`Up to ${room.highestTemperature} °C`,
  ];
}

function doubtsOf({ prepared, verify }: Evidence): Said[] {
  return [
    ...(verify ? [say`Verify: a detector hangs above the highest row of its data sheet`] : []),
    ...(prepared.demand.standing.length === 0 ? [say`Nobody can stand in the room`] : []),
    ...(prepared.obstacles.some((obstacle) => obstacle.seeThrough)
      ? [say`Verify: an obstacle is taken as see-through`]
      : []),
  ];
}

const verdictOf = (holds: boolean, doubts: readonly Said[]): Verdict =>
  holds ? (doubts.length > 0 ? "not-proven" : "pass") : "fail";
