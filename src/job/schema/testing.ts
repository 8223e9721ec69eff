import * as z from "zod";
import { id, kept, metres, words } from "./values.ts";

/** What an entry of the test speaks of. */
export const testSubjects = ["job", "board", "circuit", "room", "detector", "luminaire"] as const;

/**
 * What came of a step, a station or a reading.
 *
 * - `done`: a step that has no result but that it was done
 * - `passed`, `failed`: the tester's own verdict; that of a figure follows from its limit
 * - `seen`, `not-seen`: a station of the walk test
 * - `read`: a figure was taken, in `value`
 * - `not-applicable`: there is nothing to test here, and `remark` says why
 * - `withdrawn`: the entry named in `of` does not count
 */
export const testOutcomes = [
  "done",
  "passed",
  "failed",
  "seen",
  "not-seen",
  "read",
  "not-applicable",
  "withdrawn",
] as const;

/** What somebody did or found on site. It is added and never changed: a correction is an entry of its own, so that two people's records always meet. */
export const testEntry = kept({
  id,
  /** When, in the world's time, so that texts of any place sort by time: ISO 8601 with "Z". */
  time: words,
  /** How far the clock on the wall was from it: "+01:00". */
  zone: words.optional(),
  by: words.optional(),
  role: words.optional(),
  about: kept({ kind: z.enum(testSubjects), id }),
  /** Step of the order of work, "station" of the walk test, or "symptom". */
  step: words,
  /** Which part of the step: a station, a pair of conductors, a side. */
  part: words.optional(),
  outcome: z.enum(testOutcomes),
  /** Of a station: how the detectors hung that were tested; of another plan it proves nothing. */
  basis: words.optional(),
  /** A figure in the unit that stands beside it. */
  value: z.number().min(-1e12).max(1e12).optional(),
  unit: words.optional(),
  remark: z.string().max(20_000).optional(),
  instrument: id.optional(),
  photos: z.array(id).max(100).optional(),
  /** The entry that is withdrawn. */
  of: id.optional(),
  /** Visit after hand-over that it belongs to: "trim-weeks", "yearly-2". */
  occasion: words.optional(),
});

/** A measuring instrument, with the day on which its calibration ends: ISO 8601. */
export const instrument = kept({
  id,
  name: words.default(""),
  serial: words.optional(),
  calibratedUntil: words.optional(),
});

/** Something that is still to be done, with who owes it and until when. */
export const openPoint = kept({
  id,
  text: z.string().max(20_000).default(""),
  room: id.optional(),
  detector: id.optional(),
  owner: words.optional(),
  due: words.optional(),
  /** The day on which it was closed. */
  closed: words.optional(),
  /** Where it came from: somebody called, or a visit after hand-over; the test if absent. */
  origin: z.enum(["test", "call-back", "visit"]).optional(),
  photos: z.array(id).max(100).default([]),
});

/** A name put to what was tested, drawn by hand as strokes of points, each in shares of the field's width. */
export const signature = kept({
  id,
  /** As that of an entry. */
  time: words,
  zone: words.optional(),
  name: words,
  role: words.default(""),
  for: z.enum(["test", "hand-over", "quote"]).default("test"),
  strokes: z
    .array(z.array(z.tuple([z.number().min(-2).max(3), z.number().min(-2).max(3)])).max(5_000))
    .max(500)
    .default([]),
});

/** One thing that was handed over with a record: a figure, a word, a place in the plan. */
const fact = z.union([
  z.number().min(-1e12).max(1e12),
  z.string().max(20_000),
  z.boolean(),
  z.tuple([metres, metres]),
]);

/** A state of the job that was handed over: what differs from it later is told as a list. */
export const revision = kept({
  id,
  /** "A", "B", … */
  letter: words,
  date: words,
  by: words.optional(),
  reason: words.default(""),
  /** Prints of the records as they were, by kind and id. */
  prints: z.record(z.string(), z.string()).default({}),
  /** What was handed over, record by record ("detectors/d1"), settings as they held then; absent where an older program kept none. */
  state: z.record(z.string().max(500), z.record(z.string().max(100), fact)).optional(),
});

/** A detector that was exchanged: what came down, what went up in its place. Added and never changed. */
export const swap = kept({
  id,
  /** As that of an entry. */
  time: words,
  zone: words.optional(),
  by: words.optional(),
  role: words.optional(),
  detector: id,
  /** Tag and titles of the models as they were then, so that the line reads when both are long gone. */
  tag: words.default(""),
  from: words.default(""),
  to: words.default(""),
  reason: words.default(""),
  /** Of the new device. */
  serial: words.optional(),
});
