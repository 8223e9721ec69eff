import { Button } from "react-aria-components";
import type { JobBoard } from "#job";
import { PlaceFields } from "../cards/place-fields.tsx";
import type { OpenJob } from "../contract.ts";
import { More } from "../fields/index.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { BoardForm } from "../survey/visit/board-form.tsx";
import { t } from "../texts/wire.ts";
import { Amount, Known, Maybe } from "./amount.tsx";

type Fields = { readonly [Name in Exclude<keyof JobBoard, "id">]?: JobBoard[Name] | undefined };

/** A board: its place on the plan, its readings as the survey has them, and what the supply is. */
export function BoardEdit({
  job,
  board,
  store,
}: {
  readonly job: OpenJob;
  readonly board: JobBoard;
  readonly store: Store<Workbench>;
}) {
  const pointing = usePart(store, (bench) => bench.pointing?.for === board.id);
  const set = (fields: Fields): void =>
    job.keep("wire.edit.board", [{ do: "set", kind: "boards", id: board.id, fields }]);
  const storeys = job.site.storeys.map(({ id, name }) => ({ value: id, word: name || id }));
  return (
    <div className="stack">
      {job.readOnly ? null : pointing ? (
        <div className="row">
          <p role="status">{t("wire.board.point")}</p>
          <Button className="button" onPress={() => store.set({ pointing: undefined })}>
            {t("fields.stop")}
          </Button>
        </div>
      ) : (
        <Button
          className={board.at ? "button" : "button button-first"}
          onPress={() =>
            store.set({
              pointing: {
                for: board.id,
                take: (at, storey) => set({ at: [round(at[0]), round(at[1])], storey }),
              },
            })
          }
        >
          {t(board.at ? "wire.board.move" : "wire.board.place")}
        </Button>
      )}
      <BoardForm job={job} board={board} />
      <More word={t("wire.board.more")}>
        <div className="stack">
          <div className="fields">
            <Maybe
              label={t("wire.board.network")}
              value={board.network}
              options={(["public", "private"] as const).map((value) => ({
                value,
                word: t(`wire.network.${value}`),
              }))}
              onChange={(network) => set({ network })}
            />
            <Amount
              label={t("wire.board.earth")}
              value={board.earthResistance}
              unit="Ω"
              least={0.01}
              most={100_000}
              disabled={job.readOnly}
              onChange={(earthResistance) => set({ earthResistance })}
            />
            <Known
              label={t("wire.board.isolates-neutral")}
              value={board.isolatesNeutral}
              onChange={(isolatesNeutral) => set({ isolatesNeutral })}
            />
            <Maybe
              label={t("wire.board.storey")}
              value={board.storey}
              options={storeys}
              onChange={(storey) => set({ storey })}
            />
          </div>
          {board.at ? (
            <PlaceFields at={board.at} onChange={(at) => set({ at: [round(at[0]), round(at[1])] })} />
          ) : null}
        </div>
      </More>
    </div>
  );
}

/** A millimetre. */
const round = (value: number): number => Math.round(value * 1000) / 1000;
