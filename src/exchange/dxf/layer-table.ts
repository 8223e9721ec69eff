import { colourOf, trueColour } from "./colours.ts";
import type { DxfRecord, RecordReader } from "./record.ts";
import { lineText } from "./text-codes.ts";

/** A layer as the table of layers describes it. */
export interface DxfLayer {
  readonly name: string;
  readonly off: boolean;
  readonly frozen: boolean;
  readonly colour?: string;
}

/** Layers of the section of tables, from where the reader stands; names are compared without regard to capitals. */
export function layerTable(reader: RecordReader): ReadonlyMap<string, DxfLayer> {
  const layers = new Map<string, DxfLayer>();
  for (let record = reader.next(); record && record.type !== "ENDSEC"; record = reader.next()) {
    if (record.type !== "LAYER") continue;
    const layer = layerOf(record);
    if (layer.name !== "" && !layers.has(layer.name.toUpperCase()))
      layers.set(layer.name.toUpperCase(), layer);
  }
  return layers;
}

const layerOf = (record: DxfRecord): DxfLayer => {
  let name = "";
  let flags = 0;
  let index = 7;
  let rgb: number | undefined;
  for (let i = 0; i < record.count; i++) {
    const code = record.code(i);
    if (code === 2 && name === "") name = lineText(record.text(i));
    else if (code === 70) flags = record.number(i);
    else if (code === 62) index = record.number(i);
    else if (code === 420) rgb = record.number(i);
  }
  // A colour below 0 marks a layer that is off.
  const colour = rgb !== undefined && Number.isFinite(rgb) ? trueColour(rgb) : colourOf(Math.abs(index));
  return { name, off: index < 0, frozen: (flags & 1) === 1, ...(colour ? { colour } : {}) };
};
