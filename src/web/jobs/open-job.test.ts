import { expect, test } from "vitest";
import * as Y from "yjs";
import { applyKept, createJobDocument, emptyJob, initialUpdate, type JobFile, underlayOf } from "#job";
import { documentJob } from "./open-job.ts";

const drawing = {
  id: "sheet",
  storey: "ground",
  name: "Sheet",
  file: "sheet.dxf",
  layers: [{ name: "0", shown: true }],
  lines: Float64Array.of(0, 0, 3, 0, 3, 0, 3, 2),
  layerOf: Uint16Array.of(0, 0),
};
const nothing = {
  storeys: [],
  rooms: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  luminaires: [],
  floorPieces: [],
};

const opened = (job: JobFile) => {
  const ydoc = new Y.Doc();
  applyKept(ydoc, [initialUpdate(job)]);
  return documentJob("job", createJobDocument(ydoc), () => "new");
};
const linesIn = ({ current }: Awaited<ReturnType<typeof opened>>) =>
  current().underlays.map(({ lines }) => [...lines]);

test("a job with a drawing opens with its lines unpacked", async () => {
  const source = await opened({ ...emptyJob("Site"), underlays: [underlayOf(drawing)] });
  expect(linesIn(source)).toEqual([[0, 0, 3, 0, 3, 0, 3, 2]]);
});

test("the first drawing that is taken into a job shows as soon as it is taken, and who listens hears of it", async () => {
  const source = await opened(emptyJob("Site"));
  expect(linesIn(source)).toEqual([]);
  let told = 0;
  const stop = source.subscribe(() => told++);
  const read = { site: nothing, drawings: [drawing], shift: [0, 0] as const, leftOut: [], problems: [] };
  expect(await source.current().take(read, { file: "sheet.dxf", choice: {} })).toEqual([]);
  expect(told).toBeGreaterThan(0);
  expect(linesIn(source)).toEqual([[0, 0, 3, 0, 3, 0, 3, 2]]);
  stop();
});

test("a drawing that comes by another way, as from a second device, is shown when what unpacks it is loaded", async () => {
  const ydoc = new Y.Doc();
  applyKept(ydoc, [initialUpdate(emptyJob("Site"))]);
  const document = createJobDocument(ydoc);
  const source = await documentJob("job", document, () => "new");
  const shown = new Promise<void>((done) => {
    source.subscribe(() => {
      if (source.current().underlays.length > 0) done();
    });
  });
  source.current().keep("plan.edit.add", [{ do: "put", kind: "underlays", record: underlayOf(drawing) }]);
  await shown;
  expect(linesIn(source)).toEqual([[0, 0, 3, 0, 3, 0, 3, 2]]);
});
