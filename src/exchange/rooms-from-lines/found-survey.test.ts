import { expect, test } from "vitest";
import { pencil, twoRoomsAndCorridor } from "./drawn-plan.fixture.ts";
import { findRooms } from "./find-rooms.ts";
import { surveyOfPlan, usualHeights } from "./found-survey.ts";

const storey = { id: "ground", name: "Ground floor", elevation: 0 };
const surveyed = (drawn = twoRoomsAndCorridor({ wall: "0", furniture: "0" }).linework()) =>
  surveyOfPlan(findRooms(drawn), drawn, { storey, metres: drawn.unit.metres, ...usualHeights });

test("Rooms come with name, number, use and the assumed height, which is said", () => {
  const { survey, notes } = surveyed();
  const rooms = survey.rooms.map(({ name, number, use, ceilingHeight }) => ({
    name,
    number,
    use,
    ceilingHeight,
  }));
  expect(rooms.sort((a, b) => a.name.localeCompare(b.name))).toEqual([
    { name: "Corridor", number: "", use: "passing", ceilingHeight: 2.5 },
    { name: "Office", number: "1.02", use: "sitting", ceilingHeight: 2.5 },
    { name: "Store", number: "", use: "moving", ceilingHeight: 2.5 },
  ]);
  expect(notes.map(({ code }) => code)).toEqual(["plan-heights-assumed"]);
  expect(notes[0]!.values).toMatchObject({ rooms: 3, doors: 3, ceiling: 2.5 });
});

test("Doors lie on a face of their first room, as wide and as deep as drawn, hinged and swung as drawn", () => {
  const { survey } = surveyed();
  const byRoom = new Map(survey.rooms.map((room) => [room.id, room.name]));
  const doors = survey.openings
    .map((door) => ({
      rooms: door.rooms
        .map((id) => (id === null ? "outside" : byRoom.get(id)!))
        .sort()
        .join(" – "),
      width: Math.round(100 * Math.hypot(door.to[0] - door.from[0], door.to[1] - door.from[1])) / 100,
      thickness: door.thickness,
      into: door.opensInto === null ? "outside" : byRoom.get(door.opensInto),
      hinge: door.hinge === "from" ? door.from : door.to,
    }))
    .sort((a, b) => a.rooms.localeCompare(b.rooms));
  expect(doors.map(({ rooms, width, thickness, into }) => ({ rooms, width, thickness, into }))).toEqual([
    { rooms: "Corridor – Office", width: 0.9, thickness: 0.2, into: "Office" },
    { rooms: "Corridor – outside", width: 0.9, thickness: 0.3, into: "Corridor" },
    { rooms: "Corridor – Store", width: 0.9, thickness: 0.2, into: "Store" },
  ]);
  // The store's leaf hangs at x = 6.2, the office's at x = 1.
  expect(doors.map(({ hinge }) => Math.round(10 * (hinge[0] + survey.shift[0])) / 10)).toEqual([1, 8.2, 6.2]);
});

test("Read again, the same rooms have the same identities", () => {
  expect(surveyed().survey.rooms.map(({ id }) => id)).toEqual(surveyed().survey.rooms.map(({ id }) => id));
});

test("The drawing lies under the rooms: its lines moved as they were", () => {
  const { survey } = surveyed(
    twoRoomsAndCorridor({ wall: "0", furniture: "0" }).linework({ shift: [5000, 800] }),
  );
  const [drawing] = survey.drawings;
  const xs = [...drawing!.lines].filter((_, i) => i % 2 === 0);
  const corners = survey.rooms.flatMap(({ outline }) => outline.map(([x]) => x));
  expect(Math.min(...xs)).toBeCloseTo(Math.min(...corners) - 0.3, 3);
  expect(Math.max(...xs)).toBeLessThan(20);
});

test("A drawing without closed rooms keeps its lines and says so; a doubtful room is named", () => {
  const open = pencil();
  open.line([0, 0], [5, 0]);
  open.line([0, 3], [5, 3]);
  expect(surveyed(open.linework()).notes.map(({ code }) => code)).toEqual(["plan-no-rooms"]);
  expect(surveyed(open.linework()).survey.drawings[0]!.layerOf).toHaveLength(2);
  const bare = pencil();
  bare.ring([
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 3],
  ]);
  expect(surveyed(bare.linework()).notes).toMatchObject([
    { code: "plan-heights-assumed" },
    { code: "plan-rooms-unsure", values: { count: 1, rooms: "Room 1 (12.0 m²)" } },
  ]);
});

test("Of floors side by side one is taken: its rooms, its lines, and identities of its own", () => {
  const left = twoRoomsAndCorridor({ wall: "0", furniture: "0" }).linework({ shift: [1, 1] });
  const count = left.layerOf.length;
  // The same floor once more, 30 m to the right.
  const moved = left.lines.map((value, i) => (i % 2 === 0 ? value + 30 : value));
  const both = {
    ...left,
    lines: Float64Array.from([...left.lines, ...moved]),
    layerOf: Uint16Array.from([...left.layerOf, ...left.layerOf]),
    arcOf: Uint32Array.from([
      ...left.arcOf,
      ...left.arcOf.map((arc) => (arc > 0 ? arc + left.arcs.length : 0)),
    ]),
    arcs: [
      ...left.arcs,
      ...left.arcs.map((arc) => ({ ...arc, centre: [arc.centre[0] + 30, arc.centre[1]] as const })),
    ],
  };
  const boxes = [
    [0, 0, 15, 10],
    [30, 0, 45, 10],
  ] as const;
  const floors = boxes.map((box, index) =>
    surveyOfPlan(findRooms(both, { box }), both, {
      storey: { id: `floor-${index}`, name: "", elevation: 3 * index },
      metres: 1,
      part: { index, box },
      ...usualHeights,
    }),
  );
  for (const { survey } of floors) {
    expect(survey.rooms).toHaveLength(3);
    expect(survey.drawings[0]!.layerOf).toHaveLength(count);
  }
  const ids = floors.flatMap(({ survey }) =>
    [...survey.rooms, ...survey.openings, ...survey.drawings].map(({ id }) => id),
  );
  expect(new Set(ids).size).toBe(ids.length);
});
