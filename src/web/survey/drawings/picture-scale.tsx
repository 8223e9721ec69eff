import { useState } from "react";
import { Button } from "react-aria-components";
import type { Metres, Point } from "#engine";
import { fourPointMap, twoPointMap } from "#exchange";
import { Choice, LengthField } from "../../fields/index.ts";
import { t } from "../../texts/index.ts";
import { remedyOf, sentenceOf } from "../../texts/problems.ts";
import type { SmallPicture } from "./picture-file.ts";
import { PlacesFrame } from "./places-frame.tsx";

interface PictureScaleProps {
  readonly picture: SmallPicture;
  readonly word: string;
  readonly onTake: (map: readonly number[]) => void;
  readonly onDrop: () => void;
}

type Kind = "straight" | "slanted";

/** Places that are set, in order, and how many. */
const needed = { straight: 2, slanted: 4 } as const satisfies Record<Kind, number>;

/** A picture is the answer to choosing a file: it comes into sight by itself. In braces: a browser may answer with a promise, which React would take for something to clean up. */
const intoView = (element: HTMLElement | null): void => {
  element?.scrollIntoView({ block: "start" });
};

/** Gives a picture its scale: two places with the length between them, or the four corners of a rectangle with its two sides. */
export function PictureScale({ picture, word, onTake, onDrop }: PictureScaleProps) {
  const [kind, setKind] = useState<Kind>("straight");
  const [places, setPlaces] = useState<readonly Point[]>([]);
  const [length, setLength] = useState<Metres | undefined>();
  const [width, setWidth] = useState<Metres | undefined>();
  const [trouble, setTrouble] = useState<string | undefined>();
  const take = (): void => {
    const answer =
      kind === "straight"
        ? twoPointMap(places as [Point, Point], { length: length ?? 0, height: picture.height })
        : fourPointMap(places as [Point, Point, Point, Point], rectangle(length ?? 0, width ?? 0));
    if ("map" in answer) onTake(answer.map);
    else setTrouble(`${sentenceOf(answer)} ${remedyOf(answer)}`);
  };
  const whole =
    places.length === needed[kind] && (length ?? 0) > 0 && (kind === "straight" || (width ?? 0) > 0);
  return (
    <div className="stack" ref={intoView}>
      <Choice
        label={t("drawings.picture.kind")}
        value={kind}
        options={[
          { value: "straight", word: t("drawings.picture.straight") },
          { value: "slanted", word: t("drawings.picture.slanted") },
        ]}
        onChange={(next) => {
          setKind(next);
          setPlaces(places.slice(0, needed[next]));
        }}
      />
      <p className="hint" role="status">
        {t(`drawings.picture.${kind}.how`, { set: places.length, count: needed[kind] })}
      </p>
      <PlacesFrame
        picture={{ ...picture, source: `data:${picture.type};base64,${picture.data}` }}
        places={places}
        needed={needed[kind]}
        onPlaces={(next) => {
          setPlaces(next);
          setTrouble(undefined);
        }}
      />
      <div className="fields">
        <LengthField
          label={t(kind === "straight" ? "drawings.picture.length" : "drawings.picture.first-side")}
          value={length}
          onChange={setLength}
        />
        {kind === "slanted" ? (
          <LengthField label={t("drawings.picture.second-side")} value={width} onChange={setWidth} />
        ) : null}
      </div>
      {trouble === undefined ? null : (
        <p className="field-trouble" role="alert">
          {trouble}
        </p>
      )}
      <div className="row">
        <Button className="button button-first" isDisabled={!whole} onPress={take}>
          {word}
        </Button>
        <Button className="button button-quiet" onPress={onDrop}>
          {t("home.report.drop")}
        </Button>
      </div>
    </div>
  );
}

/** The rectangle on the plan that the four places are the corners of: the first side along the sheet, from its lower left. */
const rectangle = (first: Metres, second: Metres): [Point, Point, Point, Point] => [
  [0, second],
  [first, second],
  [first, 0],
  [0, 0],
];
