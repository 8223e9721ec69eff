import { unzipSync, type Zippable, zipSync } from "fflate";
import { expect, test } from "vitest";
import * as Y from "yjs";
import {
  createJobDocument,
  emptyJob,
  initialUpdate,
  jobText,
  mergeCopy,
  parseJob,
  readJobFile,
  setName,
  writeJobArchive,
} from "#job";
import { seeded } from "../exchange/mutated.ts";

type Random = () => number;
const below = (random: Random, count: number): number => Math.floor(random() * count);

const job = parseJob({
  ...emptyJob("Annex"),
  id: "annex",
  rooms: [0, 5, 10].map((x) => ({
    id: `r${x}`,
    name: `Room ${x}`,
    outline: [
      [x, 0],
      [x + 4, 0],
      [x + 4, 3],
      [x, 3],
    ],
    ceilingHeight: 2.5,
  })),
  photos: ["AQID", "/9j/4AAQ"].map((data, i) => ({
    id: `p${i}`,
    type: "image/jpeg",
    width: 4,
    height: 3,
    data,
  })),
}).job!;

const documentOf = () => {
  const ydoc = new Y.Doc();
  Y.applyUpdate(ydoc, initialUpdate(job));
  return createJobDocument(ydoc);
};

/** A packed job as it is, with something in its history. */
const whole = (): Uint8Array => {
  const document = documentOf();
  document.run(setName("Annex 2"));
  document.run(setName("Annex"));
  return writeJobArchive({ history: Y.encodeStateAsUpdate(document.ydoc), id: "annex" });
};

const faults: readonly ((bytes: Uint8Array, random: Random) => Uint8Array)[] = [
  (bytes, random) => bytes.subarray(0, below(random, bytes.length)),
  (bytes, random) => bytes.subarray(below(random, bytes.length)),
  (bytes, random) => changed(bytes, below(random, bytes.length), () => below(random, 256)),
  (bytes, random) => changed(bytes, below(random, bytes.length), (byte) => byte ^ (1 << below(random, 8))),
  (bytes, random) => changed(bytes, below(random, bytes.length), () => 255),
  (bytes, random) => changed(bytes, below(random, bytes.length), () => 0),
  (bytes, random) => {
    const [from, length] = [below(random, bytes.length), below(random, 64)];
    const copy = bytes.slice();
    copy.copyWithin(below(random, bytes.length), from, from + length);
    return copy;
  },
  (bytes, random) => {
    // A number of the directory or of a file's head, where sizes and places stand.
    const copy = bytes.slice();
    const view = new DataView(copy.buffer);
    const at = below(random, Math.max(1, copy.length - 4));
    if (copy.length >= 4) view.setUint32(at, random() < 0.5 ? 0xffffffff : below(random, 2 ** 32), true);
    return copy;
  },
];

function changed(bytes: Uint8Array, at: number, to: (byte: number) => number): Uint8Array {
  const copy = bytes.slice();
  if (copy.length > 0) copy[at] = to(copy[at]!);
  return copy;
}

function mutated(bytes: Uint8Array, random: Random): Uint8Array {
  let result = bytes;
  for (let i = 1 + below(random, 3); i > 0; i--)
    result = faults[below(random, faults.length)]!(result, random);
  return result;
}

/** A packed job with faults in it: in the zip itself, or in one of its files, whose checksum then agrees with the fault. */
function mutatedArchive(bytes: Uint8Array, seed: number): Uint8Array {
  const random = seeded(seed);
  if (random() < 0.4) return mutated(bytes, random);
  const files: Zippable = unzipSync(bytes);
  const names = Object.keys(files);
  // Most often the history: its bytes are read by the document itself.
  const name = random() < 0.7 ? "history.bin" : names[below(random, names.length)]!;
  const content = mutated(files[name] as Uint8Array, random);
  return zipSync({ ...files, [name]: content });
}

const cases = 2000;

test(`${cases} mutated packed jobs give a job or a problem, never a crash, and one that is merged leaves the job readable`, () => {
  const file = whole();
  const seen = new Map<string, number>();
  for (let seed = 1; seed <= cases; seed++) {
    const read = readJobFile(mutatedArchive(file, seed));
    if (!read.job) {
      expect(read.problems.length, `seed ${seed}`).toBeGreaterThan(0);
      for (const { code } of read.problems) seen.set(code, (seen.get(code) ?? 0) + 1);
      continue;
    }
    const kind = read.history ? "with history" : "without history";
    seen.set(kind, (seen.get(kind) ?? 0) + 1);
    for (const { code } of read.notes) seen.set(code, (seen.get(code) ?? 0) + 1);
    // What was read is a job: it can be written and read again.
    expect(parseJob(jobText(read.job)).problems, `seed ${seed}`).toBeUndefined();
    const document = documentOf();
    mergeCopy(document, read);
    expect(parseJob(jobText(document.job())).problems, `seed ${seed}`).toBeUndefined();
  }
  // The mutations must reach every part of the reader, or the test would prove little.
  for (const kind of [
    "job-archive-damaged",
    "job-not-json",
    "job-archive-history-unusable",
    "with history",
    "without history",
  ])
    expect(seen.get(kind) ?? 0, kind).toBeGreaterThan(20);
}, 180_000);
