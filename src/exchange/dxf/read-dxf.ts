import { english, type Problem, say } from "#engine";
import { partsOf } from "../linework/parts.ts";
import { proposeDrawingUnit } from "../linework/unit-proposal.ts";
import { megabytes } from "../plan/limits.ts";
import { looksLike } from "../plan/looks-like.ts";
import { binaryRecords, isBinaryDxf } from "./binary-records.ts";
import { type Block, blocksOf } from "./blocks.ts";
import { declaredUnit } from "./declared-unit.ts";
import { entityReader } from "./entities.ts";
import { gatherer } from "./gather.ts";
import { type DxfHeader, headerOfDrawing } from "./header.ts";
import { type DxfLayer, layerTable } from "./layer-table.ts";
import { type Letters, lettersOf, plainLetters } from "./letters.ts";
import { type DxfLimits, usualDxfLimits } from "./limits.ts";
import { notesOf } from "./notes.ts";
import { putter } from "./put.ts";
import type { RecordReader, TextReader } from "./record.ts";
import type { DxfResult } from "./report.ts";
import { type Sections, sectionsOf } from "./sections.ts";
import { because, type Tally, tally } from "./tally.ts";
import { textRecords } from "./text-records.ts";
import { DxfTrouble } from "./trouble.ts";

export interface ReadDxfOptions {
  readonly fileName: string;
  readonly limits?: Partial<DxfLimits>;
  /** Called now and then with the step's name and the share done, 0 … 1. */
  readonly progress?: (step: string, share: number) => void;
}

/**
 * Reads the lines and texts of a DXF drawing, written as text or in binary, R10 to R2018, or the problems that stopped it.
 * Never an empty success: a drawing without a line in its model is a problem.
 *
 * 1. the framing is checked from end to end  2. header and layers  3. blocks, each read once  4. entities of the model, put
 * into place with their blocks  5. unit and parts proposed
 *
 * Lines keep the drawing's own coordinates in doubles, however far from the origin. Widths of polylines, patterns of hatches
 * and thicknesses are not drawn. It runs to its end in one go: call it where it can be killed, a worker with a time limit.
 *
 * @source FROM-MEMORY for what the groups mean; held by tests on files of several writers
 */
export function readDxf(bytes: Uint8Array, options: ReadDxfOptions): DxfResult {
  const limits = { ...usualDxfLimits, ...options.limits };
  const progress = options.progress ?? (() => {});
  if (bytes.length === 0) return stopped({ code: "file-empty", values: {} });
  if (bytes.length > limits.bytes)
    return stopped({ code: "plan-too-large", values: { limit: megabytes(limits.bytes) } });
  const binary = isBinaryDxf(bytes);
  const other = binary ? undefined : otherKind(bytes);
  if (other) return stopped(other);
  const records = (letters: TextReader): RecordReader =>
    binary ? binaryRecords(bytes, letters) : textRecords(bytes, letters);
  try {
    progress("check", 0);
    const walk = records(plainLetters);
    const sections = sectionsOf(walk, () => progress("check", (0.4 * walk.place().offset) / bytes.length));
    const header = headerOfDrawing(sections.header);
    const letters = lettersOf({ release: header.release, page: header.codePage });
    const reader = records(letters.read);
    return readDrawing(reader, {
      sections,
      header,
      letters,
      binary,
      limits,
      progress,
      size: bytes.length,
      fileName: options.fileName,
    });
  } catch (error) {
    if (error instanceof DxfTrouble) return stopped(error.problem);
    throw error;
  }
}

interface Reading {
  readonly sections: Sections;
  readonly header: DxfHeader;
  readonly letters: Letters;
  readonly binary: boolean;
  readonly limits: DxfLimits;
  readonly progress: (step: string, share: number) => void;
  readonly size: number;
  readonly fileName: string;
}

