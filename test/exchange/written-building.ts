/** Choices that the tests vary; sizes below are metres whatever the file's unit. */
export interface WrittenBuilding {
  readonly schema: "IFC2X3" | "IFC4";
  readonly unit: "metre" | "milli" | "foot" | "none";
  /** Turn of the whole building about z. [rad] */
  readonly turn?: number;
  /** Place of the whole building in the world. [m] */
  readonly at?: readonly [number, number, number];
  /** Second building beside the first one. */
  readonly buildings?: 1 | 2;
  readonly storeys?: "named" | "none";
  /** Rooms may be left out, as many programs do. */
  readonly rooms?: "both" | "none";
  /** Name of the first room as written between the quotes, escapes and all. */
  readonly firstName?: string;
  /** More records, given the writer: for what only one test needs. */
  readonly more?: (writer: StepWriter, place: Places) => void;
}

/** Instance names that `more` may refer to. */
export interface Places {
  readonly context: number;
  readonly storey: number;
  readonly storeyPlacement: number;
  readonly owner: string;
}

/**
 * A plan whose every size is known: "Office" 4 × 3 m and "Store" 5 × 3 m with a column hole of 0.4 × 0.4 m, 2.6 m high, a
 * wall of 0.1 m between them, a door 0.9 × 2.1 m in it, a window to the outside, a desk, a cupboard, a luminaire (typed
 * both ways of the standard, after the schema), and a switch that was typed as a luminaire.
 *
 *   y 3 ┌────────┐┌──────────┐
 *       │ Office D   Store   │      D: door, x 4.0 to 4.1, y 1.0 to 1.9
 *   y 0 └──WW────┘└──────────┘      W: window, x 1 to 2, in the wall below y 0
 *      x 0      4 4.1       9.1
 */
export function writtenBuilding(choice: WrittenBuilding): string {
  const writer = new StepWriter(choice);
  const owner = "$";
  const unit = writer.unit();
  const origin = writer.placement3d([0, 0, 0]);
  const context = writer.add("IFCGEOMETRICREPRESENTATIONCONTEXT", `$,'Model',3,1.E-05,#${origin},$`);
  const project = writer.add(
    "IFCPROJECT",
    `'${writer.guid()}',${owner},'Plan',$,$,$,$,(#${context}),${unit === undefined ? "$" : `#${unit}`}`,
  );
  const turn = choice.turn ?? 0;
  const world = writer.local(undefined, choice.at ?? [0, 0, 0], [Math.cos(turn), Math.sin(turn), 0]);
  const site = writer.add(
    "IFCSITE",
    `'${writer.guid()}',${owner},'Site',$,$,#${world},$,$,.ELEMENT.,$,$,$,$,$`,
  );
  writer.aggregate(project, [site]);
  const buildings = Array.from({ length: choice.buildings ?? 1 }, (_, i) => {
    const placement = writer.local(world, [20 * i, 0, 0]);
    const id = writer.add(
      "IFCBUILDING",
      `'${writer.guid()}',${owner},'House ${i + 1}',$,$,#${placement},$,$,.ELEMENT.,$,$,$`,
    );
    return { id, placement };
  });
  writer.aggregate(
    site,
    buildings.map((each) => each.id),
  );
  for (const building of buildings) writeStorey(writer, { choice, context, owner, building });
  return writer.text();
}

