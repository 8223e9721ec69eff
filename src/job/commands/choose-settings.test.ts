import { expect, test } from "vitest";
import { changeRecord, chooseSettings, createJobDocument, emptyJob, loadFile, parseJob } from "../index.ts";

const outline = [
  [0, 0],
  [4, 0],
  [4, 3],
  [0, 3],
];
function annex() {
  const detector = (id: string) => ({ id, tag: id.toUpperCase(), room: "r", model: "m", at: [2, 1] });
  const { job } = parseJob({
    ...emptyJob("Annex"),
    storeys: [{ id: "g" }],
    rooms: [{ id: "r", storey: "g", outline }],
    models: [{ id: "m", zones: { towards: [{ height: 2.5, radius: 4 }] } }],
    detectors: [detector("a"), detector("b")],
  });
  let ids = 0;
  const document = createJobDocument(undefined, { newId: () => `new-${ids++}` });
  document.run(loadFile(job!));
  const settings = () => document.job().detectors.map((one) => one.settings);
  return { document, settings };
}

test("what is chosen of several detectors is one step of undo, and what is not named stays as it was", () => {
  const { document, settings } = annex();
  document.run(changeRecord("detectors", "a", { settings: { mode: "automatic", offDelay: 300 } }));
  document.run(chooseSettings("use-delay", { a: { offDelay: 600 }, b: { offDelay: 600 } }));
  expect(settings()).toEqual([{ mode: "automatic", offDelay: 600 }, { offDelay: 600 }]);
  document.undo();
  expect(settings()).toEqual([{ mode: "automatic", offDelay: 300 }, undefined]);
});

test("a setting that is chosen no more goes; with the last one the detector has none again", () => {
  const { document, settings } = annex();
  document.run(chooseSettings("set", { a: { offDelay: 600, mode: "automatic" } }));
  document.run(chooseSettings("set", { a: { offDelay: undefined } }));
  expect(settings()[0]).toEqual({ mode: "automatic" });
  document.run(chooseSettings("set", { a: { mode: undefined } }));
  expect("settings" in document.job().detectors[0]!).toBe(false);
});

test("of a detector that is gone nothing is chosen, nor of the others in the same step", () => {
  const { document, settings } = annex();
  const { done, problems } = document.run(
    chooseSettings("set", { a: { offDelay: 60 }, x: { offDelay: 60 } }),
  );
  expect([done, problems.map(({ code }) => code), settings()[0]]).toEqual([
    false,
    ["job-record-gone"],
    undefined,
  ]);
});
