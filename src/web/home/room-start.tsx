import { useMemo, useState } from "react";
import { Button } from "react-aria-components";
import type { Calculations, HomeShelf } from "../contract.ts";
import { Choice, LengthField, More, Pick, TextBox } from "../fields/index.ts";
import { t } from "../texts/index.ts";
import { RoomAnswerView } from "./room-answer.tsx";
import { type RoomShape, type RoomSizes, type StartUse, siteBySizes, usualLeg } from "./room-by-sizes.ts";
import { atOnce, useRoomAnswer, withPatience } from "./use-room-answer.ts";

const shapes: readonly RoomShape[] = ["rectangle", "l", "corridor"];
const uses: readonly StartUse[] = ["passing", "sitting", "sanitary", "changing", "moving", "plant", "other"];
const outlines: Readonly<Record<RoomShape, string>> = {
  rectangle: "M3 3h16v12H3z",
  l: "M3 3h6v6h10v6H3z",
  corridor: "M1 6h20v6H1z",
};

/** Least and longest side that is typed here; larger halls come from a model or are drawn. */
const least = 1;
const most = 60;

interface RoomStartProps {
  readonly calculations: Calculations;
  readonly shelf: HomeShelf;
  readonly onOpen: (jobId: string) => void;
  readonly onTrouble: (trouble: unknown) => void;
  /** Something else waits to be opened: one answer at a time. */
  readonly aside: boolean;
}

/** Type one room's size and use, and get the detectors, their places and the reason. */
export function RoomStart({ calculations, shelf, onOpen, onTrouble, aside }: RoomStartProps) {
  const [shape, setShape] = useState<RoomShape>("rectangle");
  const [length, setLength] = useState(7.2);
  const [width, setWidth] = useState(4.8);
  const [legChosen, setLeg] = useState<number | undefined>();
  const [height, setHeight] = useState(2.7);
  const [use, setUse] = useState<StartUse>("sitting");
  const [name, setName] = useState("");
  const models = useMemo(() => shelf.startModels(), [shelf]);
  const shorter = Math.min(length, width);
  const leg = Math.min(legChosen ?? usualLeg(length, width), shorter - 0.5);
  const wideEnough = shape !== "l" || shorter >= 1.7;
  const roomName = name === "" ? t(`use.${use}`) : name;
  const site = useMemo(() => {
    const sizes: RoomSizes = { shape, length, width, leg, height, use };
    return wideEnough
      ? siteBySizes(sizes, { models, name: roomName, storey: t("home.room.storey") })
      : undefined;
  }, [shape, length, width, leg, height, use, models, roomName, wideEnough]);
  // More time is asked for one room as it is now, and no longer holds once it changes.
  const [patientFor, setPatientFor] = useState<typeof site>();
  const patient = site !== undefined && patientFor === site;
  const answer = useRoomAnswer(site, calculations, patient ? withPatience : atOnce);
  const changeShape = (next: RoomShape) => {
    setShape(next);
    if (next === "corridor") {
      setLength(18);
      setWidth(1.8);
      setUse("passing");
    } else if (shape === "corridor") {
      setLength(7.2);
      setWidth(4.8);
      setUse("sitting");
    }
  };
  const openAsJob = () => {
    if (answer?.state !== "placed") return;
    const devices = answer.result.best?.devices ?? [];
    shelf.create({ ...answer.site, detectors: devices }).then(onOpen, onTrouble);
  };
  return (
    <section className="home-room" aria-labelledby="home-room-head">
      <div className="home-room-ask stack">
        <h2 id="home-room-head" className="home-head">
          {t("home.room.title")}
        </h2>
        <Choice
          label={t("home.room.shape")}
          value={shape}
          onChange={changeShape}
          options={shapes.map((value) => ({
            value,
            word: t(`home.room.shape.${value}`),
            sign: (
              <svg viewBox="0 0 22 18" aria-hidden="true">
                <path d={outlines[value]} />
              </svg>
            ),
          }))}
        />
        <div className="fields">
          <LengthField
            label={t("home.room.length")}
            value={length}
            onChange={setLength}
            least={least}
            most={most}
            when="typing"
          />
          <LengthField
            label={t("home.room.width")}
            value={width}
            onChange={setWidth}
            least={least}
            most={most}
            when="typing"
          />
          <Pick
            label={t("home.room.use")}
            value={use}
            onChange={setUse}
            options={uses.map((value) => ({ value, word: t(`use.${value}`) }))}
          />
        </div>
        <More>
          <div className="fields">
            <LengthField
              label={t("home.room.height")}
              value={height}
              onChange={setHeight}
              least={2}
              most={20}
              when="typing"
            />
            {shape === "l" ? (
              <LengthField
                label={t("home.room.leg")}
                value={leg}
                onChange={setLeg}
                least={least}
                most={Math.max(least, shorter - 0.5)}
                when="typing"
              />
            ) : null}
            <TextBox
              label={t("home.room.name")}
              value={name}
              onChange={setName}
              placeholder={t(`use.${use}`)}
            />
          </div>
          <p className="hint home-assumed">{t(`home.room.assumed.${use}`)}</p>
        </More>
        {aside ? null : (
          <Button
            className={answer?.state === "placed" ? "button button-first" : "button"}
            isDisabled={answer?.state !== "placed"}
            onPress={openAsJob}
          >
            {t("home.room.open")}
          </Button>
        )}
      </div>
      <RoomAnswerView
        answer={answer}
        site={site}
        onMoreTime={patient ? undefined : () => setPatientFor(site)}
      />
    </section>
  );
}
