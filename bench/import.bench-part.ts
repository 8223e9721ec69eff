import { readFileSync } from "node:fs";
import { IfcAPI, LogLevel } from "web-ifc";
import { loadKernel, readIfc } from "#exchange";
import { realFiles } from "../test/real-files.ts";
import type { BenchRow } from "./bench.ts";

const file = "office-institute-82rooms-ifc2x3.ifc";

/** Types that the import streams from this file: rooms, holes in walls, what stands in rooms, stairs. */
const types = ["IFCSPACE", "IFCOPENINGELEMENT", "IFCFURNISHINGELEMENT", "IFCCOLUMN", "IFCSTAIR"];

/** Import of a whole building against the bare reader that opens it and streams the same entity types. Median of five. */
export async function rows(): Promise<readonly BenchRow[]> {
  const folder = realFiles("ifc");
  if (!folder) return [];
  const bytes = new Uint8Array(readFileSync(`${folder}/${file}`));
  const kernel = await loadKernel();
  const api = new IfcAPI();
  await api.Init();
  api.SetLogLevel(LogLevel.LOG_LEVEL_OFF);
  const bare = (): void => {
    const model = api.OpenModel(bytes);
    for (const type of types) {
      api.StreamAllMeshesWithTypes(model, [api.GetTypeCodeFromName(type)], (mesh) => {
        for (let i = 0; i < mesh.geometries.size(); i++) {
          const geometry = api.GetGeometry(model, mesh.geometries.get(i).geometryExpressID);
          api.GetVertexArray(geometry.GetVertexData(), geometry.GetVertexDataSize());
          api.GetIndexArray(geometry.GetIndexData(), geometry.GetIndexDataSize());
          geometry.delete();
        }
      });
    }
    api.CloseModel(model);
  };
  const [ours, theirs]: [number[], number[]] = [[], []];
  for (let i = 0; i < 6; i++) {
    const start = performance.now();
    await readIfc(bytes, { fileName: file, kernel });
    const middle = performance.now();
    bare();
    const end = performance.now();
    // The first round warms both up.
    if (i > 0) {
      ours.push(middle - start);
      theirs.push(end - middle);
    }
  }
  const median = (list: number[]): number => list.sort((a, b) => a - b)[Math.floor(list.length / 2)]!;
  const [a, b] = [median(ours), median(theirs)];
  return [
    {
      what: "Import of an office of 82 rooms (other: the bare reader, same types)",
      ours: `${a.toFixed(0)} ms`,
      other: `${b.toFixed(0)} ms`,
      ratio: `${(a / b).toFixed(2)} times`,
      goal: "at most 2 times",
    },
  ];
}
