import { basename } from "node:path";
import type { Metres, Problem } from "#engine";
import { readPicture, straightPicture } from "#exchange";
import { readScanInWorker } from "#exchange-node";
import type { Answer, Refusal, World } from "./command.ts";
import { rounded } from "./words.ts";
import { writeJob } from "./write-job.ts";

/** Whether a file is a picture: by its first bytes, else by its name; what only is called so gets a sentence of its own. */
export const isPicture = (file: string, bytes: Uint8Array): boolean =>
  (bytes[0] === 0x89 && bytes[1] === 0x50) ||
  (bytes[0] === 0xff && bytes[1] === 0xd8) ||
  /\.(png|jpe?g)$/i.test(file);

/**
 * A picture of a plan into a new job: under its one storey, as large as the pixels say, to draw the rooms over it.
 *
 * @param metres - Side of one pixel. [m]
 */
export async function importPicture(
  world: World,
  of: { readonly file: string; readonly bytes: Uint8Array; readonly output: string; readonly metres: Metres },
): Promise<Answer | Refusal> {
  const { file, metres } = of;
  const read = readPicture(of.bytes);
  if ("problems" in read) return read;
  const { picture } = read;
  const { createJobDocument, demoModels, emptyJob, historyOf, loadFile, mostPictureText } = await import(
    "#job"
  );
  const data = Buffer.from(picture.bytes).toString("base64");
  if (data.length > mostPictureText) return { problems: [tooLarge(mostPictureText)] };
  const { width, height, map } = straightPicture(picture, metres);
  const name = basename(file).replace(/\.[^.]+$/, "");
  const document = createJobDocument(undefined, { newId: world.newId });
  document.run(
    loadFile({
      ...emptyJob(name),
      id: world.newId(),
      storeys: [{ id: "storey-1", name: "Ground floor", elevation: 0 }],
      models: [...demoModels],
      underlays: [
        {
          ...{ id: "picture-1", storey: "storey-1", name: basename(file), file: basename(file) },
          ...{ shown: true, layers: [], origin: [0, 0], turn: 0, lines: "" },
          picture: { type: `image/${picture.format}`, width, height, data, map: [...map] },
        },
      ],
    }),
  );
  const made = { job: document.job(), history: historyOf(document) };
  document.close();
  const failed = await writeJob(world, of.output, made);
  if (failed) return { problems: [failed] };
  const size = { width: rounded(picture.width * metres), height: rounded(picture.height * metres) };
  return {
    exit: 0,
    json: {
      storeys: made.job.storeys.map(({ name, elevation }) => ({ name, elevation, rooms: 0 })),
      rooms: [],
      picture: { ...size, pixel: metres, removed: picture.removed },
    },
    text: [
      `A picture of ${size.width} m × ${size.height} m, ${picture.width} × ${picture.height} pixels of ${rounded(metres)} m.`,
      ...(picture.removed.length > 0 ? [`Taken out of it: ${picture.removed.join(", ")}.`] : []),
      "It holds no rooms: draw them over it.",
      "",
      `Written to ${of.output}.`,
    ].join("\n"),
  };
}

/** Longest sides that are tried one after the other until the picture fits into a job; enough to read a plan by. [px] */
const longestSides = [2400, 1700, 1200] as const;

/**
 * A page of a PDF, scanned or with pictures beside its lines, into a new job as the picture that it is.
 *
 * @param scale.metres - Side of one pixel. [m] @param scale.of - Denominator of the scale of the paper: 100 is 1 : 100.
 */
export async function importScan(
  world: World,
  of: {
    readonly file: string;
    readonly bytes: Uint8Array;
    readonly output: string;
    readonly page: number;
    readonly scale: { readonly metres: Metres } | { readonly of: number };
    readonly progress: (step: string, share: number) => void;
  },
): Promise<Answer | Refusal> {
  const { mostPictureText } = await import("#job");
  for (const longest of longestSides) {
    const read = await readScanInWorker(
      // A copy: the reader's package takes its bytes away.
      { bytes: of.bytes.slice(), page: of.page, longest },
      { progress: of.progress, signal: world.cancelled },
    );
    if ("problems" in read) return read;
    if ((read.picture.length * 4) / 3 > mostPictureText - 4) continue;
    const size = readPicture(read.picture);
    if ("problems" in size) return size;
    const metres =
      "metres" in of.scale ? of.scale.metres : (read.paper[0] * of.scale.of) / size.picture.width;
    return importPicture(world, { file: of.file, bytes: read.picture, output: of.output, metres });
  }
  return { problems: [tooLarge(mostPictureText)] };
}

/** Three bytes are four letters of text. */
const tooLarge = (letters: number): Problem => ({
  code: "plan-too-large",
  values: { limit: `${Math.floor((letters * 3) / 4 / 1e6)} MB` },
});
