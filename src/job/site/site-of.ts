import type { Problem, Site } from "#engine";
import { placeSaid } from "../parse/record-words.ts";
import {
  isSiteKind,
  type JobFile,
  type JobRecords,
  type RecordKind,
  recordKinds,
  type SiteKind,
} from "../schema/job-file.ts";
import type { JobPlanning } from "../schema/planning.ts";
import { planningOf } from "./planning-of.ts";
import { lostReference } from "./references.ts";
import { type SiteRecords, toSite } from "./to-site.ts";

/**
 * The job for the engine: radians, planning numbers filled in, nothing that refers to what is not there.
 *
 * Changes of several people that meet may break what each of them had left whole, a detector in a room that another deleted:
 * such a record is left out, and a problem names it. Records that did not change keep their identity from call to call.
 *
 * @param job - A job that was read or that a document holds.
 */
export function siteOf(job: JobFile): { readonly site: Site; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const ids = {} as Record<RecordKind, Set<string>>;
  const lists = {} as Record<SiteKind, readonly unknown[]>;
  for (const kind of recordKinds) {
    const all = job[kind] as readonly JobRecords[RecordKind][];
    const whole = all.filter((record) => {
      const lost = lostReference(kind, record, ids);
      if (lost)
        problems.push({
          code: "job-reference-lost",
          values: { place: placeSaid(kind, record), what: lost.what },
          records: [record.id],
          ...(ids.rooms?.has(lost.room ?? "") && { room: lost.room! }),
        });
      return !lost;
    });
    ids[kind] = new Set(whole.map((record) => record.id));
    if (isSiteKind(kind))
      lists[kind] = converted(
        kind,
        (whole.length === all.length ? all : whole) as readonly JobRecords[SiteKind][],
        ids,
      );
  }
  problems.push(...doubledTags(lists.detectors as Site["detectors"]));
  const site = { name: job.name, defaults: planning(job.defaults), ...lists } as unknown as Site;
  return { site, problems };
}

const engineRecords = new WeakMap<object, unknown>();
const engineLists = new WeakMap<readonly unknown[], readonly unknown[]>();
const plannings = new WeakMap<object, Site["defaults"]>();

/** Engine records of a list; the same list comes back for the same records. */
function converted<Kind extends SiteKind>(
  kind: Kind,
  records: readonly JobRecords[Kind][],
  ids: Readonly<Record<RecordKind, ReadonlySet<string>>>,
): readonly SiteRecords[Kind][] {
  const list = records.map((record) => {
    const known = engineRecords.get(record) as SiteRecords[Kind] | undefined;
    const made = known ?? toSite(kind, record);
    if (!known) engineRecords.set(record, made);
    return kind === "detectors"
      ? (withPresentRooms(made as SiteRecords["detectors"], ids.rooms) as SiteRecords[Kind])
      : made;
  });
  const before = engineLists.get(records) as readonly SiteRecords[Kind][] | undefined;
  if (before && before.length === list.length && before.every((record, index) => record === list[index]))
    return before;
  engineLists.set(records, list);
  return list;
}

/** A detector controls the rooms that are still there; the one that it hangs in if none is left. */
function withPresentRooms(
  detector: SiteRecords["detectors"],
  rooms: ReadonlySet<string>,
): SiteRecords["detectors"] {
  if (detector.controls.every((room) => rooms.has(room))) return detector;
  const present = detector.controls.filter((room) => rooms.has(room));
  return { ...detector, controls: present.length > 0 ? present : [detector.room] };
}

function planning(own: JobPlanning): Site["defaults"] {
  const known = plannings.get(own);
  if (known) return known;
  const made = planningOf(own);
  plannings.set(own, made);
  return made;
}

function doubledTags(detectors: Site["detectors"]): readonly Problem[] {
  const byTag = new Map<string, Site["detectors"][number][]>();
  for (const detector of detectors)
    if (detector.tag !== "") byTag.set(detector.tag, [...(byTag.get(detector.tag) ?? []), detector]);
  return [...byTag]
    .filter(([, those]) => those.length > 1)
    .map(([tag, those]) => ({
      code: "job-tag-twice",
      values: { tag, count: those.length },
      room: those[0]!.room,
      records: those.map((detector) => detector.id),
    }));
}
