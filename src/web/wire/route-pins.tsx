import { Button } from "react-aria-components";
import type { JobCircuit } from "#job";
import type { OpenJob } from "../contract.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { t } from "../texts/wire.ts";

/** Places that a person wants the cable to pass, on the storey of its board; each a touch of the plan, each one step of undo. */
export function RoutePins({
  job,
  circuit,
  store,
}: {
  readonly job: OpenJob;
  readonly circuit: JobCircuit;
  readonly store: Store<Workbench>;
}) {
  const pointing = usePart(store, (bench) => bench.pointing?.for === circuit.id);
  const via = circuit.via ?? [];
  const storey = job.kept.boards.find(({ id }) => id === circuit.board)?.storey;
  const set = (next: JobCircuit["via"] | undefined): void =>
    job.keep("wire.edit.route", [{ do: "set", kind: "circuits", id: circuit.id, fields: { via: next } }]);
  if (job.readOnly) return null;
  if (pointing)
    return (
      <div className="row">
        <p role="status">{t("wire.route.point")}</p>
        <Button className="button" onPress={() => store.set({ pointing: undefined })}>
          {t("fields.stop")}
        </Button>
      </div>
    );
  return (
    <div className="row">
      <Button
        className="button"
        onPress={() =>
          store.set({
            pointing: {
              for: circuit.id,
              take: ([x, y], on) => {
                if (on === storey) set([...via, [round(x), round(y)]]);
              },
            },
          })
        }
      >
        {t("wire.route.pin")}
      </Button>
      {via.length > 0 ? (
        <Button className="button button-quiet" onPress={() => set(undefined)}>
          {t("wire.route.free", { count: via.length })}
        </Button>
      ) : null}
    </div>
  );
}

/** A centimetre. */
const round = (value: number): number => Math.round(value * 100) / 100;