function writeStorey(
  writer: StepWriter,
  given: {
    choice: WrittenBuilding;
    context: number;
    owner: string;
    building: { id: number; placement: number };
  },
): void {
  const { choice, context, owner, building } = given;
  const placement = writer.local(building.placement, [0, 0, 0.5]);
  const named = choice.storeys !== "none";
  const storey = named
    ? writer.add(
        "IFCBUILDINGSTOREY",
        `'${writer.guid()}',${owner},'Ground floor',$,$,#${placement},$,$,.ELEMENT.,${writer.length(0.5)}`,
      )
    : building.id;
  if (named) writer.aggregate(building.id, [storey]);
  const body = (shape: number): number => writer.shape(context, shape);
  const element = (
    type: string,
    name: string,
    more: {
      at: readonly [number, number, number];
      x?: readonly [number, number, number];
      shape: number;
      rest: string;
    },
  ): number => {
    const local = writer.local(placement, more.at, more.x);
    const rest = more.rest === "" ? "" : `,${more.rest}`;
    return writer.add(
      type,
      `'${writer.guid()}',${owner},'${name}',$,$,#${local},#${body(more.shape)},$${rest}`,
    );
  };
  if (choice.rooms !== "none") {
    const space = (number: string, name: string, more: { x: number; shape: number }): number => {
      const local = writer.local(placement, [more.x, 0, 0]);
      const position = choice.schema === "IFC4" ? ".INTERNAL." : ".INTERNAL.";
      return writer.add(
        "IFCSPACE",
        `'${writer.guid()}',${owner},'${number}',$,$,#${local},#${body(more.shape)},'${name}',.ELEMENT.,${position},$`,
      );
    };
    const office = space("1.01", choice.firstName ?? "Office", {
      x: 0,
      shape: writer.prism(
        [
          [0, 0],
          [4, 0],
          [4, 3],
          [0, 3],
        ],
        2.6,
      ),
    });
    const hole: Ring = [
      [2, 1],
      [2.4, 1],
      [2.4, 1.4],
      [2, 1.4],
    ];
    const store = space("1.02", "Store", {
      x: 4.1,
      shape: writer.prism(
        [
          [0, 0],
          [5, 0],
          [5, 3],
          [0, 3],
        ],
        2.6,
        [hole],
      ),
    });
    writer.aggregate(storey, [office, store]);
  }
  const wall = element("IFCWALLSTANDARDCASE", "Wall", {
    at: [4, 0, 0],
    x: [0, 1, 0],
    shape: writer.prism(
      [
        [0, -0.1],
        [3, -0.1],
        [3, 0],
        [0, 0],
      ],
      2.6,
    ),
    rest: `${choice.schema === "IFC4" ? "$" : ""}`,
  });
  const outer = element("IFCWALL", "Outer wall", {
    at: [0, -0.3, 0],
    shape: writer.prism(
      [
        [0, 0],
        [9.1, 0],
        [9.1, 0.3],
        [0, 0.3],
      ],
      2.6,
    ),
    rest: `${choice.schema === "IFC4" ? "$" : ""}`,
  });
  const hole = (
    host: number,
    size: { at: readonly [number, number, number]; x?: readonly [number, number, number]; shape: number },
  ): number => {
    const opening = element("IFCOPENINGELEMENT", "Opening", {
      ...size,
      rest: choice.schema === "IFC4" ? "$" : "",
    });
    writer.add("IFCRELVOIDSELEMENT", `'${writer.guid()}',${owner},$,$,#${host},#${opening}`);
    return opening;
  };
  // The door's x axis runs along y, its leaf opens towards its own y axis, which is −x: into the office; hinge at y 1.0.
  const doorHole = hole(wall, {
    at: [4, 1, 0],
    x: [0, 1, 0],
    shape: writer.prism(
      [
        [0, -0.1],
        [0.9, -0.1],
        [0.9, 0],
        [0, 0],
      ],
      2.1,
    ),
  });
  const ifc4 = choice.schema === "IFC4";
  const door = element("IFCDOOR", "Door", {
    at: [4, 1, 0],
    x: [0, 1, 0],
    shape: writer.prism(
      [
        [0, -0.07],
        [0.9, -0.07],
        [0.9, -0.03],
        [0, -0.03],
      ],
      2.1,
    ),
    rest: `${writer.length(2.1)},${writer.length(0.9)}${ifc4 ? ",.DOOR.,.SINGLE_SWING_LEFT.,$" : ""}`,
  });
  writer.add("IFCRELFILLSELEMENT", `'${writer.guid()}',${owner},$,$,#${doorHole},#${door}`);
  if (!ifc4) {
    const style = writer.add(
      "IFCDOORSTYLE",
      `'${writer.guid()}',${owner},'Style',$,$,$,$,$,.SINGLE_SWING_LEFT.,.WOOD.,.F.,.F.`,
    );
    writer.add("IFCRELDEFINESBYTYPE", `'${writer.guid()}',${owner},$,$,(#${door}),#${style}`);
  }
  const windowHole = hole(outer, {
    at: [1, -0.3, 0.9],
    shape: writer.prism(
      [
        [0, 0],
        [1, 0],
        [1, 0.3],
        [0, 0.3],
      ],
      1.2,
    ),
  });
  const window = element("IFCWINDOW", "Window", {
    at: [1, -0.3, 0.9],
    shape: writer.prism(
      [
        [0, 0.1],
        [1, 0.1],
        [1, 0.15],
        [0, 0.15],
      ],
      1.2,
    ),
    rest: `${writer.length(1.2)},${writer.length(1)}${ifc4 ? ",.WINDOW.,$,$" : ""}`,
  });
  writer.add("IFCRELFILLSELEMENT", `'${writer.guid()}',${owner},$,$,#${windowHole},#${window}`);
  const furniture = ifc4 ? "IFCFURNITURE" : "IFCFURNISHINGELEMENT";
  const rest = ifc4 ? "$" : "";
  const things = [
    element(furniture, "Desk", {
      at: [1, 1.6, 0],
      shape: writer.prism(
        [
          [0, 0],
          [1.6, 0],
          [1.6, 0.8],
          [0, 0.8],
        ],
        0.72,
      ),
      rest,
    }),
    element(furniture, "Cupboard", {
      at: [8.5, 0, 0],
      shape: writer.prism(
        [
          [0, 0],
          [0.6, 0],
          [0.6, 1],
          [0, 1],
        ],
        2,
      ),
      rest,
    }),
  ];
  const lamp = writer.prism(
    [
      [-0.6, -0.15],
      [0.6, -0.15],
      [0.6, 0.15],
      [-0.6, 0.15],
    ],
    0.1,
  );
  const terminal = ifc4 ? "IFCLIGHTFIXTURE" : "IFCFLOWTERMINAL";
  const luminaire = element(terminal, "Linear luminaire", { at: [2, 1.5, 2.5], shape: lamp, rest });
  const button = element(terminal, "Lighting Switches:Single Pole", {
    at: [3.9, 0.8, 1.1],
    shape: writer.prism(
      [
        [0, 0],
        [0.08, 0],
        [0.08, 0.08],
        [0, 0.08],
      ],
      0.08,
    ),
    rest,
  });
  if (!ifc4) {
    const type = writer.add(
      "IFCLIGHTFIXTURETYPE",
      `'${writer.guid()}',${owner},'Linear',$,$,$,$,$,$,.NOTDEFINED.`,
    );
    writer.add("IFCRELDEFINESBYTYPE", `'${writer.guid()}',${owner},$,$,(#${luminaire},#${button}),#${type}`);
  }
  const filed = [wall, outer, door, window, ...things, luminaire, button];
  writer.add(
    "IFCRELCONTAINEDINSPATIALSTRUCTURE",
    `'${writer.guid()}',${owner},$,$,(${filed.map((id) => `#${id}`).join(",")}),#${storey}`,
  );
  choice.more?.(writer, { context, storey, storeyPlacement: placement, owner });
}

