import { describe, expect, test } from "vitest";
import type { Opening, Point, Room } from "#engine";
import {
  addModel,
  createJobDocument,
  demoModels,
  editSite,
  loadFile,
  type Reading,
  takeReading,
} from "../index.ts";
import { emptyJob } from "../schema/job-file.ts";

const room = (id: string, left: number, right: number, more: Partial<Room> = {}): Room => ({
  id,
  storey: "ground",
  number: "",
  name: id,
  use: "other",
  outline: [
    [left, 0],
    [right, 0],
    [right, 4],
    [left, 4],
  ],
  holes: [],
  floor: 0,
  ceilingHeight: 2.5,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
  ...more,
});

const door = (id: string, of: string, at: Point): Opening => ({
  id,
  rooms: [of, null],
  kind: "door",
  from: at,
  to: [at[0] + 0.9, at[1]],
  sill: 0,
  head: 2,
  thickness: 0.2,
  hinge: "from",
  opensInto: of,
  angle: Math.PI / 2,
  state: "closed",
});

const reading = (rooms: readonly Room[], openings: readonly Opening[] = []): Reading => ({
  file: "plan.dxf",
  choice: { metres: 0.001 },
  survey: {
    storeys: [{ id: "ground", name: "Ground", elevation: 0 }],
    rooms,
    openings,
    obstacles: [],
    luminaires: [],
    drawings: [
      {
        id: "plan-plan-dxf",
        storey: "ground",
        name: "plan.dxf",
        file: "plan.dxf",
        lines: Float64Array.of(0, 0, 1, 0),
        layerOf: Uint16Array.of(0),
        layers: [{ name: "WALLS", shown: true }],
      },
    ],
  },
});

function job() {
  let count = 0;
  const document = createJobDocument(undefined, { newId: () => `new-${++count}` });
  document.run(loadFile(emptyJob("Annex")));
  return document;
}
const first = reading([room("a", 0, 4), room("b", 4.1, 8), room("c", 8.1, 12)], [door("d", "a", [1, 0])]);
const ids = (records: readonly { readonly id: string }[]): string[] => records.map(({ id }) => id).sort();

describe("a file read into a job that is being worked on", () => {
  test("comes in as one step, and goes as one", () => {
    const document = job();
    document.run(takeReading(first));
    expect(ids(document.job().rooms)).toEqual(["a", "b", "c"]);
    expect(ids(document.job().openings)).toEqual(["d"]);
    expect(document.job().underlays).toHaveLength(1);
    expect(document.job().underlays[0]?.choice).toEqual({ metres: 0.001 });
    document.undo();
    expect(document.job().rooms).toEqual([]);
    expect(document.job().underlays).toEqual([]);
  });

  test("[IMP-1] What a person changed since the same file was read before stays as the person left it", () => {
    const document = job();
    document.run(takeReading(first));
    document.run(editSite("rename", [{ do: "set", kind: "rooms", id: "a", fields: { name: "Workshop" } }]));
    document.run(editSite("remove", [{ do: "remove", kind: "rooms", id: "c" }]));
    const { problems } = document.run(
      takeReading(reading([room("a", 0, 4.05), room("b", 4.1, 8.05), room("c", 8.1, 12)])),
    );
    expect(problems).toEqual([
      { code: "plan-changed-stays", values: { changed: 1, names: "Workshop", removed: 1 } },
    ]);
    const { rooms } = document.job();
    expect(rooms.find(({ id }) => id === "a")).toMatchObject({
      name: "Workshop",
      outline: [
        [0, 0],
        [4, 0],
        [4, 4],
        [0, 4],
      ],
    });
    expect(rooms.find(({ id }) => id === "b")?.outline[1]).toEqual([8.05, 0]);
  });

  test("[IMP-1] a room in which something was set down counts as changed", () => {
    const document = job();
    document.run(takeReading(first));
    document.run(
      editSite("add", [
        {
          do: "put",
          kind: "dwellPlaces",
          record: { id: "desk", room: "b", kind: "desk", at: [6, 2], radius: 0.6 },
        },
      ]),
    );
    document.run(takeReading(reading([room("a", 0, 4)])));
    expect(ids(document.job().rooms)).toEqual(["a", "b"]);
    expect(ids(document.job().dwellPlaces)).toEqual(["desk"]);
  });

  test("[IMP-2] What a person removed stays removed", () => {
    const document = job();
    document.run(takeReading(first));
    document.run(editSite("remove", [{ do: "remove", kind: "rooms", id: "c" }]));
    document.run(takeReading(first));
    expect(ids(document.job().rooms)).toEqual(["a", "b"]);
    document.run(takeReading(first));
    expect(ids(document.job().rooms)).toEqual(["a", "b"]);
  });

  test("[IMP-3] What this reading no longer finds goes, unless a person changed it", () => {
    const document = job();
    document.run(takeReading(first));
    document.run(editSite("rename", [{ do: "set", kind: "rooms", id: "c", fields: { use: "plant" } }]));
    document.run(takeReading(reading([room("x", 0, 4.4)])));
    expect(ids(document.job().rooms)).toEqual(["c", "x"]);
    expect(document.job().openings).toEqual([]);
  });

  test("[IMP-4] A found room that lies on a room that stays is left out, with what is in it", () => {
    const document = job();
    document.run(
      editSite("draw", [{ do: "put", kind: "storeys", record: { id: "ground", name: "", elevation: 0 } }]),
    );
    document.run(editSite("draw", [{ do: "put", kind: "rooms", record: room("own", 0.2, 4.1) }]));
    document.run(takeReading(first));
    expect(ids(document.job().rooms)).toEqual(["b", "c", "own"]);
    expect(document.job().openings).toEqual([]);
  });

  test("read again unchanged, it changes nothing", () => {
    const document = job();
    document.run(takeReading(first));
    const before = document.job();
    document.run(takeReading(first));
    expect(document.job()).toEqual(before);
  });

  test("the drawing stays where it was moved to, with the layers that were chosen", () => {
    const document = job();
    document.run(takeReading(first));
    const [drawing] = document.job().underlays;
    document.run({
      name: "move",
      edits: () => ({
        edits: [
          {
            do: "set",
            kind: "underlays",
            id: drawing?.id ?? "",
            fields: { origin: [3, 1], layers: [{ name: "WALLS", shown: false }] },
          },
        ],
      }),
    });
    document.run(takeReading(first));
    expect(document.job().underlays[0]).toMatchObject({
      origin: [3, 1],
      layers: [{ name: "WALLS", shown: false }],
    });
  });

  test("detectors of the file come in where the job knows their model; the others are named in a note", () => {
    const document = job();
    for (const model of demoModels) document.run(addModel(model));
    const detector = { tag: "B1.01", room: "a", at: [2, 2] as Point, height: 2.5, turn: Math.PI / 2 };
    const known = demoModels[0]!.id;
    const { problems } = document.run(
      takeReading({
        ...first,
        survey: {
          ...first.survey,
          detectors: [
            { ...detector, id: "known", model: known },
            { ...detector, id: "unknown", tag: "B1.02", model: "elsewhere" },
          ],
        },
      }),
    );
    expect(document.job().detectors).toMatchObject([
      { id: "known", tag: "B1.01", room: "a", model: known, at: [2, 2], height: 2.5, turn: 90 },
    ]);
    expect(problems).toEqual([
      {
        code: "detectors-of-unknown-model",
        values: { count: 1, tags: "B1.02", model: "elsewhere" },
      },
    ]);
  });
});
