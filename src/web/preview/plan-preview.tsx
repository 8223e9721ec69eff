import type { Detector, Gap, Outline, Point, Region, Site } from "#engine";
import type { DeviceZones } from "../contract.ts";
import "./preview.css";

interface PlanPreviewProps {
  readonly site: Site;
  readonly room: string;
  readonly devices: readonly Detector[];
  readonly zones?: ReadonlyMap<string, DeviceZones>;
  readonly gaps?: readonly Gap[];
  /** Said in words for those who do not see the drawing. */
  readonly label: string;
}

/** A small still picture of one room with its detectors; the plan itself is drawn elsewhere. */
export function PlanPreview({ site, room, devices, zones, gaps, label }: PlanPreviewProps) {
  const shown = site.rooms.find(({ id }) => id === room);
  if (shown === undefined) return null;
  const frame = frameOf(shown.outline);
  const mark = frame.size * 0.022;
  const own = <T extends { readonly room: string }>(records: readonly T[]) =>
    records.filter((record) => record.room === room);
  return (
    <svg className="preview" viewBox={frame.viewBox} role="img" aria-label={label}>
      <path className="preview-floor" d={pathOf([{ outline: shown.outline, holes: shown.holes }])} />
      {own(site.obstacles).map(({ id, footprint, top }) => (
        <path
          key={id}
          className={top > 1.8 ? "preview-obstacle preview-obstacle-high" : "preview-obstacle"}
          d={pathOf([{ outline: footprint, holes: [] }])}
        />
      ))}
      {devices.map(({ id }) => (
        <g key={id}>
          <path className="preview-towards" d={pathOf(zones?.get(id)?.towards ?? [])} />
          <path className="preview-seated" d={pathOf(zones?.get(id)?.seated ?? [])} />
        </g>
      ))}
      {own(site.dwellPlaces).map(({ id, at, radius }) => (
        <circle key={id} className="preview-dwell" cx={at[0]} cy={-at[1]} r={radius} />
      ))}
      {(gaps ?? []).map(({ region, at }) => (
        <path key={`${at[0]} ${at[1]}`} className="preview-gap" d={pathOf(region)} />
      ))}
      <path className="preview-wall" d={pathOf([{ outline: shown.outline, holes: shown.holes }])} />
      {site.openings
        .filter(({ rooms }) => rooms.includes(room))
        .map(({ id, from, to, kind }) => (
          <g key={id}>
            <line className="preview-opening" x1={from[0]} y1={-from[1]} x2={to[0]} y2={-to[1]} />
            {kind === "door" ? <path className="preview-leaf" d={leafOf(from, to)} /> : null}
          </g>
        ))}
      {devices.map(({ id, at, turn }) => (
        <DeviceMark key={id} at={at} turn={turn} radius={mark} />
      ))}
    </svg>
  );
}

/** A ring with the letter B and a notch that shows the turn. */
function DeviceMark({
  at,
  turn,
  radius,
}: {
  readonly at: Point;
  readonly turn: number;
  readonly radius: number;
}) {
  const notch = [at[0] + Math.cos(turn) * radius * 1.45, at[1] + Math.sin(turn) * radius * 1.45] as const;
  const edge = [at[0] + Math.cos(turn) * radius, at[1] + Math.sin(turn) * radius] as const;
  return (
    <g className="preview-device">
      <line x1={edge[0]} y1={-edge[1]} x2={notch[0]} y2={-notch[1]} />
      <circle cx={at[0]} cy={-at[1]} r={radius} />
      <text x={at[0]} y={-at[1]} fontSize={radius * 1.3} dy="0.36em">
        B
      </text>
    </g>
  );
}

/** SVG path of a region; y points down on the screen. */
export const pathOf = (region: Region): string =>
  region.flatMap(({ outline, holes }) => [outline, ...holes].map(ringPath)).join("");

const ringPath = (ring: Outline): string =>
  ring.length === 0 ? "" : `M${ring.map(([x, y]) => `${x.toFixed(3)} ${(-y).toFixed(3)}`).join("L")}Z`;

/** Half a door's swing, so that a door reads as a door. */
function leafOf([ax, ay]: Point, [bx, by]: Point): string {
  const tip = [ax + (by - ay), ay - (bx - ax)] as const;
  const width = Math.hypot(bx - ax, by - ay);
  return `M${ax} ${-ay}L${tip[0]} ${-tip[1]}A${width} ${width} 0 0 0 ${bx} ${-by}`;
}

function frameOf(outline: Outline): { readonly viewBox: string; readonly size: number } {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => -y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const size = Math.max(right - left, bottom - top);
  const edge = Math.max(0.08 * size, 1.05);
  return {
    viewBox: `${left - edge} ${top - edge} ${right - left + 2 * edge} ${bottom - top + 2 * edge}`,
    size: size + 2 * edge,
  };
}
