import { Fragment } from "react";
import { Button } from "react-aria-components";
import type { Finding, PlannedDevice } from "#engine";
import { roomTitle } from "#engine";
import type { OpenJob } from "../contract.ts";
import { SeverityShape } from "../fields/index.ts";
import type { Actions } from "../shell/actions.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { t } from "../texts/set.ts";
import { RulesSection } from "./rules-section.tsx";
import { atAGlance } from "./setting-words.ts";
import "./set.css";

export interface SetPanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly actions: Actions;
}

/** What to set on every detector of the job, room by room, and what the rules say of the rooms. */
export function SetPanel({ job, store, actions }: SetPanelProps) {
  const known = usePart(store, ({ settings }) => ({ settings })).settings;
  if (!known)
    return (
      <p className="hint" role="status">
        {t("set.calculating")}
      </p>
    );
  const { devices, findings } = known;
  const wrong = findings.filter(({ severity }) => severity !== "note").length;
  const notes = findings.length - wrong;
  const showFindings = (): void => store.set({ panel: { kind: "findings" } });
  const select = ({ context }: PlannedDevice): void => {
    const room = job.site.rooms.find(({ id }) => id === context.place?.room);
    if (room) actions.goTo(room.storey);
    actions.select([{ kind: "detectors", id: context.device }]);
    if (context.place) actions.lookAt(context.place.at);
  };
  const rooms = job.site.rooms.flatMap((room) => {
    const own = devices.filter(({ context }) => context.place?.room === room.id);
    return own.length === 0 ? [] : [{ id: room.id, title: roomTitle(room), own }];
  });
  return (
    <div className="stack set">
      <h2 className="set-title">{t("shell.panel.set")}</h2>
      {wrong > 0 ? (
        <Button className="button button-first wide-button" onPress={showFindings}>
          {t("set.findings", { count: wrong })}
        </Button>
      ) : notes > 0 ? (
        <Button className="button wide-button" onPress={showFindings}>
          {t("set.findings.notes", { count: notes })}
        </Button>
      ) : devices.length > 0 ? (
        <p>{t("set.nothing-open")}</p>
      ) : (
        <p>{t("set.empty")}</p>
      )}
      {rooms.map(({ id, title, own }) => (
        <section key={id} aria-label={title}>
          <h3 className="set-room">{title}</h3>
          {own.map((device) => (
            <DeviceLine
              key={device.context.device}
              device={device}
              worst={worstOf(findings, device.context.device)}
              onPress={() => select(device)}
            />
          ))}
        </section>
      ))}
      <RulesSection job={job} known={known} />
    </div>
  );
}

/** The gravest that is said of a device; notes are not worth a sign in the list. */
function worstOf(findings: readonly Finding[], device: string): "must" | "should" | undefined {
  const own = findings.filter(({ records }) => records.includes(device)).map(({ severity }) => severity);
  return own.includes("must") ? "must" : own.includes("should") ? "should" : undefined;
}

function DeviceLine({
  device: { context, settings },
  worst,
  onPress,
}: {
  readonly device: PlannedDevice;
  readonly worst: "must" | "should" | undefined;
  readonly onPress: () => void;
}) {
  return (
    <Button className="line-button set-device" onPress={onPress}>
      <span className="set-device-tag">{context.tag}</span>
      <span className="set-device-line">
        {atAGlance(settings).map(({ word, chosen }, i) => (
          <Fragment key={word}>
            {i > 0 ? " · " : ""}
            <span className={chosen ? "set-part set-part-chosen" : "set-part"}>
              {word}
              {chosen ? <span className="unseen"> ({t("set.chosen")})</span> : null}
            </span>
          </Fragment>
        ))}
      </span>
      {worst ? (
        <span className="set-device-worst">
          <SeverityShape severity={worst} />
          <span className="unseen">{t(`severity.${worst}`)}</span>
        </span>
      ) : null}
    </Button>
  );
}
