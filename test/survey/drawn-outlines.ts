import type { Point } from "#engine";

/**
 * Closed straight outlines among the entities of a DXF drawing in text form, read here without any of the project's own readers:
 * an outside measure for areas. Outlines within blocks and those with bulges are left out.
 */
export function drawnOutlines(text: string): readonly (readonly Point[])[] {
  const lines = text.split(/\r?\n/);
  const found: (readonly Point[])[] = [];
  let among = false;
  let light: Ring | undefined;
  let old: Ring | undefined;
  let kind = "";
  let x = 0;
  const keep = (ring: Ring | undefined): void => {
    if (ring?.closed && !ring.round && ring.points.length > 2) found.push(ring.points);
  };
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number(lines[i]);
    const value = lines[i + 1]!.trim();
    if (code === 0) {
      keep(light);
      light = undefined;
      if (value === "SEQEND") {
        keep(old);
        old = undefined;
      }
      if (value === "ENDSEC") among = false;
      kind = among ? value : "";
      if (kind === "LWPOLYLINE") light = { closed: false, round: false, points: [] };
      if (kind === "POLYLINE") old = { closed: false, round: false, points: [] };
      continue;
    }
    if (code === 2 && value === "ENTITIES") among = true;
    const ring = light ?? old;
    if (!ring) continue;
    if (code === 70 && kind !== "VERTEX") ring.closed = (Number(value) & 1) === 1;
    if (code === 42 && Number(value) !== 0) ring.round = true;
    if (code === 10) x = Number(value);
    if (code === 20 && kind !== "POLYLINE") ring.points.push([x, Number(value)]);
  }
  return found;
}

interface Ring {
  closed: boolean;
  round: boolean;
  readonly points: Point[];
}
