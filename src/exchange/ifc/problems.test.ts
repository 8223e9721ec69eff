import { zipSync } from "fflate";
import { beforeAll, describe, expect, test } from "vitest";
import { english, entryOf, type Problem, sentenceOf } from "#engine";
import { bytesOf, type Ring, writtenBuilding } from "../../../test/exchange/written-building.ts";
import type { ImportResult } from "../survey.ts";
import { type GeometryKernel, loadKernel } from "./kernel.ts";
import type { ReadLimits } from "./limits.ts";
import { readIfc } from "./read-ifc.ts";

let kernel: GeometryKernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const sound = writtenBuilding({ schema: "IFC4", unit: "metre" });
const reading = (bytes: Uint8Array, limits: Partial<ReadLimits> = {}): Promise<ImportResult> =>
  readIfc(bytes, { fileName: "written.ifc", kernel, limits });
const problemOf = async (bytes: Uint8Array, limits: Partial<ReadLimits> = {}): Promise<Problem> => {
  const result = await reading(bytes, limits);
  if (!("problems" in result)) throw new Error("it was read");
  expect(result.problems).toHaveLength(1);
  expect(sentenceOf(result.problems[0]!)).not.toMatch(/\{\w+\}/);
  expect(entryOf(result.problems[0]!).severity).toBe("must");
  return result.problems[0]!;
};
const text = (change: (whole: string) => string): Uint8Array => bytesOf(change(sound));
const utf16 = (whole: string): Uint8Array =>
  new Uint8Array(Uint16Array.from(whole, (c) => c.charCodeAt(0)).buffer);

describe("a file that is not sound is refused with what, where and how to mend it", () => {
  const cases: readonly (readonly [string, Problem["code"], () => Uint8Array])[] = [
    ["empty", "file-empty", () => new Uint8Array()],
    ["a PDF", "ifc-not-step", () => bytesOf("%PDF-1.7\n")],
    ["JSON", "ifc-not-step", () => bytesOf("{}")],
    ["UTF-16 with its mark", "ifc-wrong-encoding", () => utf16(`\ufeff${sound}`)],
    ["UTF-16 without its mark", "ifc-wrong-encoding", () => utf16(sound)],
    ["an unknown schema", "ifc-schema-unknown", () => text((s) => s.replace("'IFC4'", "'IFC9'"))],
    ["no schema", "ifc-schema-unknown", () => text((s) => s.replace(/FILE_SCHEMA.*\n/, ""))],
    ["cut off in the middle", "ifc-truncated", () => text((s) => s.slice(0, s.indexOf("IFCDOOR(") - 20))],
    ["cut off inside a record", "ifc-truncated", () => text((s) => s.slice(0, s.indexOf("IFCDOOR(") + 8))],
    ["without its end", "ifc-truncated", () => text((s) => s.replace("END-ISO-10303-21;\n", ""))],
    ["an open comment", "ifc-comment-open", () => text((s) => s.replace("DATA;", "DATA; /* note"))],
    ["an open comment before the header", "ifc-comment-open", () => bytesOf(`/* note ${sound}`)],
    [
      "an open text",
      "ifc-text-open",
      () => text((s) => `${s.slice(0, s.lastIndexOf("'"))}${s.slice(s.lastIndexOf("'") + 1)}`),
    ],
    ["a missing bracket", "ifc-broken-line", () => text((s) => s.replace(/(IFCPOLYLINE.*)\);/, "$1;"))],
    [
      "a control character",
      "ifc-broken-line",
      () => text((s) => s.replace("IFCPOLYLINE(", "IFCPOLYLINE(\u0001")),
    ],
    ["two records of one name", "ifc-id-twice", () => text((s) => s.replace("#9=", "#8="))],
    [
      "a record that refers to itself",
      "ifc-loop",
      () => text((s) => s.replace(/(IFCLOCALPLACEMENT\()\$,/, `$1${firstLocal(s)},`)),
    ],
    [
      "nothing in it",
      "ifc-nothing-inside",
      () => text((s) => s.replace(/DATA;[\s\S]*ENDSEC;/, "DATA;\nENDSEC;")),
    ],
  ];

  test.each(cases)("%s: %s", async (_, code, bytes) => {
    expect((await problemOf(bytes())).code).toBe(code);
  });

  test("the message names the line", async () => {
    const problem = await problemOf(text((s) => s.replace("IFCPOLYLINE(", "IFCPOLYLINE(\u0001")));
    const line = sound.slice(0, sound.indexOf("IFCPOLYLINE(")).split("\n").length;
    expect(sentenceOf(problem)).toContain(`Line ${line} `);
  });

  test("more records or bytes than the limit", async () => {
    expect((await problemOf(bytesOf(sound), { records: 20 })).code).toBe("ifc-too-large");
    expect((await problemOf(bytesOf(sound), { bytes: 1000 })).code).toBe("ifc-too-large");
  });

  test("a kernel that gives up is a problem and not a crash", async () => {
    const broken: GeometryKernel = {
      open: () => {
        throw new WebAssembly.RuntimeError("unreachable");
      },
      memory: () => 0,
    };
    const result = await readIfc(bytesOf(sound), { fileName: "written.ifc", kernel: broken });
    expect(result).toEqual({
      problems: [{ code: "ifc-shape-reader-failed", values: { reason: "unreachable" } }],
    });
  });
});

