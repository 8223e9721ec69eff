import { describe, expect, test } from "vitest";
import { type Detector, type DetectorModel, planningDefaults, type Room, sentenceOf } from "#engine";
import {
  addRecord,
  changeRecord,
  createJobDocument,
  deleteRecords,
  demoJob,
  duplicateRecord,
  editSite,
  type JobDocument,
  jobText,
  loadFile,
  moveCorner,
  parseJob,
  replaceDetectors,
  type SurveyRecords,
  setDefaults,
  setDetails,
  siteOf,
  takeReading,
  turnDetector,
} from "../index.ts";

function demo(): JobDocument {
  let count = 0;
  const document = createJobDocument(undefined, { newId: () => `new-${++count}` });
  document.run(loadFile(demoJob()));
  return document;
}

const device = (id: string, at: [number, number]): Detector => ({
  id,
  tag: "",
  room: "rest",
  controls: ["rest"],
  group: "",
  model: "demo-round-8",
  at,
  height: 2.7,
  turn: Math.PI / 2,
  masks: [{ from: 0, to: Math.PI, inner: 0, outer: Math.PI / 4 }],
  pinned: false,
});

describe("taking a placement", () => {
  test("hangs its devices with tags in reading order, in degrees, in one step", () => {
    const document = demo();
    const before = jobText(document.job());
    const { made } = document.run(
      replaceDetectors("rest", [device("c1", [25, 9]), device("c2", [28, 12]), device("c3", [25, 12.2])]),
    );
    const hung = document.job().detectors.filter((detector) => detector.room === "rest");
    expect(made.length).toBe(3);
    expect(hung.map(({ tag, at }) => [tag, at])).toEqual([
      ["B1.04", [25, 12.2]],
      ["B1.05", [28, 12]],
      ["B1.06", [25, 9]],
    ]);
    expect(hung[0]).toMatchObject({ turn: 90, masks: [{ from: 0, to: 180, inner: 0, outer: 45 }] });
    document.undo();
    expect(jobText(document.job())).toBe(before);
  });

  test("again keeps what is pinned and uses the room's free tags first", () => {
    const document = demo();
    document.run(replaceDetectors("rest", [device("c1", [25, 12]), device("c2", [28, 12])]));
    const [first] = document.snapshot().site.detectors.filter((detector) => detector.room === "rest");
    document.run(changeRecord("detectors", first!.id, { pinned: true }));
    document.run(
      replaceDetectors("rest", [{ ...first!, pinned: true }, device("n1", [24, 9]), device("n2", [29, 9])]),
    );
    const hung = document.job().detectors.filter((detector) => detector.room === "rest");
    expect(hung.map(({ id, tag, pinned }) => [id === first!.id, tag, pinned])).toEqual([
      [true, "B1.04", true],
      [false, "B1.05", false],
      [false, "B1.06", false],
    ]);
  });

  test("for a room that is gone is refused", () => {
    expect(demo().run(replaceDetectors("nowhere", [])).problems.map(sentenceOf)).toEqual([
      "rooms “nowhere” is no longer in the job.",
    ]);
  });
});

describe("deleting", () => {
  test("a room takes its contents along, and its doors lead outside from the rooms that stay", () => {
    const document = demo();
    document.run(deleteRecords([{ kind: "rooms", id: "entrance" }]));
    const job = document.job();
    for (const kind of ["obstacles", "dwellPlaces", "interference", "luminaires", "ceilingThings"] as const)
      expect(job[kind].filter((record) => record.room === "entrance")).toEqual([]);
    // The door stood on the entrance's face at x = 5; the corridor's face is 0.12 m further.
    expect(job.openings.find((opening) => opening.id === "entrance-corridor")).toMatchObject({
      rooms: ["corridor", null],
      from: [5.12, 6.2],
      to: [5.12, 7.6],
      opensInto: "corridor",
    });
    expect(job.openings.find((opening) => opening.id === "plant-door")).toMatchObject({
      rooms: ["plant", null],
      opensInto: null,
    });
    expect(job.openings.some((opening) => opening.id === "entrance-door")).toBe(false);
    expect(document.snapshot().problems).toEqual([]);
  });

  test("a storey takes its rooms along", () => {
    const document = demo();
    document.run(deleteRecords([{ kind: "storeys", id: "ground" }]));
    expect(document.job().rooms.map((room) => room.id)).toEqual(["archive"]);
    expect(document.snapshot().problems).toEqual([]);
  });

  test("a model in use is refused, unless its detectors go too", () => {
    const document = demo();
    const model = { kind: "models", id: "demo-corridor-20" } as const;
    expect(document.run(deleteRecords([model])).problems.map(sentenceOf)).toEqual([
      "2 detectors still use the model “Corridor-shaped, 20 m long at 2.5 m”.",
    ]);
    const users = document.job().detectors.filter((detector) => detector.model === model.id);
    expect(
      document.run(deleteRecords([model, ...users.map(({ id }) => ({ kind: "detectors", id }) as const)]))
        .done,
    ).toBe(true);
  });
});

