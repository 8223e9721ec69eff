import { type Opening, type Point, type Reveal, type Room, revealOf } from "#engine";
import { ink, paper } from "./ink.ts";
import type { Mark, PaperPoint, Pen } from "./mark.ts";
import { onPaper, type Projection, ringOnPaper } from "./projection.ts";

const pen: Pen = { width: 0.35, colour: ink };
const thin: Pen = { width: 0.18, colour: ink };

/** An opening in its wall: the wall cut away, jambs, and the door's leaf with its swing, or the panes of a window. */
export function openingMarks(
  opening: Opening,
  first: Room,
  drawn: {
    readonly projection: Projection /** Draws only the leaf that swings into this room. */;
    readonly leafInto?: string;
  },
): readonly Mark[] {
  const { projection } = drawn;
  const reveal = revealOf(opening, first);
  const place = (point: Point): PaperPoint => onPaper(point, projection);
  const line = (from: Point, to: Point, by: Pen): Mark => ({
    kind: "line",
    from: place(from),
    to: place(to),
    pen: by,
  });
  const [nearFrom, nearTo] = reveal.near;
  const [farFrom, farTo] = reveal.far;
  const jambs: readonly Mark[] = [
    {
      kind: "area",
      rings: [ringOnPaper(reveal.outline, projection)],
      fills: [{ kind: "solid", colour: paper }],
    },
    // The wall's own lines are wider than the reveal's edge: they are wiped on both faces.
    { kind: "line", from: place(nearFrom), to: place(nearTo), pen: { width: 0.7, colour: paper } },
    { kind: "line", from: place(farFrom), to: place(farTo), pen: { width: 0.7, colour: paper } },
    line(nearFrom, farFrom, { width: 0.5, colour: ink }),
    line(nearTo, farTo, { width: 0.5, colour: ink }),
  ];
  switch (opening.kind) {
    case "door":
      return [
        ...jambs,
        line(nearFrom, nearTo, thin),
        line(farFrom, farTo, thin),
        ...(drawn.leafInto === undefined || drawn.leafInto === opening.opensInto
          ? leafMarks(opening, reveal, place)
          : []),
      ];
    case "passage":
      return [
        ...jambs,
        line(nearFrom, nearTo, { ...thin, dash: [1.5, 1] }),
        line(farFrom, farTo, { ...thin, dash: [1.5, 1] }),
      ];
    case "window":
      return [
        ...jambs,
        line(nearFrom, nearTo, pen),
        line(farFrom, farTo, pen),
        line(between(nearFrom, farFrom), between(nearTo, farTo), thin),
      ];
    case "glazing":
      return [
        ...jambs,
        line(parted(nearFrom, farFrom, 0.35), parted(nearTo, farTo, 0.35), pen),
        line(parted(nearFrom, farFrom, 0.65), parted(nearTo, farTo, 0.65), pen),
      ];
  }
}

/** The leaf stands open at its angle, on the face towards which it swings; its swing is a thin arc down to the other jamb. */
function leafMarks(opening: Opening, reveal: Reveal, place: (point: Point) => PaperPoint): readonly Mark[] {
  const intoFirst = opening.opensInto === opening.rooms[0];
  const face = intoFirst ? reveal.near : reveal.far;
  const [hinge, latch] = opening.hinge === "from" ? face : [face[1], face[0]];
  const closed = Math.atan2(latch[1] - hinge[1], latch[0] - hinge[0]);
  const into: Point = intoFirst ? [-reveal.through[0], -reveal.through[1]] : reveal.through;
  const sense = Math.sign(Math.cos(closed) * into[1] - Math.sin(closed) * into[0]) || 1;
  const width = Math.hypot(latch[0] - hinge[0], latch[1] - hinge[1]);
  const at = (angle: number): Point => [
    hinge[0] + width * Math.cos(angle),
    hinge[1] + width * Math.sin(angle),
  ];
  const steps = 16;
  const swing = Array.from({ length: steps + 1 }, (_, i) => at(closed + (sense * opening.angle * i) / steps));
  return [
    { kind: "line", from: place(hinge), to: place(at(closed + sense * opening.angle)), pen },
    { kind: "polyline", points: swing.map(place), pen: thin },
  ];
}

const between = (a: Point, b: Point): Point => parted(a, b, 0.5);
const parted = (a: Point, b: Point, share: number): Point => [
  a[0] + share * (b[0] - a[0]),
  a[1] + share * (b[1] - a[1]),
];
