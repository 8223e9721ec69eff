import { deflateSync, type Zippable, zipSync } from "fflate";
import * as Y from "yjs";
import { authorOf } from "../document/author.ts";
import { createJobDocument } from "../document/job-document.ts";
import { jobText } from "../text/job-text.ts";
import { jobFileName } from "./file-name.ts";
import { exchangePictures, pictureFiles, withPictures } from "./pictures.ts";
import { unpackLimits } from "./unpack.ts";

/** Stands where a file's time would: the first day that the format knows, as any time zone writes it. */
const noTime = (): Date => new Date(1980, 0, 1);

/**
 * Packs a job: readable file, pictures, history. The same document gives the same bytes.
 *
 * @param packed.history - Yjs update of the whole document.
 * @param packed.id - Identity for a job that has none yet.
 * @returns Bytes of `NAME.job.zip`.
 */
export function writeJobArchive(packed: { readonly history: Uint8Array; readonly id: string }): Uint8Array {
  const ydoc = new Y.Doc();
  Y.applyUpdate(ydoc, packed.history);
  if (!ydoc.getMap("head").has("id")) {
    // The same few bytes however often it is done, so that copies do not differ by it.
    ydoc.clientID = authorOf(`identity ${packed.id}`);
    ydoc.getMap("head").set("id", packed.id);
  }
  const document = createJobDocument(ydoc);
  const job = document.job();
  document.close();
  const pictures = pictureFiles(job, ydoc);
  exchangePictures(ydoc, pictures.nameOf);
  const files = new Map<string, Uint8Array>([
    [jobFileName(job.name, "json"), new TextEncoder().encode(jobText(withPictures(job, pictures.nameOf)))],
    ["history.bin", Y.encodeStateAsUpdate(ydoc)],
    ...[...pictures.files].sort(([a], [b]) => (a < b ? -1 : 1)),
  ]);
  const entries: Zippable = {};
  for (const [name, bytes] of files)
    entries[name] = [bytes, { level: levelFor(name, bytes), mtime: noTime() }];
  return zipSync(entries);
}

/** Pictures are packed already; what would pack suspiciously well is left as it is, so that the reader's limit holds for it. */
function levelFor(name: string, bytes: Uint8Array): 0 | 6 {
  if (name.startsWith("photos/")) return 0;
  return deflateSync(bytes, { level: 6 }).length * (unpackLimits.ratio / 2) < bytes.length ? 0 : 6;
}