const firstLocal = (whole: string): string => /(#\d+)=IFCLOCALPLACEMENT/.exec(whole)![1]!;

describe(".ifczip", () => {
  const model = { "written.ifc": bytesOf(sound) };

  test("packed or stored, it is read like the file itself", async () => {
    const plain = await reading(bytesOf(sound));
    expect(await reading(zipSync(model, { level: 9 }))).toEqual(plain);
    expect(await reading(zipSync(model, { level: 0 }))).toEqual(plain);
  });

  test("it holds exactly one model", async () => {
    expect((await problemOf(zipSync({ "readme.txt": bytesOf("hello") }))).code).toBe("ifczip-no-model");
    expect((await problemOf(zipSync({ ...model, "b.ifc": bytesOf(sound) }))).code).toBe(
      "ifczip-several-models",
    );
  });

  test("cut off or damaged, it says so", async () => {
    const zip = zipSync(model);
    expect((await problemOf(zip.subarray(0, zip.length - 30))).code).toBe("ifczip-broken");
    const damaged = zip.slice();
    for (let i = 200; i < 260; i++) damaged[i] = 0x55;
    expect((await problemOf(damaged)).code).toBe("ifczip-broken");
  });

  test("unpacked larger than stated limits, by what it states and by what it is", async () => {
    const zip = zipSync({ "bomb.ifc": new Uint8Array(2_000_000) }, { level: 9 });
    expect((await problemOf(zip)).code).toBe("ifczip-too-large");
    const lying = zip.slice();
    const view = new DataView(lying.buffer);
    for (let i = 0; i < lying.length - 4; i++)
      if (view.getUint32(i, true) === 2_000_000) view.setUint32(i, 10, true);
    expect((await problemOf(lying)).code).toBe("ifczip-too-large");
    expect((await problemOf(zipSync(model), { bytes: 5000 })).code).toBe("ifczip-too-large");
  });
});

describe("what can be mended is mended, and noted with its place", () => {
  const space = (
    ring: Ring,
    more: { name: string; height?: number; guid?: string; position?: string },
  ): string =>
    writtenBuilding({
      schema: "IFC4",
      unit: "metre",
      more: (writer, place) => {
        const local = writer.local(place.storeyPlacement, [0, 0, 0]);
        const shape = writer.shape(place.context, writer.prism(ring, more.height ?? 2.6));
        const id = writer.add(
          "IFCSPACE",
          `'${more.guid ?? writer.guid()}',$,'9',$,$,#${local},#${shape},'${more.name}',.ELEMENT.,${more.position ?? ".INTERNAL."},$`,
        );
        writer.aggregate(place.storey, [id]);
      },
    });
  const read = async (whole: string, limits: Partial<ReadLimits> = {}) => {
    const result = await reading(bytesOf(whole), limits);
    if ("problems" in result) throw new Error(JSON.stringify(result.problems));
    return result;
  };
  const codes = (result: Awaited<ReturnType<typeof read>>): string[] =>
    result.report.notes.map((note) => note.code);

  test("a doubled room is left out", async () => {
    const result = await read(
      space(
        [
          [0, 0],
          [4, 0],
          [4, 3],
          [0, 3],
        ],
        { name: "Again" },
      ),
    );
    expect(result.survey.rooms.map((room) => room.name)).toEqual(["Office", "Store"]);
    expect(codes(result)).toContain("ifc-room-doubled");
  });

  test("rooms that overlap are both kept, with the area that they share", async () => {
    const result = await read(
      space(
        [
          [3, 1],
          [4, 1],
          [4, 5],
          [3, 5],
        ],
        { name: "Across" },
      ),
    );
    expect(result.survey.rooms).toHaveLength(3);
    expect(result.report.notes).toContainEqual(
      expect.objectContaining({
        code: "ifc-rooms-overlap",
        values: { room: "Across", other: "Office", area: "2.00" },
      }),
    );
  });

  test("a room without extent is left out and named", async () => {
    const result = await read(
      space(
        [
          [20, 0],
          [24, 0],
          [24, 0],
          [20, 0],
        ],
        { name: "Flat" },
      ),
    );
    expect(result.survey.rooms).toHaveLength(2);
    expect(codes(result)).toContain("ifc-room-without-outline");
  });

  test("a self-crossing outline never becomes a self-crossing room", async () => {
    const result = await read(
      space(
        [
          [20, 0],
          [24, 3],
          [24, 0],
          [20, 3],
        ],
        { name: "Bow tie" },
      ),
    );
    const extra = result.survey.rooms.filter((room) => room.name.startsWith("Bow tie"));
    for (const room of extra) expect(crossings(room.outline)).toBe(0);
    expect(extra.length > 0 || codes(result).includes("ifc-room-without-outline")).toBe(true);
  });

  test("an infinite corner leaves the room out and the others in", async () => {
    const whole = space(
      [
        [20, 0],
        [24, 0],
        [24, 3],
        [20, 3.25],
      ],
      { name: "Endless" },
    );
    const result = await read(whole.replace("(20.,3.25)", "(20.,1.E400)"));
    expect(result.survey.rooms.map((room) => room.name)).toEqual(["Office", "Store"]);
    expect(codes(result)).toContain("ifc-room-without-outline");
  });

  test("a second record of the same identity gets a new one", async () => {
    const guid = /IFCSPACE\('([^']+)'/.exec(sound)![1]!;
    const result = await read(
      space(
        [
          [20, 0],
          [24, 0],
          [24, 3],
          [20, 3],
        ],
        { name: "Twin", guid },
      ),
    );
    expect(result.survey.rooms.map((room) => room.id)).toEqual([guid, expect.any(String), `${guid}-2`]);
    expect(codes(result)).toContain("ifc-identity-twice");
  });

  test("an outline of too many corners is simplified, and says by how much", async () => {
    const circle = Array.from({ length: 300 }, (_, i): [number, number] => [
      30 + 5 * Math.cos((i * Math.PI) / 150),
      5 * Math.sin((i * Math.PI) / 150),
    ]);
    const result = await read(space(circle, { name: "Round" }), { roomCorners: 60 });
    const round = result.survey.rooms.find((room) => room.name === "Round")!;
    expect(round.outline.length).toBeLessThanOrEqual(60);
    expect(codes(result)).toContain("ifc-outline-simplified");
  });

  test("a roof, an outdoor space and a gap are left out with the reason", async () => {
    for (const [name, position, ring] of [
      [
        "Roof",
        ".INTERNAL.",
        [
          [20, 0],
          [24, 0],
          [24, 3],
          [20, 3],
        ],
      ],
      [
        "Terrace",
        ".EXTERNAL.",
        [
          [20, 0],
          [24, 0],
          [24, 3],
          [20, 3],
        ],
      ],
      [
        "Gap",
        ".INTERNAL.",
        [
          [20, 0],
          [20.3, 0],
          [20.3, 0.3],
          [20, 0.3],
        ],
      ],
    ] as const) {
      const result = await read(space(ring, { name, position }));
      expect(result.survey.rooms).toHaveLength(2);
      expect(result.report.leftOut.map((each) => english(each.what))).toContain(`space 9 ${name}`);
    }
  });

  test("a space that is split at its floor becomes two rooms", async () => {
    const whole = writtenBuilding({
      schema: "IFC4",
      unit: "metre",
      more: (writer, place) => {
        const a = writer.prism(
          [
            [20, 0],
            [22, 0],
            [22, 3],
            [20, 3],
          ],
          2.6,
        );
        const b = writer.prism(
          [
            [24, 0],
            [25, 0],
            [25, 3],
            [24, 3],
          ],
          2.6,
        );
        const representation = writer.add(
          "IFCSHAPEREPRESENTATION",
          `#${place.context},'Body','SweptSolid',(#${a},#${b})`,
        );
        const shape = writer.add("IFCPRODUCTDEFINITIONSHAPE", `$,$,(#${representation})`);
        const local = writer.local(place.storeyPlacement, [0, 0, 0]);
        const id = writer.add(
          "IFCSPACE",
          `'${writer.guid()}',$,'9',$,$,#${local},#${shape},'Split',.ELEMENT.,.INTERNAL.,$`,
        );
        writer.aggregate(place.storey, [id]);
      },
    });
    const result = await read(whole);
    expect(result.survey.rooms.map((room) => room.name)).toEqual(["Office", "Store", "Split", "Split (2)"]);
    expect(codes(result)).toContain("ifc-room-in-parts");
  });

  test("a sloped ceiling gives its mean height, with a note", async () => {
    const whole = writtenBuilding({
      schema: "IFC4",
      unit: "metre",
      more: (writer, place) => {
        // A wedge lying on its side: 2 m high at x = 20, 4 m at x = 24; extruded along −y from y = 3.
        const outline = writer.polyline([
          [0, 0],
          [4, 0],
          [4, 4],
          [0, 2],
        ]);
        const profile = writer.add("IFCARBITRARYCLOSEDPROFILEDEF", `.AREA.,$,#${outline}`);
        const axis = writer.add("IFCDIRECTION", "(0.,-1.,0.)");
        const along = writer.add("IFCDIRECTION", "(1.,0.,0.)");
        const at = writer.add("IFCAXIS2PLACEMENT3D", `#${writer.point([0, 3, 0])},#${axis},#${along}`);
        const up = writer.add("IFCDIRECTION", "(0.,0.,1.)");
        const shape = writer.shape(
          place.context,
          writer.add("IFCEXTRUDEDAREASOLID", `#${profile},#${at},#${up},3.`),
        );
        const local = writer.local(place.storeyPlacement, [20, 0, 0]);
        const id = writer.add(
          "IFCSPACE",
          `'${writer.guid()}',$,'9',$,$,#${local},#${shape},'Attic',.ELEMENT.,.INTERNAL.,$`,
        );
        writer.aggregate(place.storey, [id]);
      },
    });
    const result = await read(whole);
    expect(result.survey.rooms.find((room) => room.name === "Attic")!.ceilingHeight).toBeCloseTo(3, 2);
    expect(codes(result)).toContain("ifc-ceiling-uneven");
  });

  test("a door whose swing is not given is assumed, and counted", async () => {
    const result = await read(sound.replace(".SINGLE_SWING_LEFT.", "$"));
    expect(result.report.notes).toContainEqual({ code: "ifc-door-swing-assumed", values: { count: 1 } });
  });

  test("rooms that touch at a wall's middle give a door without thickness, with a note", async () => {
    const result = await read(sound.replaceAll("(4.1,0.,0.)", "(4.,0.,0.)"));
    const door = result.survey.openings.find((opening) => opening.kind === "door")!;
    expect(door.thickness).toBe(0);
    expect(codes(result)).toContain("ifc-walls-centred");
  });
});

