import { describe, expect, test } from "vitest";
import type { Detector, DetectorModel } from "#engine";
import { firmListText, readFirmList } from "./firm-list.ts";
import { troublesOf } from "./firm-list-words.ts";

const firmListIn = (text: string) => {
  const read = readFirmList(text);
  return { models: read.models, troubles: troublesOf(read) };
};

import { orderCsv, orderList } from "./order-list.ts";

const model: DetectorModel = {
  id: "own-1",
  title: "Corridor, 20 m long",
  mounting: { min: 2.2, max: 3 },
  zones: {
    towards: [
      {
        height: 2.5,
        outline: [
          [0, 10],
          [Math.PI / 2, 2],
          [Math.PI, 10],
          [(3 * Math.PI) / 2, 2],
        ],
      },
    ],
    seated: [{ height: 2.5, radius: 2 }],
  },
  declaration: "data-sheet",
  declaredBy: "data sheet of 2024",
  cost: 84.5,
};

const detector = (id: string, of: DetectorModel): Detector => ({
  id,
  tag: id,
  room: "r",
  controls: ["r"],
  group: "",
  model: of.id,
  at: [0, 0],
  height: 2.5,
  turn: 0,
  masks: [],
  pinned: false,
});

describe("the firm's list as one file", () => {
  test("what is passed on comes back the same", () => {
    const { models, troubles } = firmListIn(firmListText([model]));
    expect(troubles).toEqual([]);
    expect(models).toHaveLength(1);
    expect(models[0]).toMatchObject({ id: "own-1", title: model.title, cost: 84.5 });
    const row = models[0]!.zones.towards![0]!;
    expect("outline" in row && row.outline[1]![0]).toBeCloseTo(Math.PI / 2, 9);
  });

  test.each([
    ["no JSON", "{"],
    ["another kind of file", '{"format":"roomwake-job","models":[]}'],
    ["nothing in it", '{"format":"roomwake-models","models":[]}'],
    ["a model without zones", '{"format":"roomwake-models","models":[{"id":"a"}]}'],
    [
      "a negative radius",
      '{"format":"roomwake-models","models":[{"id":"a","zones":{"towards":[{"height":2.5,"radius":-1}]}}]}',
    ],
  ])("%s is refused with a sentence", (_, text) => {
    const { models, troubles } = firmListIn(text);
    expect(models).toEqual([]);
    expect(troubles.length).toBeGreaterThan(0);
  });

  test("one broken model does not take the others along", () => {
    const file = JSON.parse(firmListText([model])) as { models: unknown[] };
    file.models.push({ id: "broken", zones: 7 });
    const { models, troubles } = firmListIn(JSON.stringify(file));
    expect(models.map(({ id }) => id)).toEqual(["own-1"]);
    expect(troubles).not.toEqual([]);
  });
});

describe("the order list", () => {
  const invented: DetectorModel = { ...model, id: "demo-1", title: "Round", demo: true };

  test("counts each model that hangs somewhere", () => {
    const list = orderList({
      models: [model, invented],
      detectors: [detector("a", model), detector("b", model)],
    });
    expect(list).toEqual({ rows: [{ model, count: 2 }] });
  });

  test("is refused while an invented model hangs in the job", () => {
    const list = orderList({
      models: [model, invented],
      detectors: [detector("a", model), detector("b", invented)],
    });
    expect(list).toEqual({ invented: [invented] });
  });

  test("a title that a spreadsheet would run stays text, and figures stay apart from commas", () => {
    const csv = orderCsv(
      [{ model: { ...model, title: '=1+1, "x"' }, count: 2 }],
      ["Model", "Count", "Cost", "Sum"],
    );
    expect(csv).toBe('Model,Count,Cost,Sum\r\n"\'=1+1, ""x""",2,84.50,169.00\r\n');
  });
});