const readDrawing = (reader: RecordReader, reading: Reading): DxfResult => {
  const { sections, header, letters, binary, limits, progress, size, fileName } = reading;
  progress("blocks", 0.4);
  const layers = new Map<string, DxfLayer>();
  for (const place of sections.places.get("TABLES") ?? []) {
    reader.goTo(place);
    for (const [key, layer] of layerTable(reader)) if (!layers.has(key)) layers.set(key, layer);
  }
  const blocks = new Map<string, Block>();
  for (const place of sections.places.get("BLOCKS") ?? []) {
    reader.goTo(place);
    for (const [key, block] of blocksOf(reader)) if (!blocks.has(key)) blocks.set(key, block);
  }
  const counts = tally();
  const into = gatherer(layers, limits);
  const put = putter(blocks, { gatherer: into, tally: counts, limits });
  const entities = entityReader(put.put, counts);
  let seen = 0;
  for (const place of sections.places.get("ENTITIES") ?? []) {
    reader.goTo(place);
    for (let record = reader.next(); record && !ends.has(record.type); record = reader.next()) {
      if (++seen % 50_000 === 0) progress("lines", 0.5 + (0.4 * reader.place().offset) / size);
      entities.record(record);
    }
    entities.end();
  }
  const gathered = into.result();
  if (gathered.layerOf.length === 0) return stopped(nothingIn(counts, sections));
  progress("unit", 0.9);
  const declared = declaredUnit(header);
  const unit = proposeDrawingUnit({ ...gathered, ...(declared ? { declared } : {}) });
  const parts = partsOf(gathered, unit);
  progress("done", 1);
  return {
    linework: { ...gathered, file: fileName, format: "dxf", unit, parts },
    report: {
      file: fileName,
      format: "dxf",
      release: header.releaseName,
      binary,
      codePage: letters.page,
      read: [...counts.counts].map(([what, count]) => ({ what, count })),
      lines: gathered.layerOf.length,
      arcs: gathered.arcs.length,
      texts: gathered.texts.length,
      blocks: gathered.blocks.length,
      leftOut: [...counts.reasons.values()],
      notes: notesOf({ sections, letters, counts, put, unit, declared, parts: parts.length }),
    },
  };
};

const ends = new Set(["ENDSEC", "EOF", "SECTION"]);

/** What a file is that is no DXF drawing, or cannot be read as one. */
const otherKind = (bytes: Uint8Array): Problem | undefined => {
  const wide = wideEncoding(bytes);
  if (wide) return { code: "dxf-wrong-encoding", values: { encoding: wide } };
  const head = String.fromCharCode(...bytes.subarray(0, 4096));
  const version = /^AC\d{4}/.exec(head)?.[0];
  if (version) return { code: "dxf-is-dwg", values: { version } };
  // Comments may come first; then the first section begins.
  if (
    /^(?:\xef\xbb\xbf)?\s*(?:999[ \t]*[\r\n]+[^\r\n]*[\r\n]+\s*)*0[ \t]*[\r\n]+[ \t]*(SECTION|EOF)/i.test(
      head,
    )
  )
    return undefined;
  if (/^(?:\xef\xbb\xbf)?\s*(?:999[ \t]*[\r\n]+[^\r\n]*[\r\n]+\s*)*0?[ \t]*[\r\n]*$/.test(head))
    return bytes.length > head.length
      ? undefined
      : { code: "dxf-truncated", values: { place: say`its beginning` } };
  return { code: "dxf-not-dxf", values: { found: looksLike(bytes) } };
};

const wideEncoding = (bytes: Uint8Array): string | undefined => {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) return "UTF-16";
  return undefined;
};

const nothingIn = (counts: Tally, sections: Sections): Problem => {
  const leftOut = [...counts.reasons.values()];
  const onPaper = leftOut
    .filter(({ why }) => english(why) === english(because.paper))
    .reduce((sum, { count }) => sum + count, 0);
  const entities =
    leftOut.reduce((sum, { count }) => sum + count, 0) +
    [...counts.counts.values()].reduce((a, b) => a + b, 0);
  if (onPaper > 0 && onPaper >= entities / 2) return { code: "dxf-paper-only", values: { count: onPaper } };
  return { code: "dxf-nothing-inside", values: { entities, records: sections.records } };
};

const stopped = (problem: Problem): DxfResult => ({ problems: [problem] });