describe("duplicating", () => {
  test("a room copies what is in it beside it, with doors of its own and new tags", () => {
    const document = demo();
    document.run(duplicateRecord({ kind: "rooms", id: "meeting" }, { by: [0, 20] }));
    const { site, problems } = document.snapshot();
    expect(problems).toEqual([]);
    const copy = site.rooms[site.rooms.length - 1]!;
    const original = site.rooms.find((room) => room.id === "meeting")!;
    expect(copy.outline).toEqual(original.outline.map(([x, y]) => [x, y + 20]));
    expect(copy.ceilingGrid!.origin).toEqual([14.32, 27.92]);
    for (const kind of ["obstacles", "dwellPlaces", "luminaires"] as const)
      expect(site[kind].filter((record) => record.room === copy.id).length).toBe(
        site[kind].filter((record) => record.room === "meeting").length,
      );
    expect(site.openings.filter((opening) => opening.rooms[0] === copy.id).length).toBe(2);
    expect(site.detectors.find((detector) => detector.room === copy.id)).toMatchObject({
      tag: "B1.04",
      controls: [copy.id],
    });
  });

  test("a detector gives the copy the next tag", () => {
    const document = demo();
    document.run(duplicateRecord({ kind: "detectors", id: "meeting-table" }, { by: [0.6, 0] }));
    expect(document.job().detectors[3]).toMatchObject({ tag: "B1.04", at: [17.62, 10.62], room: "meeting" });
  });
});

describe("an edit in the engine's terms", () => {
  test("comes back as it was given: radians to degrees and back", () => {
    const document = demo();
    const turn = 1.234567;
    document.run(
      editSite("turn", [
        { do: "set", kind: "detectors", id: "meeting-table", fields: { turn } },
        { do: "put", kind: "detectors", record: { ...device("d9", [25, 10]), tag: "B1.03" } },
      ]),
    );
    const { site } = document.snapshot();
    const find = (id: string) => site.detectors.find((detector) => detector.id === id)!;
    expect(find("meeting-table").turn).toBeCloseTo(turn, 7);
    expect(find("d9")).toMatchObject({ tag: "B1.04" });
    expect(find("d9").turn).toBeCloseTo(Math.PI / 2, 12);
  });

  test("that replaces detectors gives the new ones the tags of those that go", () => {
    const document = demo();
    const [before] = document.job().detectors.filter(({ id }) => id === "meeting-table");
    document.run(
      editSite("replace", [
        { do: "remove", kind: "detectors", id: "meeting-table" },
        { do: "put", kind: "detectors", record: { ...device("d9", [25, 10]), tag: "" } },
      ]),
    );
    expect(document.job().detectors.find(({ id }) => id === "d9")).toMatchObject({ tag: before!.tag });
  });

  test("of a data sheet keeps its polar outline, and takes a field away that is set to undefined", () => {
    const document = demo();
    const model: DetectorModel = {
      id: "own",
      title: "Own",
      mounting: { min: 2, max: 4 },
      zones: {
        across: [
          {
            height: 2.5,
            outline: [
              [0, 4],
              [Math.PI / 2, 2],
              [Math.PI, 4],
              [(3 * Math.PI) / 2, 2],
            ],
          },
        ],
      },
      declaration: "data-sheet",
      declaredBy: "maker",
      cost: 10,
      warmUp: 30,
    };
    document.run(editSite("own", [{ do: "put", kind: "models", record: model }]));
    const kept = (): DetectorModel => document.snapshot().site.models.find((one) => one.id === "own")!;
    const row = kept().zones.across![0]!;
    expect(
      "outline" in row && row.outline.map(([angle, radius]) => [Math.round(angle * 1e9) / 1e9, radius]),
    ).toEqual(
      [
        [0, 4],
        [Math.PI / 2, 2],
        [Math.PI, 4],
        [(3 * Math.PI) / 2, 2],
      ].map(([a, r]) => [Math.round(a! * 1e9) / 1e9, r]),
    );
    expect(document.job().models.find((one) => one.id === "own")!.zones.across![0]).toMatchObject({
      outline: [
        [0, 4],
        [90, 2],
        [180, 4],
        [270, 2],
      ],
    });
    document.run(
      editSite("own", [{ do: "set", kind: "models", id: "own", fields: { warmUp: undefined } as never }]),
    );
    expect("warmUp" in kept()).toBe(false);
  });

  test("that gives the contents of a room to another one first lets them stay when the room goes", () => {
    const document = demo();
    const corridor = document.job().detectors.filter(({ room }) => room === "corridor");
    document.run(
      editSite("join", [
        ...corridor.map(({ id }) => ({
          do: "set" as const,
          kind: "detectors" as const,
          id,
          fields: { room: "meeting", controls: ["meeting"] },
        })),
        { do: "remove", kind: "rooms", id: "corridor" },
      ]),
    );
    const { rooms, detectors } = document.job();
    expect(rooms.some(({ id }) => id === "corridor")).toBe(false);
    for (const { id } of corridor)
      expect(detectors.find((one) => one.id === id)).toMatchObject({ room: "meeting" });
  });

  test("that brings a storey with rooms numbers its detectors by that storey", () => {
    const document = demo();
    const room = siteOf(document.job()).site.rooms.find(({ id }) => id === "rest") as Room;
    document.run(
      editSite("copy", [
        { do: "put", kind: "storeys", record: { id: "second", name: "Second", elevation: 6.8 } },
        { do: "put", kind: "rooms", record: { ...room, id: "rest-2", storey: "second" } },
        { do: "put", kind: "detectors", record: { ...device("n", [25, 9]), room: "rest-2", controls: [] } },
      ]),
    );
    expect(document.job().detectors.find(({ id }) => id === "n")?.tag).toBe("B3.01");
  });

  test("that removes a room removes what is in it", () => {
    const document = demo();
    document.run(editSite("remove", [{ do: "remove", kind: "rooms", id: "meeting" }]));
    expect(document.job().detectors.map((detector) => detector.id)).toEqual([
      "corridor-west",
      "corridor-east",
    ]);
  });
});

