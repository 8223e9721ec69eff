import { Button, Dialog, DialogTrigger, Popover } from "react-aria-components";
import { Tick } from "../fields/index.ts";
import type { Shown } from "../plan/paint/zones.ts";
import { layersOf } from "../plan/shown-by-stage.ts";
import { t } from "../texts/index.ts";
import { Sign } from "./signs.tsx";
import { type Store, usePart, type Workbench } from "./workbench.ts";

/** What lies on the plan, with the sign of each: it is the legend as well. */
export function ShowMenu({ store }: { readonly store: Store<Workbench> }) {
  const { shown, stage } = usePart(store, (bench) => ({ shown: bench.shown, stage: bench.stage }));
  const layers = layersOf[stage];
  const others = layersOf.place.filter((layer) => !layers.includes(layer));
  return (
    <DialogTrigger>
      <Button className="bar-word bar-sign" aria-label={t("shell.show")}>
        <Sign name="show" />
        <span className="bar-wide">{t("shell.show")}</span>
      </Button>
      <Popover className="menu-box" placement="bottom end">
        <Dialog className="show-box" aria-label={t("shell.show")}>
          {layers.map((layer) => (
            <Tick
              key={layer}
              on={shown[layer]}
              onChange={(on) => store.set({ shown: { ...shown, [layer]: on } })}
            >
              <span className="show-row">
                <LegendSign layer={layer} />
                <span>
                  {t(`shell.show.${layer}`)}
                  <small className="hint show-hint">{t(`shell.show.${layer}.means`)}</small>
                </span>
              </span>
            </Tick>
          ))}
          {others.length > 0 ? (
            <p className="hint">
              {layers.length === 0
                ? t("shell.show.none-here")
                : t("shell.show.not-here", {
                    layers: others.map((layer) => t(`shell.show.${layer}`)).join(", "),
                  })}
            </p>
          ) : null}
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}

function LegendSign({ layer }: { readonly layer: keyof Shown }) {
  return (
    <svg className={`legend legend-${layer}`} viewBox="0 0 32 22" aria-hidden="true">
      {layer === "sound" ? (
        <path d="M2 11q3.500-6 7 0t7 0 7 0 7 0" />
      ) : layer === "darkWalks" ? (
        <>
          <path className="legend-dark" d="M2 16 18 7" />
          <path className="legend-lit" d="M18 7l12-4" />
          <circle cx="18" cy="7" r="3" />
        </>
      ) : (
        <>
          <rect x="1.500" y="1.500" width="29" height="19" rx="2" />
          {layer === "gaps" ? <path d="M4 20 22 2M12 20 30 2M2 4l16 16M12 2l18 18" /> : null}
        </>
      )}
    </svg>
  );
}
