import { type Day, dayAfter, isDay } from "./days.ts";

export type OccasionKind = "trim-weeks" | "trim-summer" | "yearly";

/** A visit after hand-over. */
export interface Occasion {
  /** "trim-weeks", "trim-summer", "yearly-2": permanent, as entries name it. */
  readonly id: string;
  readonly kind: OccasionKind;
  readonly due: Day;
}

/** A trim visit comes so long after hand-over: people know the light by then. [d] @source COMMON-PRACTICE */
const WEEKS_OF_TRIM = 28;
/** Summer of the northern half of the world, by months; its visit is due on its first of July. @source COMMON-PRACTICE */
const SUMMER = { from: "06", to: "08", due: "07-01" } as const;

/**
 * Visits of a job: two to trim, and a check every year (CA-1, CA-2).
 *
 * @param handedOver - Day of the first hand-over. @param given.today - Today. @param given.begun - Ids of occasions of which something was entered.
 * @returns Occasions by their day; none where nothing was handed over yet.
 * @source COMMON-PRACTICE
 * @example Handed over on 2026-11-26: trim on 2026-12-24 and 2027-07-01, yearly on 2027-11-26
 */
export function careOccasions(
  handedOver: Day | undefined,
  given: { readonly today: Day; readonly begun: ReadonlySet<string> },
): readonly Occasion[] {
  const trim = dayAfter(handedOver, { days: WEEKS_OF_TRIM });
  if (handedOver === undefined || trim === undefined) return [];
  const isSummer = trim.slice(5, 7) >= SUMMER.from && trim.slice(5, 7) <= SUMMER.to;
  const july = `${trim.slice(0, 4)}-${SUMMER.due}`;
  const summer = july >= trim ? july : `${Number(trim.slice(0, 4)) + 1}-${SUMMER.due}`;
  return [
    { id: "trim-weeks", kind: "trim-weeks" as const, due: trim },
    ...(isSummer ? [] : [{ id: "trim-summer", kind: "trim-summer" as const, due: summer }]),
    ...yearly(handedOver, given),
  ].toSorted((a, b) => (a.due < b.due ? -1 : a.due > b.due ? 1 : 0));
}

/** Whether a visit falls in summer: what warmth and sun change is looked at then. @param occasion - The visit. @example "trim-summer" does */
export const isInSummer = (occasion: Pick<Occasion, "kind" | "due">): boolean =>
  occasion.kind === "trim-summer" ||
  (occasion.kind === "trim-weeks" &&
    occasion.due.slice(5, 7) >= SUMMER.from &&
    occasion.due.slice(5, 7) <= SUMMER.to);

function yearly(
  handedOver: Day,
  { today, begun }: { readonly today: Day; readonly begun: ReadonlySet<string> },
): readonly Occasion[] {
  const years = isDay(today) ? Number(today.slice(0, 4)) - Number(handedOver.slice(0, 4)) : 0;
  const all = Array.from({ length: Math.max(0, years) + 2 }, (_, i): Occasion => {
    const due = dayAfter(handedOver, { years: i + 1 })!;
    return { id: `yearly-${i + 1}`, kind: "yearly", due };
  });
  const latest = all.findLast(({ due }) => due <= today);
  const next = all.find(({ due }) => due > today);
  return all.filter((one) => one === latest || one === next || begun.has(one.id));
}
