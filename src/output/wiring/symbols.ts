import { ink, paper } from "../drawing/ink.ts";
import type { LetteringSize, Mark, Millimetres, PaperPoint, Pen, TextMark } from "../drawing/mark.ts";

/**
 * Symbols of the wiring sheets. Their meaning is that of the open symbol standard (what breaks, what trips, what glows); every one is
 * drawn anew here. Contacts lie on a level or an upright conductor that the sheet draws up to their ends.
 */
export const device: Pen = { width: 0.35, colour: ink };
export const thin: Pen = { width: 0.25, colour: ink };

export const line = (from: PaperPoint, to: PaperPoint, pen: Pen = device): Mark => ({
  kind: "line",
  from,
  to,
  pen,
});

export const words = (
  at: PaperPoint,
  text: string,
  more: Partial<Pick<TextMark, "size" | "anchor" | "weight" | "colour" | "turn">> = {},
): TextMark => ({
  kind: "text",
  at,
  text,
  size: (more.size ?? 2.5) as LetteringSize,
  anchor: more.anchor ?? "start",
  weight: more.weight ?? "regular",
  colour: more.colour ?? ink,
  ...(more.turn === undefined ? {} : { turn: more.turn }),
});

export const box = (
  [left, top]: PaperPoint,
  width: Millimetres,
  height: Millimetres,
  pen: Pen = device,
): Mark => ({
  kind: "area",
  rings: [
    [
      [left, top],
      [left + width, top],
      [left + width, top + height],
      [left, top + height],
    ],
  ],
  fills: [{ kind: "solid", colour: paper }],
  pen,
});

/** A terminal that one can get at. */
export const terminal = (at: PaperPoint): Mark => ({
  kind: "circle",
  at,
  radius: 0.9,
  fill: paper,
  pen: device,
});

/** Conductors that are joined; without it they only cross. */
export const joint = (at: PaperPoint): Mark => ({ kind: "circle", at, radius: 0.8, fill: ink });

/** Gap of a contact on a level conductor; the blade hangs on the right. */
export const gap: Millimetres = 7;

/** A contact that makes, on a level conductor from `at` to the right. */
export const makeContact = ([x, y]: PaperPoint): readonly Mark[] => [
  line([x + gap, y], [x + 0.6, y - 3.2], { width: 0.5, colour: ink }),
];

/** A circuit breaker: a contact that breaks by itself, crossed where it parts. */
export const breaker = ([x, y]: PaperPoint): readonly Mark[] => [
  ...makeContact([x, y]),
  line([x - 1.1, y - 1.1], [x + 1.1, y + 1.1]),
  line([x - 1.1, y + 1.1], [x + 1.1, y - 1.1]),
];

/** A fuse: a link in its body, on a level conductor. */
export const fuse = ([x, y]: PaperPoint): readonly Mark[] => [
  box([x, y - 1.6], gap, 3.2),
  line([x, y], [x + gap, y]),
];

/** Something of which nobody knows what it is. */
export const unknownDevice = ([x, y]: PaperPoint, height: Millimetres): readonly Mark[] => [
  box([x, y - height / 2], gap, height, { ...device, dash: [1, 0.8] }),
  words([x + gap / 2, y + 1.25], "?", { anchor: "middle", weight: "semibold" }),
];

/** A residual current device on two or more level conductors: contacts in all, tripped by the ring that goes round all. */
export function residual([x, y]: PaperPoint, apart: Millimetres, conductors = 2): readonly Mark[] {
  const last = y + (conductors - 1) * apart;
  const ring = { x: x + gap + 4, top: y - 2.4, bottom: last + 2.4 };
  const middle = (ring.top + ring.bottom) / 2;
  const dashed = { ...thin, dash: [1, 0.8] } as const;
  return [
    ...Array.from({ length: conductors }, (_, i) => makeContact([x, y + i * apart])).flat(),
    // The link that trips both blades, from the ring.
    line([ring.x, ring.top], [ring.x, y - 5], dashed),
    line([ring.x, y - 5], [x + 3.8, y - 5], dashed),
    line([x + 3.8, y - 5], [x + 3.8, last - 1.7], dashed),
    {
      kind: "polyline",
      points: Array.from({ length: 33 }, (_, i): PaperPoint => {
        const angle = (i / 16) * Math.PI;
        return [ring.x + 1.5 * Math.cos(angle), middle + ((ring.bottom - ring.top) / 2) * Math.sin(angle)];
      }),
      pen: device,
    },
  ];
}

