import { lazy, Suspense, useState } from "react";
import { Button } from "react-aria-components";
import type { ModelRead, PlanWish } from "../contract.ts";
import { FigureField, LengthField, More, Pick, Tick } from "../fields/index.ts";
import { spoken, t } from "../texts/index.ts";

const ScaleFromLength = lazy(() =>
  import("./scale-from-length.tsx").then(({ ScaleFromLength }) => ({ default: ScaleFromLength })),
);

interface PlanChoiceProps {
  readonly plan: NonNullable<ModelRead["plan"]>;
  /** The lines as they were read. */
  readonly drawing: ModelRead["drawings"][number] | undefined;
  readonly wish: PlanWish;
  readonly onRead: (wish: PlanWish) => void;
  /** Whether the reason for the unit stands above already. */
  readonly said: boolean;
}

const units = [
  ["mm", 0.001],
  ["cm", 0.01],
  ["dm", 0.1],
  ["m", 1],
  ["in", 0.0254],
  ["ft", 0.3048],
] as const;

/** What was assumed of a plan, and the same file read again with what a person says instead. */
export function PlanChoice({ plan, drawing, wish, onRead, said }: PlanChoiceProps) {
  const [next, setNext] = useState<PlanWish>(wish);
  // Its picture is made only for one who asks for it.
  const [measuring, setMeasuring] = useState<"open" | "closed">("closed");
  const looked = next.layers ?? plan.layers.filter((layer) => layer.looked).map(({ name }) => name);
  const unit =
    units.find(([, metres]) => Math.abs(metres / (next.metres ?? plan.metres) - 1) < 1e-6)?.[0] ?? "";
  const withLayer = (name: string, on: boolean): void =>
    setNext({ ...next, layers: on ? [...looked, name] : looked.filter((one) => one !== name) });
  const layers = plan.layers.filter(({ lines }) => lines > 0);
  return (
    <div className="home-plan stack">
      {said ? null : <p className="hint">{spoken(plan.unit.reason)}</p>}
      <div className="home-plan-fields">
        {plan.unit.paper !== undefined ? (
          // Lengths in the file are paper: a scale is asked for, not a unit.
          <FigureField
            label={t("home.plan.scale")}
            value={next.scale ?? Number((plan.metres / plan.unit.paper).toPrecision(4))}
            onChange={(scale) => setNext({ ...next, scale })}
            least={1}
            most={10_000}
          />
        ) : (
          <Pick
            label={t("home.plan.unit")}
            value={unit}
            options={[
              ...(unit === "" ? [{ value: "", word: spoken(plan.unit.name) }] : []),
              ...units.map(([name]) => ({ value: name, word: name })),
            ]}
            onChange={(name) => {
              const metres = units.find(([one]) => one === name)?.[1];
              if (metres !== undefined) setNext({ ...next, metres });
            }}
          />
        )}
        <LengthField
          label={t("home.plan.ceiling")}
          value={next.ceiling ?? plan.ceiling}
          onChange={(ceiling) => setNext({ ...next, ceiling })}
          least={1}
          most={60}
        />
        {plan.pages > 1 ? (
          <FigureField
            label={t("home.plan.page", { pages: plan.pages })}
            value={next.page ?? plan.page}
            onChange={(page) => setNext({ ...next, page })}
            least={1}
            most={plan.pages}
            whole
          />
        ) : null}
        {plan.parts.length > 1 ? (
          <Pick
            label={t("home.plan.part")}
            value={String(next.part ?? plan.part)}
            options={plan.parts.map((name, index) => ({
              value: String(index),
              word: name || t("home.plan.part-number", { number: index + 1 }),
            }))}
            onChange={(part) => setNext({ ...next, part: Number(part) })}
          />
        ) : null}
      </div>
      {layers.length > 1 ? (
        <More word={t("home.plan.layers", { looked: looked.length, count: layers.length })}>
          <div className="home-plan-layers">
            {layers.map(({ name, lines }) => (
              <Tick key={name} on={looked.includes(name)} onChange={(on) => withLayer(name, on)}>
                {name} <span className="hint">{t("home.plan.lines", { count: lines })}</span>
              </Tick>
            ))}
          </div>
        </More>
      ) : null}
      {drawing === undefined ? null : (
        <>
          <Button
            className="button"
            aria-expanded={measuring === "open"}
            onPress={() => setMeasuring(measuring === "open" ? "closed" : "open")}
          >
            {t("home.plan.measured")}
          </Button>
          {measuring === "open" ? (
            <Suspense>
              <ScaleFromLength
                drawing={drawing}
                onTimes={(times) => onRead({ ...next, ...larger(plan, times) })}
              />
            </Suspense>
          ) : null}
        </>
      )}
      <Button className="button" onPress={() => onRead(next)} isDisabled={next === wish}>
        {t("home.plan.again")}
      </Button>
    </div>
  );
}

/** What is said of a plan that is so many times larger than it was read. */
function larger({ metres, unit }: PlanChoiceProps["plan"], times: number): PlanWish {
  return unit.paper === undefined
    ? { metres: metres * times }
    : { scale: Number(((metres * times) / unit.paper).toPrecision(6)) };
}