export type Ring = readonly (readonly [number, number])[];

/** Writes STEP records one by one and keeps count of their names. */
export class StepWriter {
  private readonly lines: string[] = [];
  private guids = 0;

  constructor(private readonly choice: WrittenBuilding) {}

  add(type: string, parameters: string): number {
    this.lines.push(`#${this.lines.length + 1}=${type}(${parameters});`);
    return this.lines.length;
  }

  /** A length in the file's unit. */
  length(metres: number): string {
    const factor = { metre: 1, milli: 1000, foot: 1 / 0.3048, none: 1 }[this.choice.unit];
    const text = String(Math.round(metres * factor * 1e9) / 1e9);
    return text.includes(".") || text.includes("e") ? text.replace("e", "E") : `${text}.`;
  }

  guid(): string {
    return `0Written${String(++this.guids).padStart(14, "0")}`;
  }

  unit(): number | undefined {
    if (this.choice.unit === "none") return undefined;
    const metre = this.add(
      "IFCSIUNIT",
      `*,.LENGTHUNIT.,${this.choice.unit === "milli" ? ".MILLI." : "$"},.METRE.`,
    );
    if (this.choice.unit !== "foot") return this.add("IFCUNITASSIGNMENT", `(#${metre})`);
    const measure = this.add("IFCMEASUREWITHUNIT", `IFCLENGTHMEASURE(0.3048),#${metre}`);
    const dimensions = this.add("IFCDIMENSIONALEXPONENTS", "1,0,0,0,0,0,0");
    const foot = this.add("IFCCONVERSIONBASEDUNIT", `#${dimensions},.LENGTHUNIT.,'FOOT',#${measure}`);
    return this.add("IFCUNITASSIGNMENT", `(#${foot})`);
  }

