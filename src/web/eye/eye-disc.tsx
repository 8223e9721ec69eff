import { type PointerEvent, useMemo, useRef, useState } from "react";
import { type Detector, type LensMask, maskContains, type Room, radiansOf, type Site } from "#engine";
import type { DeviceZones } from "../contract.ts";
import { t } from "../texts/eye.ts";
import {
  type Direction,
  directionOf,
  type Eye,
  maskBetween,
  maskPath,
  offDisc,
  onDisc,
  place,
  roundedMask,
} from "./direction.ts";
import {
  circle,
  floorEdge,
  inView,
  obstacleFaces,
  openingFace,
  ringDirections,
  zoneEdges,
} from "./surroundings.ts";

interface EyeDiscProps {
  readonly site: Site;
  readonly detector: Detector;
  readonly room: Room;
  readonly zones: DeviceZones;
  readonly selected: number | undefined;
  readonly onSelect: (mask: number | undefined) => void;
  /** Undefined: nothing may be drawn. */
  readonly onDraw: ((mask: LensMask) => void) | undefined;
}

/** Shorter than this, a drag was a press. Share of the disc's radius. */
const shortestDrag = 0.04;

/** The disc itself: floor, walls, doors, obstacles, places, sources, zone edges, masks. */
export function EyeDisc({ site, detector, room, zones, selected, onSelect, onDraw }: EyeDiscProps) {
  const drawing = useRef<SVGSVGElement>(null);
  const [drag, setDrag] = useState<{ readonly start: Direction; readonly end: Direction } | undefined>();
  const { at, height, turn } = detector;
  const eye: Eye = useMemo(() => ({ at, height, turn }), [at, height, turn]);
  const directionAt = (event: PointerEvent): Direction | undefined => {
    const frame = drawing.current?.getScreenCTM();
    if (frame === null || frame === undefined) return undefined;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(frame.inverse());
    return offDisc(eye, [x, y]);
  };
  const drawn = drag === undefined ? undefined : roundedMask(maskBetween(drag.start, drag.end));
  const finish = () => {
    if (drag === undefined) return;
    const [x1, y1] = onDisc(eye, drag.start);
    const [x2, y2] = onDisc(eye, drag.end);
    if (Math.hypot(x2 - x1, y2 - y1) >= shortestDrag) {
      if (drawn !== undefined && drawn.from !== drawn.to && drawn.outer > drawn.inner) onDraw?.(drawn);
    } else {
      const hit = detector.masks.findLastIndex((mask) => maskContains(mask, drag.start));
      onSelect(hit < 0 ? undefined : hit);
    }
    setDrag(undefined);
  };
  return (
    <svg
      ref={drawing}
      className="eye-disc"
      viewBox="-1.12 -1.12 2.24 2.24"
      role="img"
      aria-label={t("eye.picture", { tag: detector.tag, count: detector.masks.length })}
      onPointerDown={(event) => {
        const direction = directionAt(event);
        if (direction === undefined || !event.isPrimary) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        setDrag({ start: direction, end: direction });
      }}
      onPointerMove={(event) => {
        const direction = drag && directionAt(event);
        if (direction !== undefined) setDrag((now) => now && { ...now, end: direction });
      }}
      onPointerUp={finish}
      onPointerCancel={() => setDrag(undefined)}
    >
      <defs>
        <pattern
          id="eye-mask"
          width="0.05"
          height="0.05"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <line className="eye-mask-line" x1="0" y1="0" x2="0" y2="0.05" />
        </pattern>
      </defs>
      <Surroundings site={site} room={room} eye={eye} />
      <Zones site={site} zones={zones} eye={eye} />
      <Scale eye={eye} />
      {detector.masks.map((mask, index) => (
        <path
          // biome-ignore lint/suspicious/noArrayIndexKey: a mask has no identity but its place in the list
          key={index}
          className={index === selected ? "eye-mask eye-mask-selected" : "eye-mask"}
          d={maskPath(eye, mask)}
        />
      ))}
      {drawn === undefined || onDraw === undefined ? null : (
        <path className="eye-mask eye-mask-selected" d={maskPath(eye, drawn)} />
      )}
    </svg>
  );
}

