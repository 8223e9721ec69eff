import {
  type Detector,
  type DetectorModel,
  day,
  degreesOf,
  dwellKindNames,
  figured,
  joined,
  lookUp,
  type MaskedFacet,
  type MaskLoss,
  maskedFacets,
  maskLoss,
  prepareRoom,
  roomTitle,
  type Said,
  type Site,
  say,
} from "#engine";
import { ink, muted } from "../drawing/ink.ts";
import { broken } from "../drawing/lettering.ts";
import type { Mark, Millimetres, PaperPoint, PaperRing, Pen } from "../drawing/mark.ts";
import { maskWords } from "../setting-out/device-rows.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { line, words } from "../wiring/symbols.ts";
import type { Speak } from "../words/speak.ts";
import { type LensFlower, lensFlower } from "./lens-flower.ts";

export interface MaskTemplatesInput {
  readonly site: Site;
  /** Ids of detectors; all with masks if absent. */
  readonly detectors?: readonly string[];
  readonly job: string;
  readonly date: string;
  readonly revision: string;
  /** What the sheets speak. */
  readonly speak: Speak;
}

/** An upright A4 sheet. */
export const templateSize: readonly [Millimetres, Millimetres] = [210, 297];
const left: Millimetres = 20;
const right: Millimetres = templateSize[0] - 10;
/** Length of each check bar, and what of it is accepted. [mm] */
export const checkBar = { length: 100, least: 99.5, most: 100.5 } as const;
/** Where the pole of the lens lies. */
const pole: PaperPoint = [118, 128];
/** A lens larger than this does not lie on the sheet. */
const widest: Millimetres = 78;

/** A sheet for each detector with masks: its lens unwrapped at its true size, what is masked, what that costs, and two bars to check the printer with. */
export function maskTemplates(input: MaskTemplatesInput): readonly UnnumberedSheet[] {
  const { site, speak } = input;
  return site.detectors
    .filter((one) => one.masks.length > 0 && (input.detectors?.includes(one.id) ?? true))
    .map((detector): UnnumberedSheet => {
      const marks = templateMarks(input, detector);
      return (page, pages) => ({
        name: `mask-template-${detector.tag || detector.id}`,
        title: `${input.job}: ${speak(say`Mask template ${detector.tag || detector.id}`)}`,
        width: templateSize[0],
        height: templateSize[1],
        scale: 1,
        marks: [
          ...marks,
          words([right, templateSize[1] - 8], speak(say`page ${page} of ${pages}`), {
            anchor: "end",
            colour: muted,
          }),
        ],
      });
    });
}

function templateMarks(input: MaskTemplatesInput, detector: Detector): readonly Mark[] {
  const { site, job, date, revision, speak } = input;
  const look = lookUp(site);
  const model = look.modelById.get(detector.model);
  const flower = lensFlower(model?.lens, detector.masks);
  const fits = flower !== undefined && flower.radius <= widest;
  const head = [
    job,
    roomTitle(look.roomById.get(detector.room)),
    revision && speak(say`revision ${revision}`),
    speak(day(date)),
  ]
    .filter(Boolean)
    .join(" · ");
  return [
    words([left, 20], speak(say`Mask template ${detector.tag || detector.id}`), {
      size: 5,
      weight: "semibold",
    }),
    words([left, 27], head, { colour: muted }),
    ...(fits
      ? [
          ...paragraph([left, 36], speak(instructions(model!)), right - left),
          ...flowerMarks(flower, speak),
          ...checkBars(),
        ]
      : paragraph([left, 36], speak(flower ? TOO_LARGE : NO_LENS), right - left)),
    ...maskTable(site, detector, { model, top: fits ? 240 : 52, speak }),
  ];
}

const NO_LENS = say`The size of this lens is not entered, so no template can be drawn. Enter the radius of its dome, or the distance of a flat lens from its element, in its data sheet. The masks as figures stand below.`;
const TOO_LARGE = say`This lens is larger than the sheet. The masks as figures stand below.`;

const instructions = ({ lens }: DetectorModel): Said =>
  joined(
    [
      say`Print at actual size, with no fit to the page, and measure both bars: ${checkBar.length} mm, ${checkBar.least} to ${checkBar.most} mm accepted.`,
      lens?.shape === "flat"
        ? say`Cut out the disc, lay it on the lens with the printed side towards you and the arrow at the notch, and cover what is black with film that no heat passes.`
        : say`Cut along the outline and into every slit, as far as the dashed circle, lay it on the lens with the printed side towards you and the arrow at the notch, and cover what is black with film that no heat passes.`,
    ],
    " ",
  );

function paragraph([x, y]: PaperPoint, text: string, width: Millimetres): readonly Mark[] {
  return broken(text, width, 2.5).map((row, i) => words([x, y + 4.8 * i], row));
}

const cut: Pen = { width: 0.25, colour: ink };