  point(p: readonly number[]): number {
    return this.add("IFCCARTESIANPOINT", `(${p.map((x) => this.length(x)).join(",")})`);
  }

  placement3d(at: readonly [number, number, number], x?: readonly [number, number, number]): number {
    const point = this.point(at);
    if (!x) return this.add("IFCAXIS2PLACEMENT3D", `#${point},$,$`);
    const up = this.add("IFCDIRECTION", "(0.,0.,1.)");
    const along = this.add(
      "IFCDIRECTION",
      `(${x.map((v) => (Number.isInteger(v) ? `${v}.` : String(v))).join(",")})`,
    );
    return this.add("IFCAXIS2PLACEMENT3D", `#${point},#${up},#${along}`);
  }

  local(
    parent: number | undefined,
    at: readonly [number, number, number],
    x?: readonly [number, number, number],
  ): number {
    const axis = this.placement3d(at, x);
    return this.add("IFCLOCALPLACEMENT", `${parent === undefined ? "$" : `#${parent}`},#${axis}`);
  }

  polyline(ring: Ring): number {
    const points = ring.map((p) => `#${this.point(p)}`);
    return this.add("IFCPOLYLINE", `(${[...points, points[0]].join(",")})`);
  }

  prism(ring: Ring, height: number, holes: readonly Ring[] = []): number {
    const outer = this.polyline(ring);
    const profile =
      holes.length === 0
        ? this.add("IFCARBITRARYCLOSEDPROFILEDEF", `.AREA.,$,#${outer}`)
        : this.add(
            "IFCARBITRARYPROFILEDEFWITHVOIDS",
            `.AREA.,$,#${outer},(${holes.map((hole) => `#${this.polyline(hole)}`).join(",")})`,
          );
    const at = this.placement3d([0, 0, 0]);
    const up = this.add("IFCDIRECTION", "(0.,0.,1.)");
    return this.add("IFCEXTRUDEDAREASOLID", `#${profile},#${at},#${up},${this.length(height)}`);
  }

  shape(context: number, solid: number): number {
    const representation = this.add("IFCSHAPEREPRESENTATION", `#${context},'Body','SweptSolid',(#${solid})`);
    return this.add("IFCPRODUCTDEFINITIONSHAPE", `$,$,(#${representation})`);
  }

  aggregate(whole: number, parts: readonly number[]): number {
    return this.add(
      "IFCRELAGGREGATES",
      `'${this.guid()}',$,$,$,#${whole},(${parts.map((id) => `#${id}`).join(",")})`,
    );
  }

  text(): string {
    return [
      "ISO-10303-21;",
      "HEADER;",
      "FILE_DESCRIPTION(('ViewDefinition [CoordinationView]'),'2;1');",
      "FILE_NAME('written.ifc','2020-01-01T00:00:00',(''),(''),'','','');",
      `FILE_SCHEMA(('${this.choice.schema}'));`,
      "ENDSEC;",
      "DATA;",
      ...this.lines,
      "ENDSEC;",
      "END-ISO-10303-21;",
      "",
    ].join("\n");
  }
}

/** Bytes of a text in ISO 8859-1, as STEP files are written. */
export const bytesOf = (text: string): Uint8Array =>
  Uint8Array.from(text, (letter) => letter.charCodeAt(0) & 0xff);