/** What makes the poles of a device switch together: from the blade of the first to that of the last. */
export const poleLink = ([x, y]: PaperPoint, to: Millimetres): Mark =>
  line([x + 3.8, y - 1.7], [x + 3.8, to - 1.7], { ...thin, dash: [1, 0.8] });

/** A contact that makes, on an upright conductor from `from` down to `to`; the sheet draws nothing between them. */
export const uprightContact = (x: Millimetres, from: Millimetres, to: Millimetres): readonly Mark[] => {
  const middle = (from + to) / 2;
  // In a field as low as a line of the legend the blade is shorter than on the drawing.
  const half = Math.min(gap / 2, (to - from) / 2 - 0.8);
  return [
    line([x, from], [x, middle - half]),
    line([x - half, middle - half + 0.4], [x, middle + half], { width: 0.5, colour: ink }),
    line([x, middle + half], [x, to]),
  ];
};

/** A push-button: a contact that makes while it is pressed, with its actuator. */
export const pushButton = (x: Millimetres, from: Millimetres, to: Millimetres): readonly Mark[] => {
  const middle = (from + to) / 2;
  return [
    ...uprightContact(x, from, to),
    line([x - 6, middle], [x - 1.6, middle], { ...thin, dash: [1, 0.8] }),
    line([x - 6, middle - 1.8], [x - 6, middle + 1.8]),
    line([x - 6, middle - 1.8], [x - 4.6, middle - 1.8]),
    line([x - 6, middle + 1.8], [x - 4.6, middle + 1.8]),
  ];
};

/** A switch that stays as one leaves it. */
export const latchingSwitch = (x: Millimetres, from: Millimetres, to: Millimetres): readonly Mark[] => {
  const middle = (from + to) / 2;
  return [
    ...uprightContact(x, from, to),
    line([x - 6, middle], [x - 1.6, middle], { ...thin, dash: [1, 0.8] }),
    line([x - 6, middle - 1.8], [x - 6, middle + 1.8]),
    line([x - 7.4, middle + 1.8], [x - 6, middle + 1.8]),
  ];
};

/** A luminaire: a lamp's crossed ring. */
export function luminaire([x, y]: PaperPoint, radius: Millimetres = 3): readonly Mark[] {
  const arm = radius * Math.SQRT1_2;
  return [
    { kind: "circle", at: [x, y], radius, fill: paper, pen: device },
    line([x - arm, y - arm], [x + arm, y + arm]),
    line([x - arm, y + arm], [x + arm, y - arm]),
  ];
}

/** A coil. */
export const coil = (x: Millimetres, from: Millimetres, to: Millimetres): readonly Mark[] => {
  const middle = (from + to) / 2;
  return [
    line([x, from], [x, middle - 2.5]),
    box([x - 4, middle - 2.5], 8, 5),
    line([x, middle + 2.5], [x, to]),
  ];
};

/** Main contact of a contactor: a contact with the half ring of one that carries load. */
export const mainContact = (x: Millimetres, from: Millimetres, to: Millimetres): readonly Mark[] => [
  ...uprightContact(x, from, to),
  {
    kind: "polyline",
    points: Array.from({ length: 9 }, (_, i): PaperPoint => {
      const angle = (i / 8) * Math.PI;
      const end = (from + to) / 2 - Math.min(gap / 2, (to - from) / 2 - 0.8);
      return [x + 1.1 * Math.sin(angle), end - 1.1 - 1.1 * Math.cos(angle)];
    }),
    pen: device,
  },
];
