import * as z from "zod";
import { id, kept, words } from "./values.ts";

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
});
