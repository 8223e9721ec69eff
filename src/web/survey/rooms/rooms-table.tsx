import { useEffect, useMemo, useRef, useState, useSyncExternalStore } from "react";
import { Button } from "react-aria-components";
import type { Room } from "#engine";
import { Choice, Say } from "../../fields/index.ts";
import { useUnits } from "../../settings/preferences.ts";
import { usePart } from "../../shell/workbench.ts";
import { t } from "../../texts/rooms.ts";
import type { SurveyPanelProps } from "../panel.ts";
import { columns, sorted } from "./columns.ts";
import { ListPaste } from "./list-paste.tsx";
import { RoomCards } from "./room-cards.tsx";
import { RoomsGrid } from "./rooms-grid.tsx";
import { type Block, edges, setRoom } from "./table-block.ts";
import "./rooms.css";

/** Longer than a held key repeats, shorter than one notices. [ms] */
const handRests = 90;

const narrow = globalThis.matchMedia?.("(max-width: 640px)");
const onNarrow = (listener: () => void): (() => void) => {
  narrow?.addEventListener("change", listener);
  return () => narrow?.removeEventListener("change", listener);
};

/** All rooms of a storey or of the job as rows, or as cards where a table has no room. */
export function RoomsTable({ job, store, actions, onClose }: SurveyPanelProps) {
  const units = useUnits();
  const asCards = useSyncExternalStore(onNarrow, () => narrow?.matches ?? false);
  const { storey, selection } = usePart(store, (bench) => ({
    storey: bench.storey,
    selection: bench.selection,
  }));
  const [scope, setScope] = useState<"storey" | "job">("storey");
  const [listing, setListing] = useState(false);
  const [troubles, setTroubles] = useState<readonly string[]>([]);
  const [sort, setSort] = useState<{ readonly column: number; readonly down: boolean } | undefined>();
  /** Ids in the order that was asked for: rows do not jump away while one types in them. */
  const [order, setOrder] = useState<ReadonlyMap<string, number>>(new Map());
  const context = useMemo(() => ({ site: { storeys: job.site.storeys }, units }), [job.site.storeys, units]);
  const all = job.site.rooms;
  const rooms = useMemo(() => {
    const here = scope === "job" ? all : all.filter((room) => room.storey === storey);
    const rank = (room: Room): number => order.get(room.id) ?? Number.POSITIVE_INFINITY;
    return order.size === 0 ? here : [...here].sort((a, b) => (rank(a) === rank(b) ? 0 : rank(a) - rank(b)));
  }, [all, scope, storey, order]);
  const [block, setBlock] = useState<Block>(() => {
    const row = Math.max(
      0,
      rooms.findIndex(({ id }) => id === selection[0]?.id),
    );
    return { from: { row, column: 0 }, to: { row, column: 0 } };
  });
  /** The plan follows when the hand rests: an arrow key that is held must not wait for a drawing of 500 rooms. */
  const following = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(following.current), []);
  const choose = (next: Block): void => {
    setBlock(next);
    clearTimeout(following.current);
    const { top, bottom } = edges(next);
    const chosen = rooms.slice(Math.max(0, top), bottom + 1);
    const seen = rooms[next.to.row];
    following.current = setTimeout(() => {
      if (seen && seen.storey !== store.get().storey) actions.goTo(seen.storey);
      store.set({ selection: chosen.map(({ id }) => ({ kind: "rooms", id })) });
    }, handRests);
  };
  const sortBy = (column: number): void => {
    const down = sort?.column === column && !sort.down;
    setSort({ column, down });
    const next = sorted(all, { column: columns[column]!, down }, context);
    setOrder(new Map(next.map(({ id }, index) => [id, index])));
  };
  const unconfirmed = rooms.filter(({ proposed }) => proposed !== undefined);
  if (listing)
    return (
      <ListPaste
        job={job}
        storey={storey}
        onDone={(made) => {
          setListing(false);
          if (made.length === 0) return;
          const now = store.get();
          const first = now.job.site.rooms.find(({ id }) => id === made[0]);
          if (first) store.set({ storey: first.storey });
          store.set({ selection: made.map((id) => ({ kind: "rooms", id })) });
          actions.showAll();
        }}
      />
    );
  return (
    <div className="stack rooms-panel">
      <div className="row row-apart">
        <h2 className="panel-title">{t("shell.panel.rooms")}</h2>
        <Button className="button" onPress={onClose}>
          {t("shell.close")}
        </Button>
      </div>
      {job.site.storeys.length > 1 ? (
        <Choice
          label={t("rooms.scope")}
          value={scope}
          onChange={setScope}
          options={[
            {
              value: "storey",
              word: job.site.storeys.find(({ id }) => id === storey)?.name || t("rooms.scope.storey"),
            },
            { value: "job", word: t("rooms.scope.job", { count: all.length }) },
          ]}
        />
      ) : null}
      {rooms.length === 0 ? (
        <p>{t("rooms.none")}</p>
      ) : asCards ? (
        <RoomCards
          job={job}
          rooms={rooms}
          onChoose={(id) => store.set({ selection: [{ kind: "rooms", id }] })}
        />
      ) : (
        <RoomsGrid
          job={job}
          rooms={rooms}
          context={context}
          sort={sort}
          block={block}
          onBlock={choose}
          onSort={sortBy}
          onTroubles={setTroubles}
          onLeave={onClose}
        />
      )}
      {troubles.length > 0 ? (
        <Say severity="should" live>
          {troubles.map((trouble) => (
            <p key={trouble}>{trouble}</p>
          ))}
        </Say>
      ) : null}
      {asCards || rooms.length === 0 ? null : (
        <p id="rooms-grid-keys" className="hint">
          {t("rooms.keys")}
        </p>
      )}
      {job.readOnly ? null : (
        <div className="row">
          <Button
            className={rooms.length === 0 ? "button button-first" : "button"}
            onPress={() => setListing(true)}
          >
            {t("rooms.list.open")}
          </Button>
          {unconfirmed.length > 0 ? (
            <Button
              className="button"
              onPress={() =>
                job.edit(
                  "rooms.edit.confirm",
                  unconfirmed.map(({ id }) => setRoom(id, { proposed: undefined })),
                )
              }
            >
              {t("rooms.confirm-all", { count: unconfirmed.length })}
            </Button>
          ) : null}
        </div>
      )}
    </div>
  );
}
