import { expect, test } from "vitest";
import { areaOf, intersection, poleOf, type Region, type Room, type Site } from "#engine";
import { surveyPlan } from "#exchange";
import { demoJob, siteOf } from "#job";
import { storeyDxf } from "#output";

const demo = siteOf(demoJob()).site;
/** The demo job with a detector more in every room and every second room without a number: a tag must not become one. */
const site: Site = {
  ...demo,
  rooms: demo.rooms.map((room, index) => (index % 2 === 0 ? { ...room, number: "" } : room)),
  detectors: [
    ...demo.detectors,
    ...demo.rooms.map((room, index) => ({
      ...demo.detectors[0]!,
      id: `more-${room.id}`,
      tag: `B9.${index + 10}`,
      room: room.id,
      controls: [room.id],
      at: poleOf({ outline: room.outline, holes: room.holes }).at,
    })),
  ],
};
const regionOf = ({ outline, holes }: Room): Region => [{ outline, holes: [...holes] }];
const overlap = (a: Room, b: Room): number => {
  const [first, second] = [regionOf(a), regionOf(b)];
  const both = areaOf(intersection(first, second));
  return both / (areaOf(first) + areaOf(second) - both);
};

async function readAgain(of: Site, storey: string) {
  const bytes = new TextEncoder().encode(storeyDxf(of, storey));
  const read = await surveyPlan({ bytes, fileName: "storey.dxf", limits: {} }, {}, () => undefined);
  if ("problems" in read) throw new Error(read.problems.map(({ code }) => code).join());
  return read;
}

/** A wide door that opens outwards is shut at its leaf: the depth of its wall then counts to the room, 0.3 × 2 m at the entrance. */
const sameRoom = 0.98;

test.each(site.storeys.filter(({ id }) => site.rooms.some(({ storey }) => storey === id)))(
  "Rooms of storey $name written to DXF and read again are the same rooms, with their doors",
  async ({ id }) => {
    const rooms = site.rooms.filter(({ storey }) => storey === id);
    const { survey, plan } = await readAgain(site, id);
    expect(plan.metres).toBe(1);
    const partners = rooms.map((room) => {
      const best = survey.rooms
        .map((found) => ({ found, share: overlap(room, found) }))
        .sort((a, b) => b.share - a.share)[0];
      return {
        room: `${room.number} ${room.name}`,
        share: best?.share ?? 0,
        named: `${best?.found.number} ${best?.found.name}`,
      };
    });
    expect(partners.filter(({ share }) => share < sameRoom)).toEqual([]);
    expect(partners.filter(({ room, named }) => room.trim() !== named.trim())).toEqual([]);
    expect(survey.rooms).toHaveLength(rooms.length);
  },
);

test("The same storey gives the same bytes", () => {
  const storey = site.storeys[0]?.id ?? "";
  expect(storeyDxf(site, storey)).toBe(storeyDxf(site, storey));
});