const pathThrough = (eye: Eye, directions: readonly Direction[]): string =>
  directions.length === 0
    ? ""
    : `M${directions.map((direction) => place(onDisc(eye, direction))).join("L")}Z`;

interface SurroundingsProps {
  readonly site: Site;
  readonly room: Room;
  readonly eye: Eye;
}

function Surroundings({ site, room, eye }: SurroundingsProps) {
  const paths = useMemo(() => {
    const own = <T extends { readonly room: string }>(records: readonly T[]) =>
      records.filter((record) => record.room === room.id);
    const through = (directions: readonly Direction[]) => pathThrough(eye, directions);
    const far = (footprint: Site["obstacles"][number]["footprint"]) =>
      Math.max(...footprint.map(([x, y]) => Math.hypot(x - eye.at[0], y - eye.at[1])));
    return {
      floor: through(floorEdge(eye, room)),
      openings: site.openings
        .filter(({ rooms }) => rooms.includes(room.id))
        .map((opening) => ({
          id: opening.id,
          kind: opening.kind,
          path: through(openingFace(eye, room, opening)),
        })),
      places: own(site.dwellPlaces)
        .filter((one) => inView(eye, room, one.at))
        .map(({ id, at, radius, kind }) => ({
          id,
          path: through(ringDirections(eye, circle(at, radius), site.defaults.sightHeights[kind])),
        })),
      obstacles: own(site.obstacles)
        .toSorted((a, b) => far(b.footprint) - far(a.footprint))
        .flatMap((obstacle) => obstacleFaces(eye, room, obstacle))
        .map(({ key, edge }) => ({ key, path: through(edge) })),
      sources: own(site.interference).map(({ id, kind, at, to, height }) => ({
        id,
        kind,
        at: onDisc(
          eye,
          directionOf(eye, to === undefined ? at : [(at[0] + to[0]) / 2, (at[1] + to[1]) / 2], height),
        ),
      })),
    };
  }, [site, room, eye]);
  return (
    <g>
      <circle className="eye-wall" r={1} />
      <path className="eye-floor" d={paths.floor} />
      {paths.openings.map(({ id, kind, path }) => (
        <path key={id} className={`eye-opening eye-${kind}`} d={path} />
      ))}
      {paths.places.map(({ id, path }) => (
        <path key={id} className="eye-place" d={path} />
      ))}
      {paths.obstacles.map(({ key, path }) => (
        <path key={key} className="eye-obstacle" d={path} />
      ))}
      {paths.sources.map(({ id, kind, at: [x, y] }) => (
        <g key={id} className="eye-source">
          <path d={`M${x} ${y - 0.045}l0.045 0.08h-0.09z`} />
          <text x={x} y={y + 0.1}>
            {t(`interference.${kind}`)}
          </text>
        </g>
      ))}
    </g>
  );
}

interface ZonesProps {
  readonly site: Site;
  readonly zones: DeviceZones;
  readonly eye: Eye;
}

/** Edges of what is seen, at the height at which it is seen. */
function Zones({ site, zones, eye }: ZonesProps) {
  const heights = { towards: site.defaults.sightHeights.walking, seated: site.defaults.sightHeights.desk };
  return (["towards", "seated"] as const).map((kind) => (
    <path
      key={kind}
      className={`eye-zone eye-zone-${kind}`}
      d={zoneEdges(eye, zones[kind] ?? [], heights[kind])
        .map((edge) => pathThrough(eye, edge))
        .join("")}
    />
  ));
}

/** Rings every 30° and the notch. */
function Scale({ eye }: { readonly eye: Eye }) {
  const [x, y] = onDisc(eye, { azimuth: 0, offNadir: radiansOf(90) });
  return (
    <g className="eye-scale">
      {[30, 60, 90].map((degrees) => (
        <circle key={degrees} r={degrees / 90} />
      ))}
      {[30, 60].map((degrees) => (
        <text key={degrees} x={0.015} y={degrees / 90 - 0.02}>
          {t("eye.degrees", { degrees })}
        </text>
      ))}
      <line className="eye-notch" x1={x} y1={y} x2={x * 1.07} y2={y * 1.07} />
    </g>
  );
}
