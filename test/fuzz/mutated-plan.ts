import { seeded } from "../exchange/mutated.ts";
import { rawPdf, writtenPdf } from "../exchange/written-pdf.ts";
import { exif, segment, writtenJpeg, writtenPng } from "../exchange/written-picture.ts";

export type FuzzedKind = "pdf" | "svg" | "picture" | "scan";

/** Files that are mutated: small, and with something of everything that is read. */
export async function soundPlans(): Promise<Readonly<Record<FuzzedKind, readonly Uint8Array[]>>> {
  const drawn = (compress: boolean) =>
    writtenPdf(
      (pen) => {
        pen.rect(20, 20, 500, 300).stroke();
        pen.save().rotate(10).rect(40, 40, 300, 200).clip().moveTo(0, 0).lineTo(500, 300).stroke().restore();
        pen.path("M 200 200 A 90 90 0 0 1 290 290").lineWidth(2).stroke("#ff0000");
        pen.rect(100, 100, 4, 150).fill("#000000");
        pen.fontSize(12).text("Office 1.02", 100, 100).text("Scale 1:100", 400, 350);
        pen.addPage().moveTo(0, 0).lineTo(10, 10).stroke();
      },
      { compress },
    );
  const raw = rawPdf(
    "q 1 0 0 1 100 0 cm /F Do Q /OC /A BDC 0 5 m 10 5 l 20 9 30 9 40 5 c B EMC 10 20 30 40 re W n /F Do",
    {
      resources: "/XObject << /F 5 0 R >> /Properties << /A 6 0 R >>",
      objects: [
        "<< /Type /XObject /Subtype /Form /BBox [0 0 50 50] /Matrix [1 0 0 1 5 0] /Length 33 >>\nstream\nq 0 10 m 80 10 l S 0 0 m 0 9 l S \nendstream",
        "<< /Type /OCG /Name (Walls) >>",
      ],
      page: "/Rotate 90 /UserUnit 2",
    },
  );
  const svg = `<?xml version="1.0"?>
<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="420mm" height="297mm" viewBox="0 0 420 297">
<style>.wall { stroke: #f00; stroke-width: 2 } path { fill: none }</style>
<defs><clipPath id="c"><rect x="10" y="10" width="200" height="100"/></clipPath>
<symbol id="s" viewBox="0 0 10 10"><line x1="0" y1="0" x2="10" y2="10" stroke="blue"/></symbol>
<g id="door"><path d="M0 0h9M0 0v9A9 9 0 0 0 9 0" stroke="black"/></g></defs>
<g transform="translate(10 20) rotate(30 5 5) scale(1.5, -1.5)" clip-path="url(#c)"><rect class="wall" x="5" y="5" width="100" height="50" rx="3"/>
<circle cx="50" cy="50" r="20"/><ellipse cx="9" cy="9" rx="4" ry="2"/></g>
<polyline points="0,0 10,10 20-5" stroke="green" fill="none"/><polygon points="1 2 3 4 5 0"/>
<use xlink:href="#door" x="50" y="60"/><use href="#s" x="10" y="10" width="5" height="5"/>
<path d="m1 1c1 2 3 4 5 6s7 8 9 1q1 1 2 2t3 3a5 6 30 1 0 10 10z" style="stroke:rgb(1,2,3);stroke-width:.5mm"/>
<text x="10" y="20" font-size="5">Office <tspan x="10" dy="6">1.02</tspan></text><text y="290">M 1:50</text></svg>`;
  const remarks = segment(0xe1, [...new TextEncoder().encode("Exif\0\0"), ...exif(6)]);
  const scanned = (compress: boolean) =>
    writtenPdf(
      (pen) => {
        pen.image(Buffer.from(writtenPng(60, 40)), 0, 0, { width: 600, height: 200 });
        pen
          .save()
          .rotate(5)
          .image(Buffer.from(writtenPng(9, 7)), 50, 150, { width: 300, height: 200 })
          .restore();
      },
      { compress },
    );
  const stencil = "z".repeat(40);
  const inked = rawPdf(
    "q 0.5 0 0 rg 600 0 0 400 0 0 cm /I Do Q q 20 0 0 20 9 9 cm BI /W 2 /H 2 /CS /G /BPC 8 ID 1234 EI Q",
    {
      resources: "/XObject << /I 5 0 R >>",
      objects: [
        `<< /Type /XObject /Subtype /Image /Width 16 /Height 20 /ImageMask true /BitsPerComponent 1 /Length 40 >>\nstream\n${stencil}\nendstream`,
      ],
      page: "/Rotate 270",
    },
  );
  return {
    scan: [await scanned(false), inked, await scanned(true)],
    pdf: [await drawn(false), raw, await drawn(true)],
    svg: [new TextEncoder().encode(svg)],
    picture: [writtenPng(30, 20), writtenJpeg(300, 200, remarks)],
  };
}

