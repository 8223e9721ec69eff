import { lazy, Suspense } from "react";
import { Button } from "react-aria-components";
import { english } from "#engine";
import type { ModelRead, PlanWish } from "../contract.ts";
import { intoView, More, Say } from "../fields/index.ts";
import { squareMetresOf } from "../preview/outline-area.ts";
import { useUnits } from "../settings/preferences.ts";
import { areaText, spoken, t } from "../texts/index.ts";
import { inWords } from "../texts/told.ts";
import { PlanChoice } from "./plan-choice.tsx";

const ScanOffer = lazy(() =>
  import("../survey/drawings/scan-offer.tsx").then((part) => ({ default: part.ScanOffer })),
);

interface ReadReportProps {
  /** What was read. */
  readonly file: File;
  readonly read: ModelRead;
  /** What was settled when a plan was read. */
  readonly choice: PlanWish;
  readonly onReadAgain: (choice: PlanWish) => void;
  /** What keeping it is called here. */
  readonly keepWord: string;
  readonly onKeep: () => void;
  readonly onDrop: () => void;
  /** A page of it was made a picture instead. */
  readonly onPicture: (picture: File) => void;
}

/** What was read from a building model, what was left out and why, before it becomes a job. */
export function ReadReport(props: ReadReportProps) {
  const { file, read, choice, onReadAgain, keepWord, onKeep, onDrop, onPicture } = props;
  const { name } = file;
  const units = useUnits();
  const { storeys, rooms } = read.site;
  return (
    <div className="home-report stack" role="status" ref={intoView}>
      <h3 className="home-subhead">{t("home.report.title", { name })}</h3>
      {rooms.length === 0 && read.drawings.length === 0 ? (
        <Say severity="must">{t("home.report.no-rooms")}</Say>
      ) : null}
      <ul className="home-figures">
        {(["rooms", "storeys", "openings", "obstacles", "luminaires"] as const)
          .filter((what) => what === "rooms" || read.site[what].length > 0)
          .map((what) => (
            <li key={what}>{t(`home.report.${what}`, { count: read.site[what].length })}</li>
          ))}
      </ul>
      {read.problems.map(inWords).map(({ message, remedy }) => (
        <Say key={message} severity="should">
          <p>{message}</p>
          <p className="hint">{remedy}</p>
        </Say>
      ))}
      {read.scan ? (
        <Suspense>
          {/* Another page is chosen below, with the rest of the plan. */}
          <ScanOffer
            file={file}
            scan={{ page: read.scan.page, pages: 1 }}
            onPicture={onPicture}
            second={rooms.length > 0}
          />
        </Suspense>
      ) : null}
      {read.plan === undefined ? null : (
        <PlanChoice
          plan={read.plan}
          drawing={read.drawings[0]}
          wish={choice}
          onRead={onReadAgain}
          said={read.problems.some(({ message }) =>
            message.includes(english(read.plan?.unit.reason ?? "\n")),
          )}
        />
      )}
      {rooms.length > 0 ? (
        <More word={t("home.report.each-room")}>
          <div className="home-table">
            <table>
              <thead>
                <tr>
                  <th>{t("home.report.room")}</th>
                  <th>{t("home.report.storey")}</th>
                  <th className="figure">{t("home.report.area")}</th>
                </tr>
              </thead>
              <tbody>
                {rooms.map((room) => (
                  <tr key={room.id}>
                    <td>{[room.number, room.name].filter((part) => part !== "").join(" ")}</td>
                    <td>{storeys.find(({ id }) => id === room.storey)?.name ?? ""}</td>
                    <td className="figure">{areaText(squareMetresOf(room), units)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </More>
      ) : null}
      {read.leftOut.length > 0 ? (
        <More
          word={t("home.report.left-out", { count: read.leftOut.reduce((sum, { count }) => sum + count, 0) })}
        >
          <ul className="home-left-out">
            {read.leftOut.map(({ what, why, count }) => (
              <li key={`${english(what)} ${english(why)}`}>
                <strong>
                  {count} × {spoken(what)}
                </strong>{" "}
                <span className="hint">{spoken(why)}</span>
              </li>
            ))}
          </ul>
        </More>
      ) : (
        <p className="hint">{t("home.report.nothing-left-out")}</p>
      )}
      <div className="row">
        <Button className={rooms.length > 0 ? "button button-first" : "button"} onPress={onKeep}>
          {keepWord}
        </Button>
        <Button className="button button-quiet" onPress={onDrop}>
          {t("home.report.drop")}
        </Button>
      </div>
    </div>
  );
}
