/** Triangles of one building element in world axes, z up. [m] */
export interface ElementMesh {
  readonly id: number;
  readonly parts: readonly MeshPart[];
}

/** One shape with its own corner list; three corners a triangle. */
export interface MeshPart {
  /** Name of the shape before placing: equal for repeated things. */
  readonly shape: number;
  /** x, y, z of each corner. [m] */
  readonly corners: Float64Array;
  readonly triangles: Uint32Array;
}

/** An opened model that gives meshes on request. */
export interface OpenModel {
  /** Calls back once for each element that has a shape. */
  stream(ids: readonly number[], each: (mesh: ElementMesh) => void): void;
  close(): void;
}

/** What turns IFC shapes into triangles. One kernel reads one model at a time. */
export interface GeometryKernel {
  open(bytes: Uint8Array): OpenModel | undefined;
  /** Bytes of its own memory that it holds at the moment. */
  memory(): number;
}

export interface KernelLocation {
  /** Address of the WebAssembly file, where the package does not find its own. */
  readonly wasm?: (fileName: string) => string;
}

/** The WebAssembly kernel, loaded when first needed. Call again after it has failed: a broken instance is not used twice. */
export async function loadKernel(location: KernelLocation = {}): Promise<GeometryKernel> {
  const { IfcAPI, LogLevel } = await import("web-ifc");
  const api = new IfcAPI();
  // Threads would need cross-origin isolation, which a plain static host does not give.
  await api.Init(location.wasm && ((name) => location.wasm!(name)), true);
  api.SetLogLevel(LogLevel.LOG_LEVEL_OFF);
  return {
    open: (bytes) => {
      const model = api.OpenModel(bytes, { COORDINATE_TO_ORIGIN: false, CIRCLE_SEGMENTS: circleSegments });
      return model < 0
        ? undefined
        : { stream: (ids, each) => stream(api, model, ids, each), close: () => api.CloseModel(model) };
    },
    memory: () => (api.wasmModule as { HEAPU8?: Uint8Array }).HEAPU8?.byteLength ?? 0,
  };
}

/** A circle of 1 m radius as 24 chords is off by 9 mm at most: finer than a wall is built, few enough to calculate with. */
const circleSegments = 24;

type Api = InstanceType<typeof import("web-ifc")["IfcAPI"]>;

function stream(api: Api, model: number, ids: readonly number[], each: (mesh: ElementMesh) => void): void {
  if (ids.length === 0) return;
  // Asked past its wrapper, which hands on a fourth argument: the kernel takes three, and its browser build checks that.
  const kernel = api.wasmModule as Pick<Api, "StreamMeshes">;
  kernel.StreamMeshes(model, [...ids], (mesh) => {
    const parts: MeshPart[] = [];
    // Asked for once: the kernel makes a copy each time.
    const { geometries } = mesh;
    const count = geometries.size();
    for (let i = 0; i < count; i++) {
      const { geometryExpressID: shape, flatTransformation } = geometries.get(i);
      const geometry = api.GetGeometry(model, shape);
      const vertices = api.GetVertexArray(geometry.GetVertexData(), geometry.GetVertexDataSize());
      const triangles = api.GetIndexArray(geometry.GetIndexData(), geometry.GetIndexDataSize());
      // Both are copies already.
      if (triangles.length > 0)
        parts.push({ shape, corners: placedCorners(vertices, flatTransformation), triangles });
      geometry.delete();
    }
    each({ id: mesh.expressID, parts });
  });
}

/** Kernel vertices are x y z and a normal in float32 about the shape's own middle; its world has y up. */
const placedCorners = (vertices: Float32Array, m: readonly number[]): Float64Array => {
  const corners = new Float64Array(vertices.length / 2);
  for (let from = 0, to = 0; from < vertices.length; from += 6, to += 3) {
    const x = vertices[from]!;
    const y = vertices[from + 1]!;
    const z = vertices[from + 2]!;
    corners[to] = m[0]! * x + m[4]! * y + m[8]! * z + m[12]!;
    corners[to + 1] = -(m[2]! * x + m[6]! * y + m[10]! * z + m[14]!);
    corners[to + 2] = m[1]! * x + m[5]! * y + m[9]! * z + m[13]!;
  }
  return corners;
};
