// The other side of the import's comparison: nothing but the shape reader, opening a building model and streaming the
// entity types that the import streams. Run as a process of its own, or called again and again in one.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { IfcAPI, LogLevel } from "web-ifc";

/** Types that the import streams from the office: rooms, holes in walls, what stands in rooms, stairs. */
const types = ["IFCSPACE", "IFCOPENINGELEMENT", "IFCFURNISHINGELEMENT", "IFCCOLUMN", "IFCSTAIR"];

/** @returns A function that opens the bytes and streams every mesh once, and gives their number. */
export async function bareReader() {
  const api = new IfcAPI();
  await api.Init();
  api.SetLogLevel(LogLevel.LOG_LEVEL_OFF);
  return (bytes) => {
    const model = api.OpenModel(bytes);
    let count = 0;
    for (const type of types) {
      api.StreamAllMeshesWithTypes(model, [api.GetTypeCodeFromName(type)], (mesh) => {
        for (let i = 0; i < mesh.geometries.size(); i++) {
          const geometry = api.GetGeometry(model, mesh.geometries.get(i).geometryExpressID);
          api.GetVertexArray(geometry.GetVertexData(), geometry.GetVertexDataSize());
          api.GetIndexArray(geometry.GetIndexData(), geometry.GetIndexDataSize());
          geometry.delete();
          count++;
        }
      });
    }
    api.CloseModel(model);
    return count;
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) (await bareReader())(readFileSync(process.argv[2]));