describe("importing a survey", () => {
  const { site } = siteOf(demoJob());
  const survey = {
    storeys: site.storeys,
    rooms: site.rooms,
    openings: site.openings,
    obstacles: site.obstacles,
    luminaires: site.luminaires,
  };

  const read = (records: SurveyRecords) => ({ survey: records, file: "wing.ifc", choice: {} });

  test("brings the reader's records in as they are", () => {
    const document = createJobDocument();
    const outcome = document.run(takeReading(read(survey)));
    expect(outcome).toMatchObject({ done: true, problems: [] });
    expect(document.job().rooms).toEqual(demoJob().rooms);
    expect(document.job().openings).toEqual(demoJob().openings);
  });

  test("leaves out what cannot be used with what refers to it, says so, and takes the rest", () => {
    const document = createJobDocument();
    const rooms: readonly Room[] = survey.rooms.map((room) =>
      room.id === "drying"
        ? {
            ...room,
            outline: [
              [0, 0],
              [1, 1],
              [1, 0],
              [0, 1],
            ],
          }
        : room,
    );
    const outcome = document.run(takeReading(read({ ...survey, rooms })));
    expect(outcome.done).toBe(true);
    expect(outcome.problems.map(sentenceOf)).toEqual([
      "rooms “Drying room”: outline crosses itself near (0.5, 0.5).",
    ]);
    expect(document.snapshot().site.rooms.length).toBe(rooms.length - 1);
    expect(document.snapshot().problems).toEqual([]);
  });
});

describe("the rest", () => {
  test("an edited file comes back as one step, and touches only what differs", () => {
    const document = demo();
    const rooms = document.job().rooms;
    const edited = JSON.parse(jobText(document.job()));
    edited.rooms[1].name = "Plant";
    edited.obstacles.pop();
    edited.note = "by hand";
    const before = jobText(document.job());
    document.run(loadFile(parseJob(edited).job!));
    expect(JSON.parse(jobText(document.job()))).toEqual(edited);
    expect(document.job().rooms[0]).toBe(rooms[0]);
    document.undo();
    expect(jobText(document.job())).toBe(before);
  });

  test("planning numbers that equal the program's are not kept; the others are", () => {
    const document = demo();
    document.run(
      setDefaults({ ...planningDefaults, speed: 1.2, margin: { ...planningDefaults.margin, seated: 0.3 } }),
    );
    expect(document.job().defaults).toEqual({ speed: 1.2, margin: { seated: 0.3 } });
    expect(document.snapshot().site.defaults).toEqual({
      ...planningDefaults,
      speed: 1.2,
      margin: { ...planningDefaults.margin, seated: 0.3 },
    });
    document.run(setDefaults(planningDefaults));
    expect(document.job().defaults).toEqual({});
  });

  test("corners, turns and details", () => {
    const document = demo();
    document.run(moveCorner({ room: "meeting", corner: 2, to: [19.4, 13.4] }));
    document.run(turnDetector("meeting-table", 45));
    document.run(setDetails({ client: "Other", revision: undefined }));
    expect(document.job().rooms.find((room) => room.id === "meeting")!.outline[2]).toEqual([19.4, 13.4]);
    expect(document.job().detectors[2]!.turn).toBe(45);
    expect([document.job().details.client, "revision" in document.job().details]).toEqual(["Other", false]);
    expect(
      document
        .run(addRecord("dwellPlaces", { room: "meeting", kind: "seat", at: [1, 1], radius: -1 }))
        .problems.map(sentenceOf)[0],
    ).toMatch(/radius must be more than 0, not -1/);
  });
});
