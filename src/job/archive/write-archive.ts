import * as Y from "yjs";
import { authorOf } from "../document/author.ts";
import { createJobDocument } from "../document/job-document.ts";
import { jobText } from "../text/job-text.ts";
import { jobFileName } from "./file-name.ts";
import { exchangePictures, pictureFiles, withPictures } from "./pictures.ts";
import { unpackLimits } from "./unpack.ts";
import { type ZipFile, zipBytes } from "./zip-bytes.ts";

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
    ydoc.clientID = authorOf({ identity: packed.id });
    ydoc.getMap("head").set("id", packed.id);
  }
  const document = createJobDocument(ydoc);
  const job = document.job();
  document.close();
  const pictures = pictureFiles(job, ydoc);
  exchangePictures(ydoc, pictures.nameOf);
  return zipBytes(
    [
      file(
        jobFileName(job.name, "json"),
        new TextEncoder().encode(jobText(withPictures(job, pictures.nameOf))),
      ),
      file("history.bin", Y.encodeStateAsUpdate(ydoc)),
      ...[...pictures.files]
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([name, bytes]): ZipFile => ({ name, bytes, packing: "as-it-is" })),
    ],
    { ratio: unpackLimits.ratio / 2 },
  );
}

const file = (name: string, bytes: Uint8Array): ZipFile => ({ name, bytes, packing: "packed" });
