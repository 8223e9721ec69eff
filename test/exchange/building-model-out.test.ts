import { beforeAll, describe, expect, test } from "vitest";
import { IfcAPI, LogLevel } from "web-ifc";
import { areaOf, intersection, type Region, type Room, type Site } from "#engine";
import { readIfc, type SurveyRecords } from "#exchange";
import { demoJob, siteOf } from "#job";
import { siteIfc, speakIn } from "#output";

const { site: demo } = siteOf(demoJob());
/** With names that need every escape of the format. */
const site: Site = {
  ...demo,
  rooms: demo.rooms.map((room, i) => (i === 0 ? { ...room, name: "O'Neill\\Büro 𝄞" } : room)),
};
const details = {
  job: "Saltmarsh Ferry Terminal, Staff Wing",
  site: "Quay 1",
  drawnBy: "",
  created: new Date(Date.UTC(2000, 0, 1)),
};
const written = siteIfc(site, details);
const bytes = new TextEncoder().encode(written);

describe("A job written as a building model", () => {
  test("is the same bytes for the same job, and plain ASCII", () => {
    expect(siteIfc(site, details)).toBe(written);
    expect(/[^\n\x20-\x7e]/.test(written)).toBe(false);
  });

  test("says names and descriptions in the language of the papers, and changes neither identities nor properties", () => {
    const german = siteIfc(site, { ...details, speak: speakIn("de") });
    const door = "'T\\X2\\00FC\\X0\\r'";
    expect(german).toContain(door);
    expect(german).toContain("'Pr\\X2\\00E4\\X0\\senzmelder ");
    expect(german).not.toContain("'Door'");
    expect(written).not.toContain(door);
    const kept = (text: string) => text.match(/'[0-3][\w$]{21}'|IFCPROPERTY\w+\('\w+'/g);
    expect(kept(german)).toEqual(kept(written));
  });

  test("gives every record an identity of its own, of 22 figures", () => {
    const roots = [...written.matchAll(/^#\d+=IFC(?!PROPERTYSINGLEVALUE)\w+\('([^']*)',\$,/gm)].map(
      (match) => match[1]!,
    );
    expect(roots.length).toBeGreaterThan(site.rooms.length + site.detectors.length);
    expect(new Set(roots).size).toBe(roots.length);
    expect(roots.filter((id) => !/^[0-3][\w$]{21}$/.test(id))).toEqual([]);
  });

  test("opens in the bare shape reader with a body for every room, detector, luminaire and opening", async () => {
    const api = new IfcAPI();
    await api.Init();
    api.SetLogLevel(LogLevel.LOG_LEVEL_OFF);
    const model = api.OpenModel(bytes);
    const bodies = (type: string): number => {
      let count = 0;
      api.StreamAllMeshesWithTypes(model, [api.GetTypeCodeFromName(type)], (mesh) => {
        if (mesh.geometries.size() > 0) count++;
      });
      return count;
    };
    const lines = (type: string): number =>
      api.GetLineIDsWithType(model, api.GetTypeCodeFromName(type)).size();
    expect(lines("IFCBUILDINGSTOREY")).toBe(site.storeys.length);
    expect(bodies("IFCSPACE")).toBe(site.rooms.length);
    expect(bodies("IFCSENSOR")).toBe(site.detectors.length);
    expect(bodies("IFCLIGHTFIXTURE")).toBe(site.luminaires.length);
    expect(bodies("IFCDOOR")).toBe(site.openings.filter(({ kind }) => kind === "door").length);
    expect(bodies("IFCOPENINGELEMENT")).toBe(site.openings.length);
    const sensors = api.GetLineIDsWithType(model, api.GetTypeCodeFromName("IFCSENSOR"));
    const kinds = Array.from({ length: sensors.size() }, (_, i) => {
      const line = api.GetLine(model, sensors.get(i)) as {
        readonly Tag: { readonly value: string };
        readonly PredefinedType: { readonly value: string };
      };
      return `${line.Tag.value} ${line.PredefinedType.value}`;
    });
    expect(kinds.sort()).toEqual(site.detectors.map(({ tag }) => `${tag} MOVEMENTSENSOR`).sort());
    api.CloseModel(model);
  });

  describe("and read again", () => {
    let survey: SurveyRecords;
    beforeAll(async () => {
      const read = await readIfc(bytes, { fileName: "job.ifc" });
      if ("problems" in read) throw new Error(read.problems.map(({ code }) => code).join());
      survey = read.survey;
    });
    const regionOf = ({ outline, holes }: Room): Region => [{ outline, holes: [...holes] }];
    const roomOf = (room: string): string => site.rooms.find(({ id }) => id === room)!.name;
    const nameOf = (id: string | null): string =>
      survey.rooms.find((room) => room.id === id)?.name ?? "outside";

    test("has the same storeys and rooms with their names, heights and floors, to a millimetre", () => {
      expect(survey.storeys.map(({ name, elevation }) => [name, elevation])).toEqual(
        site.storeys
          .toSorted((a, b) => a.elevation - b.elevation)
          .map(({ name, elevation }) => [name, elevation]),
      );
      expect(survey.rooms).toHaveLength(site.rooms.length);
      for (const room of site.rooms) {
        const found = survey.rooms.find(({ name, number }) => name === room.name && number === room.number);
        expect(found, room.name).toBeDefined();
        const both = areaOf(intersection(regionOf(room), regionOf(found!)));
        expect(areaOf(regionOf(found!)) + areaOf(regionOf(room)) - 2 * both, room.name).toBeLessThan(0.01);
        expect(found!.ceilingHeight, room.name).toBeCloseTo(room.ceilingHeight, 3);
        expect(found!.floor, room.name).toBeCloseTo(room.floor, 3);
      }
    });

    test("has the same detectors in the same rooms, at the same place, height and turn", () => {
      const ours = site.detectors.map(({ tag, room, model, at, height, turn }) => ({
        tag,
        room: roomOf(room),
        model,
        at: at.map((value) => expect.closeTo(value, 3)),
        height: expect.closeTo(height, 3),
        turn: expect.closeTo(turn, 3),
      }));
      const found = (survey.detectors ?? []).map(({ id, room, ...rest }) => ({
        ...rest,
        room: nameOf(room),
      }));
      const byTag = (a: { readonly tag: string }, b: { readonly tag: string }): number =>
        a.tag < b.tag ? -1 : 1;
      expect(found.sort(byTag)).toEqual(ours.sort(byTag));
    });

    test("has the same doors between the same rooms, swinging the same way", () => {
      const doors = (of: Pick<Site, "openings">, name: (id: string | null) => string) =>
        of.openings
          .filter(({ kind, angle }) => kind === "door" && angle < 3)
          .map(({ rooms, opensInto, from, to, hinge }) => ({
            way: `${rooms.map(name).sort().join(" / ")} into ${name(opensInto)}`,
            hinge: hinge === "from" ? from : to,
          }));
      const name = (id: string | null): string => (id === null ? "outside" : roomOf(id));
      const found = doors(survey, nameOf);
      // Which face of the wall a door is measured on hangs on which of its rooms comes first in the file.
      const wall = 0.35;
      const lost = doors(site, name).filter(
        (door) =>
          !found.some(
            ({ way, hinge }) =>
              way === door.way && Math.hypot(hinge[0] - door.hinge[0], hinge[1] - door.hinge[1]) < wall,
          ),
      );
      expect(found).toHaveLength(doors(site, name).length);
      expect(lost).toEqual([]);
    });

    test("has the same luminaires in the same rooms", () => {
      const count = (of: Pick<Site, "luminaires">, name: (id: string) => string): string[] =>
        of.luminaires
          .map(({ room, at }) => `${name(room)} ${at.map((value) => value.toFixed(2)).join(", ")}`)
          .sort();
      expect(count(survey, nameOf)).toEqual(count(site, roomOf));
    });
  });
});
