import { seeded } from "../exchange/mutated.ts";

type Random = () => number;
/** A job file as JSON.parse makes it; anything may stand in it after a mutation. */
type Fields = Record<string, unknown>;

const pick = <T>(list: readonly T[], random: Random): T => list[Math.floor(random() * list.length)]!;
const isFields = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/**
 * Bytes of a job file with one to three faults put into it, the same for the same seed.
 *
 * Two rooms of the whole job that share an opening, or one alone, with a detector in each: small enough to be calculated for every seed.
 */
export function mutatedJob(whole: Fields, seed: number): Uint8Array {
  const random = seeded(seed);
  const job = partOf(structuredClone(whole), random);
  const count = 1 + Math.floor(random() * random() * 4);
  // Three files of four stay well-formed, so that most faults get past the reader of JSON.
  if (random() < 0.75) {
    for (let i = 0; i < count; i++) pick(valueFaults, random)(job, random);
    return new TextEncoder().encode(JSON.stringify(job));
  }
  let text = JSON.stringify(job);
  for (let i = 0; i < count; i++) text = pick(textFaults, random)(text, random);
  return pick(encodings, random)(text, random);
}

/** A room, at times one that an opening joins to it, and all records that stand in them. */
function partOf(whole: Fields, random: Random): Fields {
  const list = (kind: string): Fields[] => whole[kind] as Fields[];
  const first = pick(list("rooms"), random).id as string;
  const joined = list("openings")
    .map((opening) => opening.rooms as (string | null)[])
    .filter((rooms) => rooms.includes(first))
    .flat()
    .filter((id): id is string => id !== null && id !== first);
  // The corridor has a detector and thirteen doors: it alone would take half of the time.
  const others = joined.filter((id) => id !== "corridor");
  const rooms = new Set(random() < 0.5 && others.length > 0 ? [first, pick(others, random)] : [first]);
  const part: Fields = { ...whole };
  part.rooms = list("rooms").filter((room) => rooms.has(room.id as string));
  part.openings = list("openings").filter((opening) =>
    (opening.rooms as (string | null)[]).every((id) => id === null || rooms.has(id)),
  );
  for (const kind of [
    "floorPieces",
    "obstacles",
    "dwellPlaces",
    "interference",
    "ceilingThings",
    "luminaires",
  ])
    part[kind] = list(kind).filter((record) => rooms.has(record.room as string));
  part.detectors = (part.rooms as Fields[]).map((room, i) => {
    const outline = room.outline as number[][];
    const [x, y] = [outline[0]![0]! + 1, outline[0]![1]! + 1];
    const model = pick(list("models"), random).id;
    const settings = { mode: "automatic", offDelay: 600, impulse: { pulse: 1, pause: 9 }, lock: "open" };
    return { id: `d-${i}`, tag: `D${i}`, room: room.id, model, at: [x, y], height: 2.5, turn: 30, settings };
  });
  return part;
}

/** Where a value stands: the object or list that holds it, and its key there. */
interface Spot {
  readonly holder: Fields | unknown[];
  readonly key: string;
}

const put = ({ holder, key }: Spot, value: unknown): void => {
  // An own field, whatever it is called: this is what JSON.parse makes of "__proto__".
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
};
const take = ({ holder, key }: Spot): unknown => (holder as Fields)[key];

function spots(
  value: unknown,
  wanted: (value: unknown, key: string) => boolean,
  found: Spot[] = [],
): readonly Spot[] {
  if (typeof value !== "object" || value === null) return found;
  for (const key of Object.keys(value)) {
    const inner = (value as Fields)[key];
    if (wanted(inner, key)) found.push({ holder: value as Fields, key });
    spots(inner, wanted, found);
  }
  return found;
}

const at =
  (
    wanted: (value: unknown, key: string) => boolean,
    change: (spot: Spot, random: Random, job: Fields) => void,
  ) =>
  (job: Fields, random: Random): void => {
    const found = spots(job, wanted);
    if (found.length > 0) change(pick(found, random), random, job);
  };

const isRing = (value: unknown): value is number[][] =>
  Array.isArray(value) && value.length > 2 && value.every((each) => Array.isArray(each) && each.length === 2);
const isNumber = (value: unknown): boolean => typeof value === "number";
const anything = (): boolean => true;

const numbers = [0, -1, -0, 1e-9, 1e-300, 0.1, 3, 99.5, 1e5, -1e5, 99_999.9, 1e9, 1e300, -1e300, null];
const strangers: readonly unknown[] = [
  null,
  "",
  "NaN",
  "Infinity",
  "-1",
  "1e999",
  0,
  -1,
  true,
  [],
  [[]],
  {},
  "\u0000",
  "\ud800",
  "a".repeat(3_000),
  "<b>&amp;",
];

