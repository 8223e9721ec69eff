import { type Detector, type Problem, type Room, roomTitle, type Site, type Storey } from "#engine";

/** Rooms named by id, number, name, or number and name; letters large or small. */
export function findRooms(
  site: Site,
  names: readonly string[],
): { readonly rooms: readonly Room[] } | { readonly problems: readonly Problem[] } {
  if (names.length === 0) return { rooms: site.rooms };
  const found = new Set<Room>();
  const problems: Problem[] = [];
  for (const name of names) {
    const exact = site.rooms.filter((room) => room.id === name);
    const wanted = name.trim().toLowerCase();
    const rooms =
      exact.length > 0
        ? exact
        : site.rooms.filter((room) =>
            [room.number, room.name, roomTitle(room)].some((one) => one.trim().toLowerCase() === wanted),
          );
    if (rooms.length === 1) found.add(rooms[0]!);
    else if (rooms.length === 0)
      problems.push({
        code: "room-unknown",
        values: { room: name, known: listed(site.rooms.map(roomTitle)) },
      });
    else
      problems.push({
        code: "room-ambiguous",
        values: { room: name, count: rooms.length, known: listed(rooms.map((room) => room.id)) },
      });
  }
  return problems.length > 0 ? { problems } : { rooms: site.rooms.filter((room) => found.has(room)) };
}

/** A storey named by id, or by a name that no other has. */
export function findStorey(site: Site, name: string): Storey | Problem {
  const wanted = name.trim().toLowerCase();
  const named = site.storeys.filter((one) => one.name.trim().toLowerCase() === wanted);
  return (
    site.storeys.find(({ id }) => id === name) ??
    (named.length === 1 ? named[0] : undefined) ?? {
      code: "storey-unknown",
      values: {
        storey: name,
        known: listed(
          named.length > 1 ? named.map(({ id }) => id) : site.storeys.map((one) => one.name || one.id),
        ),
      },
    }
  );
}

/** A detector named by id or by tag. */
export function findDetector(site: Site, name: string): Detector | Problem {
  return (
    site.detectors.find((one) => one.id === name) ??
    site.detectors.find((one) => one.tag.toLowerCase() === name.toLowerCase()) ?? {
      code: "detector-unknown",
      values: { detector: name, known: listed(site.detectors.map((one) => one.tag)) },
    }
  );
}

/** More than a dozen names help nobody. */
function listed(names: readonly string[]): string {
  if (names.length === 0) return "there are none";
  return names.length <= 12
    ? names.join(", ")
    : `${names.slice(0, 12).join(", ")} and ${names.length - 12} more`;
}
