import {
  type CareEntry,
  type CareQuestion,
  type CareState,
  careDue,
  careOccasions,
  careOfJob,
  carePoints,
  careStates,
  type Day,
  type Occasion,
} from "../care/index.ts";
import type { Site } from "../site/index.ts";

/** A visit with what was looked at. */
export interface VisitRecord {
  readonly occasion: Occasion;
  /** By room, then what belongs to the whole job; all points, also those that nobody has looked at. */
  readonly states: readonly CareState[];
}

/** What comes after hand-over. */
export interface CareRecord {
  readonly handedOver: Day;
  readonly visits: readonly VisitRecord[];
  /** Days on which emergency lighting and the installation are due; undefined: nothing of the kind. */
  readonly emergency: Day | undefined;
  readonly inspection: Day | undefined;
}

/**
 * Visits after hand-over with their days and what was found on them.
 *
 * @param site - Snapshot of the job. @param of.handedOver - Day of the first hand-over. @param of.today - Day from which one looks ahead. @param of.question - What is known beside the site.
 * @param of.entries - All entries, those of visits among them. @param of.years - Between periodic inspections. [a]
 * @returns undefined where nothing was handed over.
 * @source COMMON-PRACTICE
 * @example Handed over, nothing entered since: visits with all points not proven
 */
export function careRecord(
  site: Site,
  of: {
    readonly handedOver: Day | undefined;
    readonly today: Day;
    readonly question: CareQuestion;
    readonly entries: readonly CareEntry[];
    readonly years: number | undefined;
  },
): CareRecord | undefined {
  const { handedOver, today, question, entries, years } = of;
  const begun = new Set(entries.flatMap(({ occasion }) => occasion ?? []));
  const occasions = careOccasions(handedOver, { today, begun });
  if (handedOver === undefined || occasions.length === 0) return undefined;
  const due = careDue(handedOver, { entries, luminaires: emergencyOf(site), years });
  return {
    handedOver,
    visits: occasions.map((occasion) => ({
      occasion,
      states: careStates(
        [
          ...site.rooms.flatMap(({ id }) => carePoints(site, id, { occasion, question })),
          ...careOfJob(site, { occasion, found: question.found, inspection: due.inspection }),
        ],
        occasion.id,
        entries,
      ),
    })),
    ...due,
  };
}

const emergencyOf = (site: Site): readonly string[] =>
  site.luminaires.flatMap(({ id, emergency }) => (emergency === undefined ? [] : [id]));
