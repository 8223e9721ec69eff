import { Button } from "react-aria-components";
import { type Occasion, roomTitle } from "#engine";
import type { OpenJob } from "../contract.ts";
import { recordOf } from "../plan/pick.ts";
import type { Actions } from "../shell/actions.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { VerdictWord } from "../site-test/verdict-word.tsx";
import { t } from "../texts/after.ts";
import { dayText } from "../texts/index.ts";
import { type CareKnown, careKnown, progressOfCare } from "./care-known.ts";
import { CarePoints } from "./care-points.tsx";
import { visitTitle } from "./care-words.ts";
import "../site-test/site-test.css";

export interface CarePanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly actions: Actions;
  readonly occasion: string;
  /** The room that one is in; the list of rooms if absent, what belongs to the whole job if "". */
  readonly room: string | undefined;
  readonly onClose: () => void;
}

/** A visit after hand-over: its rooms, and in each what is looked at. */
export function CarePanel({ job, store, actions, occasion: id, room, onClose }: CarePanelProps) {
  const { settings } = usePart(store, (bench) => ({ settings: bench.settings }));
  const known = careKnown(job, settings);
  const occasion = known.occasions.find((one) => one.id === id);
  const goTo = (to: string | undefined): void => {
    const record = recordOf(job.site, "rooms", to ?? "");
    if (record) actions.goTo(record.storey);
    // Nothing is chosen on the plan: a glove that slips would move what is.
    store.set({
      selection: [],
      panel: { kind: "care", occasion: id, ...(to === undefined ? {} : { room: to }) },
    });
  };
  return (
    <div className="stack test">
      <div className="row row-apart">
        <h2 className="panel-title">
          {room === undefined || room === ""
            ? occasion
              ? visitTitle(occasion)
              : t("after.visit.gone")
            : roomTitle(recordOf(job.site, "rooms", room))}
        </h2>
        <Button
          className="button button-quiet"
          onPress={() => (room === undefined ? onClose() : goTo(undefined))}
        >
          {t(room === undefined ? "after.back" : "after.rooms.all")}
        </Button>
      </div>
      {!occasion ? null : room === undefined ? (
        <Rooms job={job} known={known} occasion={occasion} onGo={goTo} />
      ) : (
        <CarePoints
          key={room}
          job={job}
          occasion={occasion}
          states={known.states(occasion, room === "" ? undefined : room)}
          room={room === "" ? undefined : room}
        />
      )}
    </div>
  );
}

interface RoomsProps {
  readonly job: OpenJob;
  readonly known: CareKnown;
  readonly occasion: Occasion;
  readonly onGo: (room: string) => void;
}

function Rooms({ job, known, occasion, onGo }: RoomsProps) {
  const whole = known.states(occasion);
  const lines = [
    ...known.rooms(occasion).map((room) => ({
      room,
      title: roomTitle(recordOf(job.site, "rooms", room)),
      states: known.states(occasion, room),
    })),
    ...(whole.length > 0 ? [{ room: "", title: t("after.rooms.job"), states: whole }] : []),
  ];
  return (
    <>
      <p className="hint">{t(`after.visit.${occasion.kind}.what`, { due: dayText(occasion.due) })}</p>
      <div>
        {lines.map(({ room, title, states }) => {
          const { all, looked, failed } = progressOfCare(states);
          const attended = states.reduce((sum, { point }) => sum + point.seconds, 0);
          return (
            <Button key={room} className="line-button test-room" onPress={() => onGo(room)}>
              <span className="test-room-name">{title}</span>
              <span className="hint">
                {looked === 0
                  ? t("after.rooms.open", { all, minutes: Math.max(1, Math.round(attended / 60)) })
                  : t("after.rooms.begun", { looked, all })}
              </span>
              {failed > 0 ? (
                <VerdictWord verdict="fail" />
              ) : looked === all ? (
                <VerdictWord verdict="pass" />
              ) : null}
            </Button>
          );
        })}
      </div>
    </>
  );
}
