import { useRef, useState } from "react";
import { Button } from "react-aria-components";
import type { Point } from "#engine";
import { Choice } from "../../fields/index.ts";
import { t } from "../../texts/index.ts";
import "./picture-scale.css";

interface PlacesFrameProps {
  readonly picture: {
    readonly source: string;
    readonly name: string;
    readonly width: number;
    readonly height: number;
  };
  /** Places that are set, in order. [px of the picture] */
  readonly places: readonly Point[];
  readonly needed: 2 | 4;
  readonly onPlaces: (places: readonly Point[]) => void;
}

const zooms = ["1", "2", "4"] as const;
/** A press as near as this to a place takes hold of it. [px of the screen] */
const hold = 22;
/** Where a place moves by one press of an arrow key. [px of the screen] */
const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** An arrow key with Shift goes so many steps at once. */
const stride = 10;

/** A picture on which places are set: by a press, drawn afterwards, or with the keyboard from the middle of what is seen. */
export function PlacesFrame({ picture, places, needed, onPlaces }: PlacesFrameProps) {
  const [zoom, setZoom] = useState<(typeof zooms)[number]>("1");
  const held = useRef<{ readonly index: number; readonly fresh: "fresh" | "known" } | undefined>(undefined);
  const frame = useRef<HTMLDivElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const boxOf = (element: HTMLElement | null): DOMRect =>
    element?.getBoundingClientRect() ?? new DOMRect(0, 0, 1, 1);
  const inside = ([x, y]: Point): Point => [
    Math.min(picture.width, Math.max(0, x)),
    Math.min(picture.height, Math.max(0, y)),
  ];
  const placeAt = (x: number, y: number): Point => {
    const box = boxOf(sheet.current);
    return inside([
      ((x - box.left) / box.width) * picture.width,
      ((y - box.top) / box.height) * picture.height,
    ]);
  };
  const moveTo = (index: number, at: Point): void =>
    onPlaces(places.map((place, i) => (i === index ? inside(at) : place)));
  const pressed = (event: React.PointerEvent): void => {
    const at = placeAt(event.clientX, event.clientY);
    const reach = (hold / boxOf(sheet.current).width) * picture.width;
    const near = places.findIndex((place) => Math.hypot(place[0] - at[0], place[1] - at[1]) < reach);
    if (near < 0 && places.length >= needed) return;
    held.current = near < 0 ? { index: places.length, fresh: "fresh" } : { index: near, fresh: "known" };
    sheet.current?.setPointerCapture(event.pointerId);
    if (near < 0) onPlaces([...places, at]);
  };
  const moved = (event: React.PointerEvent): void => {
    if (held.current) moveTo(held.current.index, placeAt(event.clientX, event.clientY));
  };
  const keyed = (event: React.KeyboardEvent, index: number): void => {
    const step = arrows[event.key];
    const place = places[index];
    if (!step || !place) return;
    event.preventDefault();
    const pixels = ((event.shiftKey ? stride : 1) * picture.width) / boxOf(sheet.current).width;
    moveTo(index, [place[0] + step[0] * pixels, place[1] + step[1] * pixels]);
  };
  const setInTheMiddle = (): void => {
    const [seen, whole] = [boxOf(frame.current), boxOf(sheet.current)];
    const bottom = Math.min(seen.bottom, whole.bottom);
    // Beside the place before, not on it.
    const aside = places.length * 2 * hold;
    onPlaces([...places, placeAt(seen.left + seen.width / 2 + aside, (seen.top + bottom) / 2)]);
  };
  return (
    <>
      <div ref={frame} className="picture-frame">
        <div
          ref={sheet}
          className="picture-sheet"
          style={{
            inlineSize: `${100 * Number(zoom)}%`,
            aspectRatio: `${picture.width} / ${picture.height}`,
          }}
          onPointerDown={pressed}
          onPointerMove={moved}
          onPointerUp={() => {
            held.current = undefined;
          }}
          onPointerCancel={() => {
            // The finger went on to scroll: it did not mean to set a place.
            const { index, fresh } = held.current ?? { index: -1, fresh: "known" };
            if (fresh === "fresh") onPlaces(places.filter((_, i) => i !== index));
            held.current = undefined;
          }}
        >
          <img src={picture.source} alt={picture.name} draggable={false} />
          <svg viewBox={`0 0 ${picture.width} ${picture.height}`} aria-hidden="true">
            <polyline
              points={[...places, ...(places.length === 4 ? [places[0] as Point] : [])]
                .map(([x, y]) => `${x},${y}`)
                .join(" ")}
              vectorEffect="non-scaling-stroke"
            />
          </svg>
          {places.map(([x, y], index) => (
            <button
              // Places are told apart by their order.
              // biome-ignore lint/suspicious/noArrayIndexKey: the order is what they are
              key={index}
              type="button"
              className="picture-place"
              aria-label={t("drawings.picture.place", { number: index + 1 })}
              style={{
                insetInlineStart: `${(x / picture.width) * 100}%`,
                insetBlockStart: `${(y / picture.height) * 100}%`,
              }}
              onKeyDown={(event) => keyed(event, index)}
            >
              {index + 1}
            </button>
          ))}
        </div>
      </div>
      <Choice
        label={t("drawings.picture.larger")}
        value={zoom}
        options={zooms.map((value) => ({
          value,
          word: t("drawings.picture.zoom", { times: Number(value) }),
        }))}
        onChange={setZoom}
      />
      <div className="row">
        <Button className="button" isDisabled={places.length >= needed} onPress={setInTheMiddle}>
          {t("drawings.picture.set", { number: Math.min(needed, places.length + 1) })}
        </Button>
        <Button className="button" isDisabled={places.length === 0} onPress={() => onPlaces([])}>
          {t("drawings.picture.again")}
        </Button>
      </div>
    </>
  );
}