function flowerMarks(flower: LensFlower, speak: Speak): readonly Mark[] {
  const moved = (ring: PaperRing): PaperRing => ring.map(([x, y]): PaperPoint => [x + pole[0], y + pole[1]]);
  const tip = pole[1] - flower.radius;
  return [
    // The thin edge closes the seams between pieces; it adds 0.09 mm, less than a mask sits true.
    ...flower.masked.map(
      (ring): Mark => ({
        kind: "area",
        rings: [moved(ring)],
        fills: [{ kind: "solid", colour: ink }],
        pen: { width: 0.18, colour: ink },
      }),
    ),
    ...flower.petals.map((ring): Mark => ({ kind: "area", rings: [moved(ring)], fills: [], pen: cut })),
    { kind: "circle", at: pole, radius: 0.4, fill: ink },
    ...(flower.hub === undefined
      ? []
      : [{ kind: "circle", at: pole, radius: flower.hub, pen: { ...cut, dash: [0.8, 0.8] } } as const]),
    {
      kind: "area",
      rings: [
        [
          [pole[0], tip - 1.5],
          [pole[0] - 2, tip - 6.5],
          [pole[0] + 2, tip - 6.5],
        ],
      ],
      fills: [{ kind: "solid", colour: ink }],
    },
    words([pole[0] + 4, tip - 4], speak(say`notch`)),
    words([pole[0], pole[1] + flower.radius + 8], speak(say`seen from below, 1 : 1`), {
      anchor: "middle",
      colour: muted,
    }),
  ];
}

/** A bar along each edge of the sheet: a printer may scale the two axes differently. */
function checkBars(): readonly Mark[] {
  const [x, y] = [left + 2, 224];
  const pen: Pen = { width: 0.35, colour: ink };
  const top = y - checkBar.length;
  return [
    line([x, y], [x + checkBar.length, y], pen),
    line([x, y - 2], [x, y + 2], pen),
    line([x + checkBar.length, y - 2], [x + checkBar.length, y + 2], pen),
    words([x + checkBar.length / 2, y + 5], `${checkBar.length} mm`, { anchor: "middle" }),
    line([x, y], [x, top], pen),
    line([x - 2, y], [x + 2, y], pen),
    line([x - 2, top], [x + 2, top], pen),
    words([x - 2.5, y - checkBar.length / 2], `${checkBar.length} mm`, { anchor: "middle", turn: 90 }),
  ];
}

function maskTable(
  site: Site,
  detector: Detector,
  {
    model,
    top,
    speak,
  }: { readonly model: DetectorModel | undefined; readonly top: Millimetres; readonly speak: Speak },
): readonly Mark[] {
  const facets = model?.lens ? maskedFacets(model.lens, detector.masks) : [];
  const rows = [
    say`Masks, from the notch counter-clockwise seen from above × off straight down: ${joined(detector.masks.map(maskWords), "; ")}.`,
    ...(facets.length > 0
      ? [
          say`Facet by facet, counted like the masks from the one across the notch (verify): ${facetRows(facets)}.`,
        ]
      : []),
    lossWords(site, lossOf(site, detector)),
  ];
  let y = top;
  return rows.flatMap((row) => {
    const marks = paragraph([left, y], speak(row), right - left);
    y += 4.8 * marks.length + 1.5;
    return marks;
  });
}

const lossOf = (site: Site, detector: Detector): MaskLoss | undefined =>
  site.rooms.some(({ id }) => id === detector.room)
    ? maskLoss(prepareRoom(site, detector.room), {
        detectors: site.detectors,
        device: detector.id,
        masks: detector.masks,
      })
    : undefined;

function lossWords(site: Site, loss: MaskLoss | undefined): Said {
  if (!loss) return say`The detector stands in no room: what its masks cost is not known.`;
  const { walk, hold, places, from } = loss;
  const kinds = site.dwellPlaces
    .filter(({ id }) => places.includes(id))
    .map(({ kind }) => dwellKindNames[kind]);
  const floor = figured(`${walk.toFixed(2)} m²`);
  const held = figured(`${hold.toFixed(2)} m²`);
  const ofPlaces =
    kinds.length > 0 ? say`${held} of places (${joined(kinds, ", ")})` : say`${held} of places`;
  const lost =
    walk < 0.005 && hold < 0.005
      ? say`The masks take nothing from what the room asks to be seen.`
      : hold < 0.005
        ? say`The masks also take ${floor} of floor that nothing else sees.`
        : walk < 0.005
          ? say`The masks also take ${ofPlaces} that nothing else sees.`
          : say`The masks also take ${floor} of floor and ${ofPlaces} that nothing else sees.`;
  return from === undefined
    ? lost
    : joined(
        [lost, say`Within them one who walks is out of its sight from ${figured(`${from.toFixed(2)} m`)}.`],
        " ",
      );
}

/** Facets by ring: neighbours as a range. */
function facetRows(facets: readonly MaskedFacet[]): Said {
  const rings = [...new Set(facets.map(({ ring }) => ring))];
  return joined(
    rings.map((ring) => {
      const own = facets.filter((one) => one.ring === ring);
      return say`ring ${ring} (${Math.round(degreesOf(own[0]!.offNadir))}°): ${ranges(own.map(({ facet }) => facet))}`;
    }),
    "; ",
  );
}

function ranges(numbers: readonly number[]): string {
  const found: [number, number][] = [];
  for (const number of numbers) {
    const last = found.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else found.push([number, number]);
  }
  return found.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(", ");
}
