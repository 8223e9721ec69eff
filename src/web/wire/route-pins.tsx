import { Button } from "react-aria-components";
import type { JobCircuit } from "#job";
import type { OpenJob } from "../contract.ts";
import { pinCount } from "../plan/held-pin.ts";
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
  const set = (fields: { readonly via?: JobCircuit["via"] | undefined; readonly pinned?: undefined }): void =>
    job.keep("wire.edit.route", [{ do: "set", kind: "circuits", id: circuit.id, fields }]);
  const pins = pinCount(circuit);
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
      <p className="hint">{t("wire.route.drag")}</p>
      <Button
        className="button"
        onPress={() =>
          store.set({
            pointing: {
              for: circuit.id,
              take: ([x, y], on) => {
                if (on === storey) set({ via: [...via, [round(x), round(y)]] });
              },
            },
          })
        }
      >
        {t("wire.route.pin")}
      </Button>
      {pins > 0 ? (
        <Button className="button button-quiet" onPress={() => set({ via: undefined, pinned: undefined })}>
          {t("wire.route.free", { count: pins })}
        </Button>
      ) : null}
    </div>
  );
}

/** A centimetre. */
const round = (value: number): number => Math.round(value * 100) / 100;
