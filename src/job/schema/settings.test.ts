import { expect, test } from "vitest";
import * as Y from "yjs";
import { sentenceOf } from "#engine";
import {
  createJobDocument,
  duplicateRecord,
  editSite,
  emptyJob,
  initialUpdate,
  jobText,
  parseJob,
  siteOf,
} from "../index.ts";

const outline = [
  [0, 0],
  [4, 0],
  [4, 3],
  [0, 3],
];
const withSettings = (settings: unknown) =>
  parseJob({
    ...emptyJob("Annex"),
    storeys: [{ id: "g" }],
    rooms: [{ id: "r", storey: "g", outline }],
    models: [{ id: "m", zones: { towards: [{ height: 2.5, radius: 4 }] } }],
    detectors: [
      { id: "d", tag: "B1", room: "r", model: "m", at: [2, 1], ...(settings !== undefined && { settings }) },
    ],
  });

test("what nobody chose stays away: no setting is filled in, and a detector without settings has none", () => {
  expect(withSettings({}).job!.detectors[0]!.settings).toEqual({});
  expect(withSettings({ offDelay: 300 }).job!.detectors[0]!.settings).toEqual({ offDelay: 300 });
  expect("settings" in withSettings(undefined).job!.detectors[0]!).toBe(false);
});

test("settings of a newer version survive being read and written", () => {
  const chosen = {
    mode: "semi-automatic",
    night: { from: 22 },
    impulse: { pulse: 1, pause: 9, later: true },
  };
  const again = parseJob(jobText(withSettings(chosen).job!));
  expect(again.job!.detectors[0]!.settings).toEqual(chosen);
});

test.each([
  [{ mode: "always" }, "settings.mode must be one of automatic, semi-automatic, not “always”"],
  [{ buttonRole: "off" }, "settings.buttonRole must be one of on-only, on-and-off, not “off”"],
  [{ offDelay: 0 }, "settings.offDelay must be more than 0, not 0"],
  [{ offDelay: "5 min" }, "settings.offDelay must be a number, not “5 min”"],
  [{ impulse: { pulse: 1 } }, "settings.impulse fits none of the forms that are known here"],
  [{ brightnessThreshold: -1 }, "settings.brightnessThreshold must be more than 0, not -1"],
  [{ sensitivity: "off" }, "settings.sensitivity must be one of low, medium, high, not “off”"],
  [
    { soundSensitivity: "loud" },
    "settings.soundSensitivity must be one of low, medium, high, off, not “loud”",
  ],
  [{ lock: true }, "settings.lock must be one of open, locked, not true"],
  [{ groupRole: "boss" }, "settings.groupRole must be one of alone, master, slave, parallel, not “boss”"],
  ["off", "settings must be an object, not “off”"],
])("%j is refused with its place", (settings, reason) => {
  const { problems } = withSettings(settings);
  expect((problems ?? []).map(sentenceOf)).toEqual([`detectors[0] “B1”: ${reason}.`]);
});

test("an edit of the plan, its undo and a copy leave settings as they are", () => {
  const chosen = { mode: "semi-automatic", offDelay: 90, brightnessThreshold: 120 } as const;
  const ydoc = new Y.Doc();
  Y.applyUpdate(ydoc, initialUpdate(withSettings(chosen).job!));
  let ids = 0;
  const document = createJobDocument(ydoc, { newId: () => `copy-${++ids}` });
  const detector = siteOf(document.job()).site.detectors[0]!;
  document.run(editSite("move", [{ do: "put", kind: "detectors", record: { ...detector, at: [1, 1] } }]));
  document.run(duplicateRecord({ kind: "detectors", id: "d" }, { by: [1, 0] }));
  expect(document.job().detectors.map(({ at, settings }) => [at, settings])).toEqual([
    [[1, 1], chosen],
    [[2, 1], chosen],
  ]);
  document.undo();
  document.undo();
  expect(document.job().detectors.map(({ at, settings }) => [at, settings])).toEqual([[[2, 1], chosen]]);
  document.close();
});
