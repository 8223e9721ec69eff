import * as Y from "yjs";
import { printOf } from "../commands/record-print.ts";
import type { JobFile } from "../schema/job-file.ts";
import { base64Of, bytesOfBase64 } from "./base64.ts";

/** Says what stands in place of a picture's text. */
type Exchange = (text: string, type: unknown) => string;

/** A job with the text of each picture (photographs, pictures under the plan) exchanged. */
export const withPictures = (job: JobFile, exchange: Exchange): JobFile => ({
  ...job,
  photos: job.photos.map((photo) => ({ ...photo, data: exchange(photo.data, photo.type) })),
  underlays: job.underlays.map((underlay) =>
    underlay.picture
      ? {
          ...underlay,
          picture: {
            ...underlay.picture,
            data: exchange(underlay.picture.data, underlay.picture.type),
          },
        }
      : underlay,
  ),
});

/**
 * Exchanges the text of each picture in a document, in place: the places and authors of all changes stay what they are.
 * To be used on a document of one's own, whose update is written next and that nobody else looks at.
 */
export function exchangePictures(ydoc: Y.Doc, exchange: Exchange): void {
  for (const structs of ydoc.store.clients.values())
    for (const struct of structs) {
      if (!(struct instanceof Y.Item) || !(struct.content instanceof Y.ContentAny)) continue;
      const { content, parentSub } = struct;
      if (parentSub === "data")
        content.arr = content.arr.map((value: unknown) =>
          typeof value === "string" ? exchange(value, undefined) : value,
        );
      else if (parentSub === "picture")
        content.arr = content.arr.map((value: unknown) =>
          isPicture(value) ? { ...value, data: exchange(value.data, value.type) } : value,
        );
    }
}

const isPicture = (value: unknown): value is { readonly data: string; readonly type?: unknown } =>
  typeof value === "object" && value !== null && "data" in value && typeof value.data === "string";

/** Names of pictures in a packed job. */
export const pictureName = /^photos\/[\w-]+\.(jpg|png)$/;

/** The pictures of a job as files: by the name that stands in their place. */
export interface PictureFiles {
  readonly files: ReadonlyMap<string, Uint8Array>;
  /** From a picture's text to the name of its file; a text that is no picture stays as it is. */
  readonly nameOf: Exchange;
}

/** Takes the pictures out of a job and of its history. The same picture is one file, however often it occurs. */
export function pictureFiles(job: JobFile, ydoc: Y.Doc): PictureFiles {
  const types = new Map<string, unknown>();
  const note: Exchange = (text, type) => {
    if (type !== undefined || !types.has(text)) types.set(text, type);
    return text;
  };
  withPictures(job, note);
  exchangePictures(ydoc, note);
  const names = new Map<string, string>();
  const files = new Map<string, Uint8Array>();
  for (const [text, type] of [...types].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const bytes = text === "" ? undefined : bytesOfBase64(text);
    if (!bytes) continue;
    let name = "";
    // A name that is not given yet, and that no field of the job holds as its own text.
    for (let number = 1; name === "" || files.has(name) || types.has(name); number++)
      name = `photos/${printOf({ text })}${number > 1 ? `-${number}` : ""}.${type === "image/png" ? "png" : "jpg"}`;
    names.set(text, name);
    files.set(name, bytes);
  }
  return { files, nameOf: (text) => names.get(text) ?? text };
}

/**
 * The way back: from the name of a file to the picture's text.
 *
 * @param missing - Told of a name whose file is not there; its picture is empty then.
 */
export function pictureTexts(
  files: ReadonlyMap<string, Uint8Array>,
  missing: (name: string) => void,
): Exchange {
  const texts = new Map<string, string>();
  return (name) => {
    const known = texts.get(name);
    if (known !== undefined || !pictureName.test(name)) return known ?? name;
    const bytes = files.get(name);
    if (!bytes) missing(name);
    const text = bytes ? base64Of(bytes) : "";
    texts.set(name, text);
    return text;
  };
}
