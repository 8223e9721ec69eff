import * as Y from "yjs";
import { type Problem, say, type Words } from "#engine";
import { difference, loadFile } from "../commands/load-file.ts";
import { authorOf } from "../document/author.ts";
import { createJobDocument } from "../document/job-document.ts";
import { type ParsedJob, parseJob } from "../parse/parse-job.ts";
import type { JobFile } from "../schema/job-file.ts";
import { exchangePictures, pictureName, pictureTexts, withPictures } from "./pictures.ts";
import { isZip, unpacker, type unpackLimits, type ZipEntry, zipEntries } from "./unpack.ts";

/** A job that came out of a file: with its history, where the file brought one. */
export type ReadJob =
  | (Extract<ParsedJob, { readonly job: JobFile }> & {
      /** Yjs update that holds all of the job. */
      readonly history?: Uint8Array;
    })
  | Extract<ParsedJob, { readonly job?: undefined }>;

/**
 * Reads a file that holds a job: `NAME.job.json`, or packed, `NAME.job.zip`. Told apart by their first bytes.
 *
 * @param limits - What may come out of a packed file; those of the rules if absent.
 * @returns The job, or problems. Never throws on any content.
 */
export function readJobFile(
  bytes: Uint8Array,
  limits?: { readonly [Name in keyof typeof unpackLimits]: number },
): ReadJob {
  if (bytes.length === 0) return { problems: [{ code: "job-file-empty", values: {} }] };
  return isZip(bytes) ? readArchive(bytes, limits) : parseJob(new TextDecoder().decode(bytes));
}

function readArchive(bytes: Uint8Array, limits?: Parameters<typeof unpacker>[1]): ReadJob {
  const entries = zipEntries(bytes);
  if ("code" in entries) return { problems: [entries] };
  const found = partsOf(entries);
  if ("code" in found) return { problems: [found] };
  const unpack = unpacker(bytes, limits);
  const text = unpack(found.job);
  if ("code" in text) return { problems: [text] };
  const pictures = new Map<string, Uint8Array>();
  for (const [name, entry] of found.pictures) {
    const picture = unpack(entry);
    if ("code" in picture) return { problems: [picture] };
    pictures.set(name, picture);
  }
  const history = found.history && unpack(found.history);
  if (history && "code" in history) return { problems: [history] };
  const parsed = parseJob(new TextDecoder().decode(text));
  if (!parsed.job) return parsed;
  const missing = new Set<string>();
  const textOf = pictureTexts(pictures, (name) => missing.add(name));
  const job = withPictures(parsed.job, textOf);
  const notes: Problem[] = [...parsed.notes];
  if (found.aside.length > 0)
    notes.push({
      code: "job-archive-left-aside",
      values: { count: found.aside.length, names: listed(found.aside) },
    });
  const usable = history && historyOf(history, { job, textOf });
  if (usable && "unusable" in usable)
    notes.push({ code: "job-archive-history-unusable", values: { reason: usable.unusable } });
  if (missing.size > 0)
    notes.push({
      code: "job-archive-photo-missing",
      values: { count: missing.size, names: listed(missing) },
    });
  return {
    job,
    notes,
    readOnly: parsed.readOnly,
    ...(usable && !("unusable" in usable) ? { history: usable } : {}),
  };
}

interface Parts {
  readonly job: ZipEntry;
  readonly history: ZipEntry | undefined;
  readonly pictures: ReadonlyMap<string, ZipEntry>;
  /** Names of what is not looked at. */
  readonly aside: readonly string[];
}

/** Tells what of a zip file belongs to the job. A folder that was packed as a whole has its files one step below the top. */
function partsOf(entries: readonly ZipEntry[]): Parts | Problem {
  const jobs = entries.filter(({ name }) => /^([^/\\]+\/)?[^/\\]+\.job\.json$/i.test(name) && !foreign(name));
  const [job] = jobs;
  if (!job) return { code: "job-archive-no-job", values: {} };
  if (jobs.length > 1) return { code: "job-archive-several-jobs", values: { count: jobs.length } };
  const folder = job.name.slice(0, job.name.lastIndexOf("/") + 1);
  const pictures = new Map<string, ZipEntry>();
  const aside: string[] = [];
  let history: ZipEntry | undefined;
  for (const entry of entries) {
    if (entry === job) continue;
    const name = entry.name.startsWith(folder) ? entry.name.slice(folder.length) : "";
    if (name === "history.bin") history = entry;
    else if (pictureName.test(name)) pictures.set(name, entry);
    else aside.push(entry.name);
  }
  return { job, history, pictures, aside };
}

/** What some systems put beside each file of their own accord, or a way out of the folder. */
const foreign = (name: string): boolean => /(^|\/)(__MACOSX\/|\._)|^\.\.?\//.test(name);

/** Some names for a sentence; nobody reads a hundred, and a hostile one may be long. */
const listed = (names: Iterable<string>): string => {
  const all = [...names];
  const some = all.slice(0, 5).map((name) => name.replace(/\p{Cc}/gu, "?").slice(0, 60));
  return `${some.join(", ")}${all.length > some.length ? ", …" : ""}`;
};

/** The history with its pictures, and on top of it what a hand changed in the readable file; or why it cannot be used. */
function historyOf(
  packed: Uint8Array,
  { job, textOf }: { readonly job: JobFile; readonly textOf: ReturnType<typeof pictureTexts> },
): Uint8Array | { readonly unusable: Words } {
  try {
    const ydoc = new Y.Doc();
    Y.applyUpdate(ydoc, packed);
    if (ydoc.store.pendingStructs || ydoc.store.pendingDs) return { unusable: say`a part of it is missing` };
    if (ydoc.store.clients.size === 0) return { unusable: say`it is empty` };
    exchangePictures(ydoc, textOf);
    const whole = Y.encodeStateAsUpdate(ydoc);
    const own = new Y.Doc();
    Y.applyUpdate(own, whole);
    const document = createJobDocument(own);
    const before = document.job();
    if (before.id !== job.id) return { unusable: say`it belongs to another job` };
    if (difference(before, job).length === 0) return whole;
    own.clientID = authorOf([job, before, [...Y.encodeStateVector(own)]]);
    const outcome = document.run(loadFile(job));
    return outcome.done
      ? Y.encodeStateAsUpdate(own)
      : { unusable: say`the readable file cannot be laid on top of it` };
  } catch (error) {
    return { unusable: error instanceof Error ? error.message : String(error) };
  }
}
