import type { StepFile } from "./step-file.ts";

/** Relations that no shape hangs on, and what they alone hold: it is read here and of no use to the geometry kernel. */
const factRelation = /^IFCREL(DEFINESBYPROPERTIES|SPACEBOUNDARY\w*)$/;
const facts = /^IFC(PROPERTYSET|ELEMENTQUANTITY|CONNECTION\w*GEOMETRY)$/;

/** Less than this share of a file is not worth a copy of the rest. */
const worthLeavingOut = 0.1;

/**
 * The file as the geometry kernel needs it: without property sets, quantities and the boundaries of rooms, and without the
 * records that only they refer to. These are often half of a file, and the kernel takes as long over them as over shapes.
 *
 * @param file - A checked file without loops.
 * @returns The same bytes, less those records; all of them where it is hardly any.
 */
export function withoutFacts(file: StepFile): Uint8Array {
  const { bytes, starts, ids } = file;
  const kept = shapely(file);
  if (kept === undefined) return bytes;
  // What stands behind the last record ends the file.
  kept[ids.length - 1] = 1;
  let left = starts[0]!;
  for (let i = 0; i < ids.length; i++)
    if (kept[i] === 1) left += (starts[i + 1] ?? bytes.length) - starts[i]!;
  if (left > bytes.length * (1 - worthLeavingOut)) return bytes;
  const rest = new Uint8Array(left);
  rest.set(bytes.subarray(0, starts[0]));
  let at = starts[0]!;
  for (let i = 0; i < ids.length; ) {
    if (kept[i] === 0) {
      i++;
      continue;
    }
    const from = starts[i]!;
    while (i < ids.length && kept[i] === 1) i++;
    const run = bytes.subarray(from, starts[i] ?? bytes.length);
    rest.set(run, at);
    at += run.length;
  }
  return rest;
}

/** 1 for each record that is left when relations of facts and what they alone hold are gone; undefined: there are none. */
function shapely({
  ids,
  types,
  typeOf,
  references,
  firstReference,
  indexOf,
}: StepFile): Uint8Array | undefined {
  const sortOfType = types.map((type) =>
    factRelation.test(type) ? relation : facts.test(type) ? fact : other,
  );
  if (!sortOfType.includes(relation)) return undefined;
  const held = new Uint8Array(ids.length);
  for (let i = 0; i < references.length; i++) {
    const target = indexOf.get(references[i]!);
    if (target !== undefined) held[target] = 1;
  }
  const kept = new Uint8Array(ids.length);
  const open: number[] = [];
  const keep = (index: number): void => {
    if (kept[index] === 1) return;
    kept[index] = 1;
    open.push(index);
  };
  for (let i = 0; i < ids.length; i++) {
    const sort = sortOfType[typeOf[i]!];
    if (sort === relation) {
      // The things that it is about stay, whoever else refers to them.
      for (let r = firstReference[i]!; r < firstReference[i + 1]!; r++) {
        const target = indexOf.get(references[r]!);
        if (target !== undefined && sortOfType[typeOf[target]!] === other) keep(target);
      }
    } else if (held[i] === 0 && sort === other) keep(i);
  }
  for (let index = open.pop(); index !== undefined; index = open.pop())
    for (let r = firstReference[index]!; r < firstReference[index + 1]!; r++) {
      const target = indexOf.get(references[r]!);
      if (target !== undefined) keep(target);
    }
  return kept;
}

const [other, relation, fact] = [0, 1, 2];
