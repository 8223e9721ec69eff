import type { Source } from "./entry.ts";

/** Standards that foreign files are written after. */
export const exchangeSources = {
  "ISO-16739": {
    kind: "standard",
    title:
      "Industry Foundation Classes (IFC) for data sharing in the construction and facility management industries",
    certainty: "from-memory",
    verify: true,
    note: "Attribute order of the entities as in the schemas IFC2x3 and IFC4; held by tests on files of several writers",
  },
  "ISO-10303-21": {
    kind: "standard",
    title: "Product data representation and exchange: clear text encoding of the exchange structure",
    certainty: "from-memory",
    verify: true,
    note: "Framing, literals and the escapes of texts",
  },
  "PKWARE-APPNOTE": {
    kind: "standard",
    title: "ZIP file format specification",
    certainty: "from-memory",
    verify: true,
    note: "Layout of the central directory and of the local headers",
  },
  "ISO-18004": {
    kind: "standard",
    title: "ISO/IEC 18004, QR code bar code symbology",
    certainty: "from-memory",
    verify: true,
    note: "Versions 1 to 10 at level M; held by a reader of its own in the tests, and looked at once with another one",
  },
  "ISO-32000": {
    kind: "standard",
    title: "Document management: portable document format (PDF)",
    certainty: "from-memory",
    verify: true,
    note: "Graphics state, paths, clips, forms, optional content, page entries; held by tests on files written for them",
  },
  "W3C-SVG2": {
    kind: "standard",
    title: "Scalable Vector Graphics (SVG) 2",
    certainty: "from-memory",
    verify: true,
    note: "Structure, styling, coordinate systems, shapes and texts, as far as a plan needs them",
  },
  "ISO-15948": {
    kind: "standard",
    title: "Portable Network Graphics (PNG): functional specification",
    certainty: "from-memory",
    verify: true,
    note: "Order and names of chunks",
  },
  "ITU-T81": {
    kind: "standard",
    title: "Digital compression and coding of continuous-tone still images (JPEG)",
    certainty: "from-memory",
    verify: true,
    note: "Segments and marks",
  },
  "EXIF-2-32": {
    kind: "standard",
    title: "Exchangeable image file format for digital still cameras (EXIF) 2.32",
    certainty: "from-memory",
    verify: true,
    note: "Layout of the directory and the tag Orientation",
  },
  "ISO-216": {
    kind: "standard",
    title: "Writing paper and certain classes of printed matter: trimmed sizes, A and B series",
    certainty: "from-memory",
    verify: true,
    note: "Longer edges of A0 to A4",
  },
  "HARTLEY-ZISSERMAN": {
    kind: "handbook",
    title: "Hartley, Zisserman: Multiple View Geometry in Computer Vision, second edition",
    certainty: "from-memory",
    verify: true,
    note: "Direct linear transformation with normalised coordinates; held by identities: the four places map exactly",
  },
} as const satisfies Record<string, Source>;