describe("texts", () => {
  const named = async (firstName: string): Promise<string> => {
    const result = await reading(bytesOf(writtenBuilding({ schema: "IFC2X3", unit: "metre", firstName })));
    if ("problems" in result) throw new Error(JSON.stringify(result.problems));
    return result.survey.rooms[0]!.name;
  };
  test.each([
    ["K\\S\\|che", "Küche"],
    ["B\\X\\FCro", "Büro"],
    ["\\X2\\4E8B52D95BA4\\X0\\", "事務室"],
    ["\\X4\\0001F3E2\\X0\\ Office", "\u{1f3e2} Office"],
    ["\\PE\\\\S\\2\\S\\U\\S\\T", "Вед"],
    ["Owner''s \\\\ room", "Owner's \\ room"],
    ["Two\\X\\0Alines", "Two lines"],
    ["K\u00fcche", "Küche"],
    ["K\u00c3\u00bcche", "Küche"],
  ])("%s is read as %s", async (written, name) => {
    expect(await named(written)).toBe(name);
  });
});

/** Pairs of edges of a ring that properly cross. */
const crossings = (ring: readonly (readonly [number, number])[]): number => {
  const side = (a: readonly number[], b: readonly number[], c: readonly number[]): number =>
    Math.sign((b[0]! - a[0]!) * (c[1]! - a[1]!) - (b[1]! - a[1]!) * (c[0]! - a[0]!));
  let count = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    for (let j = i + 1; j < ring.length; j++) {
      const [c, d] = [ring[j]!, ring[(j + 1) % ring.length]!];
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) count++;
    }
  });
  return count;
};
