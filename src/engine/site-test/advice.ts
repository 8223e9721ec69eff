import { prepareRoom } from "../coverage/index.ts";
import type { SquareMetres } from "../quantity/index.ts";
import type { Site } from "../site/index.ts";
import {
  type Advice,
  type AdviceCase,
  type AdviceQuestion,
  isWeak,
  ofDay,
  type Remedy,
  unseenIn,
} from "./advice-case.ts";
import { nuisanceAdvice } from "./advice-nuisance.ts";
import { placeAdvice } from "./advice-place.ts";
import { reachAdvice } from "./advice-reach.ts";
import { withFoundReach } from "./corrected-site.ts";

/** Less demand than this gained is not worth a ladder. [m²] */
const WORTH: SquareMetres = 0.1;
/** What costs least to do is tried first. */
const EFFORT: readonly Remedy["kind"][] = [
  "hang-as-planned",
  "sensitivity",
  "wait-for-cooler",
  "unmask",
  "mask",
  "height",
  "move",
  "add",
];

/**
 * What can be done about what a walk test has found, each with the coverage calculated after it.
 *
 * The site is corrected by what was found; every remedy is applied to that site and its coverage reckoned again (CS-3). Thought of are: a height other than planned, a
 * sensitivity below high, the warmth of the day (reach falls with contrast, by the table of warm rooms), masks that hide demand, masks against what is seen outside,
 * another height, another place, another detector.
 *
 * @param site - The planned site. @param question - What was found in one room of it.
 * @returns Advice that gains something: first what leaves nothing unseen, then what is least work, then what leaves least. Nothing where nothing is wrong.
 * @source REACH-PROBIT
 * @example A detector that reaches 60 % of what it declares, set to medium: raise the sensitivity; or move it 0.6 m; or add one
 */
export function adviceFor(site: Site, question: AdviceQuestion): readonly Advice[] {
  const { found, room, ambient } = question;
  // Today's coverage is that of today's warmth, which is in what was found already; what a cooler day brings is told apart.
  const today: Site =
    ambient === undefined
      ? site
      : {
          ...site,
          rooms: site.rooms.map((one) => (one.id === room ? { ...one, highestTemperature: ambient } : one)),
        };
  const corrected = withFoundReach(today, { ...ofDay(question), reach: found });
  const prepared = prepareRoom(corrected, room);
  const before = unseenIn(prepared, corrected.detectors);
  const weak = before > 0 ? found.filter((one) => isWeak({ site, room, ambient }, one)) : [];
  const given: AdviceCase = { site, today, corrected, prepared, before, question, weak };
  const all = [
    ...(before > 0 ? [...reachAdvice(given), ...placeAdvice(given)] : []),
    ...nuisanceAdvice(given),
  ];
  return all
    .filter((one) => one.about === "nuisance" || one.before - one.after >= Math.min(WORTH, one.before))
    .toSorted(
      (a, b) =>
        Number(a.after > 0) - Number(b.after > 0) ||
        EFFORT.indexOf(a.remedy.kind) - EFFORT.indexOf(b.remedy.kind) ||
        a.after - b.after,
    );
}
