import { day, type Said, type Supply, say } from "#engine";
import { ink, muted } from "../drawing/ink.ts";
import { fitted } from "../drawing/lettering.ts";
import type { Mark, Millimetres, PaperPoint } from "../drawing/mark.ts";
import type { SheetTitle } from "../drawing/title-block.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { cautionHeight } from "../wiring/caution-band.ts";
import { line, words } from "../wiring/symbols.ts";
import { uprightFrame, uprightFrameMarks, uprightSize } from "../wiring/table-sheets.ts";
import type { Speak } from "../words/speak.ts";
import { blockWidth, inset } from "./upright-pages.ts";

/** A name put to what was tested or handed over, drawn by hand. */
export interface SignatureLine {
  readonly name: string;
  readonly role: string;
  /** Day on which it was drawn. */
  readonly day: string;
  readonly for: "test" | "hand-over" | "quote";
  /** Points in shares of the field's width, y down. */
  readonly strokes: readonly (readonly (readonly [number, number])[])[];
}

const purposeWords: Readonly<Record<SignatureLine["for"], Said>> = {
  test: say`Tested`,
  "hand-over": say`Received`,
  quote: say`Quote accepted`,
};

/** Height of a field as a share of its width: that of the field on the screen. */
const fieldShape = 0.36;
const gap: Millimetres = 8;
const fieldWidth: Millimetres = (blockWidth - gap) / 2;
const fieldHeight: Millimetres = fieldShape * fieldWidth;
/** With the words under the field. */
const fieldPitch: Millimetres = fieldHeight + 20;
const perPage = 8;
/** Fields to be signed by hand where nobody has signed yet. */
const blank: readonly SignatureLine[] = (["test", "hand-over"] as const).map((purpose) => ({
  name: "",
  role: "",
  day: "",
  for: purpose,
  strokes: [],
}));

/** Who has signed what was tested and handed over; fields to fill in by hand for what nobody has signed. */
export function signaturePages(
  signatures: readonly SignatureLine[],
  of: {
    readonly title: Omit<SheetTitle, "page" | "pages">;
    readonly supply?: Supply | undefined;
  },
): readonly UnnumberedSheet[] {
  const { speak } = of.title;
  const own = signatures.filter((one) => one.for !== "quote");
  const fields = [...own, ...blank.filter((one) => !own.some((other) => other.for === one.for))];
  const top =
    uprightFrame.top +
    (of.supply ? cautionHeight(of.supply, { frame: uprightFrame, speak: of.title.speak }) : 0);
  return Array.from({ length: Math.ceil(fields.length / perPage) }, (_, page): UnnumberedSheet => {
    const here = fields.slice(page * perPage, (page + 1) * perPage);
    return (number, pages) => ({
      name: `signatures-${page + 1}`,
      title: `${of.title.job}: ${speak(say`Signatures`)}`,
      width: uprightSize[0],
      height: uprightSize[1],
      marks: [
        words([uprightFrame.left + inset, top + 8], speak(say`Signatures`), { size: 5, weight: "semibold" }),
        ...here.flatMap((one, i) =>
          fieldMarks(
            one,
            [
              uprightFrame.left + inset + (i % 2) * (fieldWidth + gap),
              top + 16 + Math.floor(i / 2) * fieldPitch,
            ],
            speak,
          ),
        ),
        ...uprightFrameMarks({ ...of.title, page: number, pages }, of.supply),
      ],
    });
  });
}

function fieldMarks(signature: SignatureLine, [left, top]: PaperPoint, speak: Speak): readonly Mark[] {
  const foot = top + fieldHeight;
  const within = (share: number, most: number): number => Math.min(Math.max(share, 0), most);
  return [
    ...signature.strokes
      .filter((stroke) => stroke.length > 0)
      .map((stroke): Mark => {
        const points = stroke.map(
          ([x, y]): PaperPoint => [
            left + within(x, 1) * fieldWidth,
            top + within(y, fieldShape) * fieldWidth,
          ],
        );
        // A dot of the pen is a stroke of one point: drawn as a short line.
        const [first] = points;
        return {
          kind: "polyline",
          points: points.length > 1 ? points : [first!, [first![0] + 0.3, first![1]]],
          pen: { width: 0.35, colour: ink },
        };
      }),
    line([left, foot], [left + fieldWidth, foot], { width: 0.25, colour: ink }),
    words(
      [left, foot + 4.5],
      [speak(purposeWords[signature.for]), speak(day(signature.day))].filter(Boolean).join(", "),
      {
        colour: muted,
      },
    ),
    words(
      [left, foot + 10],
      fitted(
        [signature.name, signature.role].filter(Boolean).join(", ") || speak(say`Name, role, date:`),
        fieldWidth,
        {
          size: signature.name === "" ? 2.5 : 3.5,
        },
      ),
      { size: signature.name === "" ? 2.5 : 3.5, ...(signature.name === "" ? { colour: muted } : {}) },
    ),
  ];
}
