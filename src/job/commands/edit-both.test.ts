import { expect, test } from "vitest";
import { createJobDocument, demoJob, editBoth, loadFile } from "../index.ts";

test("Circuits and the luminaires on them change in one step that undo takes back", () => {
  const document = createJobDocument(undefined, { newId: () => "new" });
  document.run(loadFile({ ...demoJob(), boards: [], circuits: [] }));
  const before = document.job();
  const [first, second] = before.luminaires;
  document.run(
    editBoth("wire.edit.propose", {
      site: [first!, second!].map(({ id }) => ({
        do: "set",
        kind: "luminaires",
        id,
        fields: { circuit: "Lighting 7" },
      })),
      kept: [{ do: "put", kind: "circuits", record: { id: "c7", name: "Lighting 7", breaker: "B" } }],
    }),
  );
  const after = document.job();
  expect(after.circuits).toMatchObject([{ id: "c7", name: "Lighting 7", breaker: "B", rcd: "unknown" }]);
  expect(after.luminaires.filter(({ circuit }) => circuit === "Lighting 7").map(({ id }) => id)).toEqual([
    first!.id,
    second!.id,
  ]);
  document.undo();
  expect(document.job()).toEqual(before);
});
