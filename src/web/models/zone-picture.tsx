import type { DetectorModel, ZoneKind, ZoneRow } from "#engine";
import { useUnits } from "../settings/preferences.ts";
import { lengthText } from "../texts/index.ts";
import { t } from "../texts/models.ts";

const order = ["sound", "across", "towards", "seated"] as const satisfies readonly ZoneKind[];

interface ZonePictureProps {
  readonly zones: DetectorModel["zones"];
  readonly height: number;
  /** Small pictures carry no scale bar. */
  readonly size: "small" | "large";
}

/** Zones of a data sheet from above, to scale, the notch to the right. */
export function ZonePicture({ zones, height, size }: ZonePictureProps) {
  const units = useUnits();
  const rows = order.flatMap((kind) => {
    const row = nearestRow(zones[kind], height);
    return row === undefined ? [] : [{ kind, row }];
  });
  const reach = Math.max(1, ...rows.map(({ row }) => longest(row)));
  const edge = reach * 1.12;
  const bar = barLength(reach, units === "metric" ? 1 : 3 * 0.3048);
  return (
    <svg
      className={`zone-picture zone-picture-${size}`}
      viewBox={`${-edge} ${-edge} ${2 * edge} ${2 * edge + (size === "large" ? edge * 0.28 : 0)}`}
      role="img"
      aria-label={t("models.picture", { height: lengthText(height, units) })}
    >
      {rows.map(({ kind, row }) => (
        <path key={kind} className={`zone-${kind}`} d={rowPath(row)} />
      ))}
      <circle className="zone-device" r={reach * 0.03} />
      <line className="zone-notch" x1={reach * 0.03} x2={reach * 0.07} y1={0} y2={0} />
      {size === "large" ? (
        <g className="zone-bar">
          <path d={`M${-bar / 2} ${edge * 1.06}v${edge * 0.04}H${bar / 2}v${-edge * 0.04}`} />
          <text x={0} y={edge * 1.24} fontSize={edge * 0.1}>
            {lengthText(bar, units)}
          </text>
        </g>
      ) : null}
    </svg>
  );
}

const nearestRow = (rows: readonly ZoneRow[] | undefined, height: number): ZoneRow | undefined =>
  rows?.toSorted((a, b) => Math.abs(a.height - height) - Math.abs(b.height - height))[0];

const longest = (row: ZoneRow): number =>
  "radius" in row ? row.radius : Math.max(0, ...row.outline.map(([, radius]) => radius));

function rowPath(row: ZoneRow): string {
  if ("radius" in row) {
    const { radius } = row;
    return `M${radius} 0A${radius} ${radius} 0 1 0 ${-radius} 0A${radius} ${radius} 0 1 0 ${radius} 0Z`;
  }
  const points = row.outline.map(
    ([angle, radius]) => `${Math.cos(angle) * radius} ${-Math.sin(angle) * radius}`,
  );
  return points.length === 0 ? "" : `M${points.join("L")}Z`;
}

/** A round number of metres or of three feet, about half the reach. */
function barLength(reach: number, unit: number): number {
  const steps = [1, 2, 5, 10, 20];
  return unit * (steps.findLast((step) => step * unit <= reach) ?? 1);
}
