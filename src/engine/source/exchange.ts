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
} as const satisfies Record<string, Source>;
