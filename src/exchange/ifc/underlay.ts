import type { Outline } from "#engine";
import type { SurveyDrawing } from "../survey.ts";
import { footprintOf } from "./footprint.ts";
import type { ElementMesh } from "./kernel.ts";
import type { IfcModel } from "./model.ts";
import { type Relations, storeyOf } from "./relations.ts";
import { type ReadStorey, storeyAt } from "./storeys.ts";

/** Elements whose outline helps to draw rooms by hand. */
export const wallsOf = (model: IfcModel): readonly number[] =>
  model.ids(
    "IFCWALL",
    "IFCWALLSTANDARDCASE",
    "IFCWALLELEMENTEDCASE",
    "IFCCURTAINWALL",
    "IFCCOLUMN",
    "IFCCOLUMNSTANDARDCASE",
  );

/** Elements that part one room from another. */
export const partingsOf = (model: IfcModel): readonly number[] => [
  ...wallsOf(model),
  ...model.ids("IFCPLATE", "IFCMEMBER", "IFCDOOR", "IFCWINDOW", "IFCBUILDINGELEMENTPROXY"),
];

/** Walls and columns from above as lines, one drawing for a storey. */
export function readUnderlay(
  ids: readonly number[],
  meshes: ReadonlyMap<number, ElementMesh>,
  context: { model: IfcModel; relations: Relations; storeys: readonly ReadStorey[]; fileName: string },
): readonly SurveyDrawing[] {
  const byStorey = new Map<string, Outline[]>();
  for (const id of ids) {
    const mesh = meshes.get(id);
    const footprint = mesh && footprintOf(mesh, 200);
    if (!footprint) continue;
    const own = storeyOf(context.model, context.relations, id);
    const storey =
      context.storeys.find((each) => each.step === own) ?? storeyAt(context.storeys, footprint.low);
    byStorey.set(storey.storey.id, [...(byStorey.get(storey.storey.id) ?? []), ...footprint.outlines]);
  }
  return [...byStorey].map(([storey, rings]) => {
    const lines = Float64Array.from(
      rings.flatMap((ring) => ring.flatMap((a, i) => [...a, ...ring[(i + 1) % ring.length]!])),
    );
    return {
      id: `walls-${storey}`,
      storey,
      name: "",
      file: context.fileName,
      lines,
      layerOf: new Uint16Array(lines.length / 4),
      layers: [],
    };
  });
}