/** Faults that leave the file well-formed JSON. */
const valueFaults: readonly ((job: Fields, random: Random) => void)[] = [
  at(anything, ({ holder, key }) => {
    if (Array.isArray(holder)) holder.splice(Number(key), 1);
    else delete holder[key];
  }),
  at(anything, ({ holder, key }, random) => {
    if (Array.isArray(holder)) holder.splice(Number(key), 0, structuredClone(holder[Number(key)]));
    else put({ holder, key: pick(Object.keys(holder), random) }, structuredClone(holder[key]));
  }),
  at(anything, (spot, random) => put(spot, structuredClone(pick(strangers, random)))),
  at(isNumber, (spot, random) => put(spot, pick(numbers, random))),
  at(isNumber, (spot, random) => put(spot, (take(spot) as number) + (random() - 0.5) * 4)),
  at(isNumber, (spot, random) => put(spot, pick(["NaN", "1,5", "-Infinity", "12 m"], random))),
  // Outlines: crossing themselves, empty, doubled, flat, turned round, with a corner far away.
  at(isRing, (spot, random) => {
    const ring = [...(take(spot) as number[][])];
    const [i, j] = [Math.floor(random() * ring.length), Math.floor(random() * ring.length)];
    [ring[i], ring[j]] = [ring[j]!, ring[i]!];
    put(spot, ring);
  }),
  at(isRing, (spot) => put(spot, [])),
  at(isRing, (spot) => put(spot, [...(take(spot) as number[][]), ...(take(spot) as number[][])])),
  at(isRing, (spot) =>
    put(
      spot,
      (take(spot) as number[][]).map(([x]) => [x, 0]),
    ),
  ),
  at(isRing, (spot) => put(spot, (take(spot) as number[][]).toReversed())),
  at(isRing, (spot) => put(spot, (take(spot) as number[][]).slice(0, 2))),
  at(isRing, (spot, random) => {
    const ring = structuredClone(take(spot) as number[][]);
    ring[Math.floor(random() * ring.length)] = [
      pick([-1e4, 500, -30, 0], random),
      pick([1e4, -500, 30, 0], random),
    ];
    put(spot, ring);
  }),
  at(isRing, (spot, random) => {
    const factor = pick([1e-6, 1e-3, 0.1, -1, 30], random);
    put(
      spot,
      (take(spot) as number[][]).map(([x, y]) => [x! * factor, y! * factor]),
    );
  }),
  // Names: doubled, unknown, turned to another kind of record.
  at(
    (_, key) => key === "id",
    (spot, random, job) => put(spot, pick(spots(job, (_, key) => key === "id").map(take), random)),
  ),
  at(
    (_, key) => ["room", "storey", "model", "opensInto", "rooms", "controls"].includes(key),
    (spot, random, job) => {
      const ids = spots(job, (_, key) => key === "id").map(take);
      const other = pick([...ids, "nowhere", "__proto__", "constructor", "toString"], random);
      put(spot, Array.isArray(take(spot)) ? [other, pick([other, null, ...ids], random)] : other);
    },
  ),
  at(isFields, (spot, random) => {
    const key = pick(["__proto__", "constructor", "hasOwnProperty", "toString", "unknown field"], random);
    put(
      { holder: take(spot) as Fields, key },
      pick<unknown>([{ polluted: true }, null, 1, "x", { id: "x", rooms: [] }], random),
    );
  }),
  at(
    (_, key) => ["use", "kind", "mounting", "state", "hinge", "declaration"].includes(key),
    (spot, random) =>
      put(
        spot,
        pick(
          ["stair", "plant", "sanitary", "changing", "flight", "landing", "passage", "cubicle", "flush", "x"],
          random,
        ),
      ),
  ),
];

const place = (text: string, random: Random): number => Math.floor(random() * text.length);

/** Faults of the text, most of which end JSON. */
const textFaults: readonly ((text: string, random: Random) => string)[] = [
  (text, random) => text.slice(0, place(text, random)),
  (text, random) => {
    const from = place(text, random);
    return text.slice(0, from) + text.slice(from + Math.floor(random() * 200));
  },
  (text, random) => {
    const from = place(text, random);
    return (
      text.slice(0, from) + pick(['"', "]", "}", ",", "0", "\n", "//", "\u2028"], random) + text.slice(from)
    );
  },
  // A number in the text that no JSON.stringify would write.
  (text, random) => {
    const found = [...text.matchAll(/-?\d+(\.\d+)?(?=[,\]}])/g)];
    if (found.length === 0) return text;
    const match = pick(found, random);
    const number = pick(["1e999", "-1e999", "NaN", "-0", "1e-400", "0x10", "01", "1E2"], random);
    return text.slice(0, match.index) + number + text.slice(match.index + match[0].length);
  },
  // A field written twice: the last one counts.
  (text, random) => {
    const found = [...text.matchAll(/"[a-zA-Z]+":("[^"]*"|-?[\d.]+),/g)];
    if (found.length === 0) return text;
    const match = pick(found, random);
    const again = pick(found, random)[0];
    return text.slice(0, match.index) + again + text.slice(match.index);
  },
  (text, random) => text.replace(/"[a-zA-Z]+":/, pick(['"__proto__":', '"\\u0000":', '"":'], random)),
];

/** Ways in which a text becomes bytes; the first is the right one. */
const encodings: readonly ((text: string, random: Random) => Uint8Array)[] = [
  (text) => new TextEncoder().encode(text),
  (text) => new TextEncoder().encode(`\uFEFF${text}`),
  (text) => new TextEncoder().encode(`\uFEFF\uFEFF${text}`),
  (text) => new Uint8Array(Buffer.from(text, "utf16le")),
  (text) => new Uint8Array(Buffer.from(`Größe ${text}`, "latin1")),
  (text, random) => {
    const bytes = new TextEncoder().encode(text);
    for (let i = 0; i < 3; i++)
      bytes[Math.floor(random() * bytes.length)] = pick([0, 0x7f, 0xff, 0xc0, 0x22], random);
    return bytes;
  },
  (text, random) => {
    const bytes = new TextEncoder().encode(text);
    const i = Math.floor(random() * bytes.length);
    if (bytes.length > 0) bytes[i] = bytes[i]! ^ (1 << Math.floor(random() * 8));
    return bytes;
  },
];
