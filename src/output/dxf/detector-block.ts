import { type DxfWriter, point3d } from "@tarikjabiri/dxf";
import { type Detector, degreesOf, type Site, wholeTurn } from "#engine";
import { settled } from "./drawing-pen.ts";

/** Radii of the ring and of the second one of a detector that hears, reach of the notch, height of the tag. [m] */
const ring = { radius: 0.15, hears: 0.19, notch: 0.22, tag: 0.15 } as const;

/**
 * A block for each model in use: the ring about the lens, twice where it hears, with the notch along x.
 *
 * @returns Names of the blocks by the id of the model.
 */
export function detectorBlocks(
  drawing: DxfWriter,
  site: Site,
  detectors: readonly Detector[],
): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const { model } of detectors) {
    if (names.has(model)) continue;
    // Names of blocks may hold letters, figures and a few signs only.
    const plain = `DETECTOR ${model.replace(/[^\w-]+/g, "-")}`;
    const taken = new Set(names.values());
    const name = taken.has(plain) ? `${plain}-${names.size + 1}` : plain;
    const block = drawing.document.addBlock(name);
    const options = { layerName: "DETECTORS" };
    block.addCircle(point3d(0, 0), ring.radius, options);
    const zones = site.models.find(({ id }) => id === model)?.zones;
    if (zones?.sound) block.addCircle(point3d(0, 0), ring.hears, options);
    block.addLine(point3d(ring.radius, 0), point3d(ring.notch, 0), options);
    names.set(model, name);
  }
  return names;
}

/** Puts a detector in at its lens, turned as its notch, with its tag beside it. */
export function detectorOn(
  drawing: DxfWriter,
  { at, turn, tag, model }: Detector,
  blocks: ReadonlyMap<string, string>,
): void {
  const insert = drawing.addInsert(blocks.get(model)!, point3d(settled(at[0]), settled(at[1])), {
    layerName: "DETECTORS",
    rotationAngle: settled(degreesOf(wholeTurn(turn))),
  });
  const beside = point3d(settled(at[0] + 2.5 * ring.radius), settled(at[1] - ring.radius));
  drawing.addAttrib(beside, ring.tag, "TAG", tag, insert, { layerName: "DETECTOR TAGS" });
}