/** A copy with one to four faults put into it, the same for the same seed. */
export function mutatedPlan(sound: Uint8Array, kind: FuzzedKind, seed: number): Uint8Array {
  const random = seeded(seed);
  // A picture is all length fields, so that a second fault seldom reaches anything.
  const count = kind === "picture" ? 1 : 1 + Math.floor(random() * 4);
  let bytes = sound;
  for (let i = 0; i < count; i++) {
    const all: readonly Fault[] = kind === "picture" ? byteFaults : [...byteFaults, ...textFaults];
    bytes = all[Math.floor(random() * all.length)]!(bytes, random);
  }
  return bytes;
}

type Fault = (bytes: Uint8Array, random: () => number) => Uint8Array;

const place = (length: number, random: () => number): number => Math.floor(random() * length);
const joined = (...parts: readonly Uint8Array[]): Uint8Array =>
  Uint8Array.from(parts.flatMap((part) => [...part]));

const byteFaults: readonly Fault[] = [
  (bytes, random) => {
    const copy = bytes.slice();
    if (copy.length > 0) copy[place(copy.length, random)] = place(256, random);
    return copy;
  },
  (bytes, random) => {
    const at = place(bytes.length, random);
    return joined(bytes.subarray(0, at), bytes.subarray(at + place(60, random)));
  },
  (bytes, random) => bytes.slice(0, place(bytes.length, random)),
  (bytes, random) => {
    const [at, from] = [place(bytes.length, random), place(bytes.length, random)];
    return joined(bytes.subarray(0, at), bytes.subarray(from, from + 80), bytes.subarray(at));
  },
];

const latin = new TextDecoder("latin1");
const values = [
  "0",
  "-1",
  "1e300",
  "1e-300",
  "999999999999",
  "-0.5",
  "NaN",
  "",
  "65536",
  "3.4e38",
  "()",
  "99 0 R",
];

/** One thing that is written, picked at random, written otherwise. */
const rewritten =
  (pattern: RegExp, put: (found: string, random: () => number) => string): Fault =>
  (bytes, random) => {
    const text = latin.decode(bytes);
    const found = [...text.matchAll(pattern)];
    if (found.length === 0) return bytes;
    const match = found[place(found.length, random)]!;
    const next =
      text.slice(0, match.index) + put(match[0], random) + text.slice(match.index + match[0].length);
    return Uint8Array.from(next, (letter) => letter.charCodeAt(0));
  };

const textFaults: readonly Fault[] = [
  rewritten(/-?\d+(\.\d+)?/g, (_, random) => values[place(values.length, random)]!),
  rewritten(/-?\d+(\.\d+)?/g, (found) => `${found}0000`),
  rewritten(
    /\b[A-Za-z]{1,12}\b/g,
    (_, random) => ["S", "W", "q", "Do", "cm", "use", "g", "svg", "Form", "x"][place(10, random)]!,
  ),
  rewritten(/<[^<>]*>/g, () => ""),
  rewritten(/<[^<>]*>/g, (found) => found + found),
  rewritten(
    /"[^"]*"/g,
    (_, random) =>
      ['""', '"#door"', '"url(#c)"', '"1e400"', '"matrix(0 0 0 0 0 0)"', '"M0 0z"'][place(6, random)]!,
  ),
  rewritten(/\n[^\n]*/g, () => ""),
  rewritten(/#\w+/g, (_, random) => ["#door", "#s", "#c", "#x"][place(4, random)]!),
];
