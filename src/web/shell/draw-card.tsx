import { useRef, useState } from "react";
import { Button, Input, Label, TextField } from "react-aria-components";
import { Tick } from "../fields/index.ts";
import { gestureOf } from "../plan/tools/kinds.ts";
import type { Input as PlanInput, Tool, Towards } from "../plan/tools/state.ts";
import { useUnits } from "../settings/preferences.ts";
import { lengthIn, t } from "../texts/index.ts";
import { Sign } from "./signs.tsx";
import { type Store, usePart, type Workbench } from "./workbench.ts";
import "./draw-card.css";

interface DrawCardProps {
  readonly store: Store<Workbench>;
  readonly tool: Extract<Tool, { kind: "add" }>;
  readonly input: (input: PlanInput) => void;
  readonly onStop: () => void;
}

const ways: readonly {
  readonly way: Towards;
  readonly key: string;
  readonly sign: "left" | "up" | "down" | "right";
}[] = [
  { way: "left", key: "ArrowLeft", sign: "left" },
  { way: "up", key: "ArrowUp", sign: "up" },
  { way: "down", key: "ArrowDown", sign: "down" },
  { way: "right", key: "ArrowRight", sign: "right" },
];

/** A thing is being drawn: how it is done, the length that one may type instead, and the way that it goes. */
export function DrawCard({ store, tool, input, onStop }: DrawCardProps) {
  const state = usePart(store, ({ toolState }) => {
    if (toolState.on === "chain")
      return { corners: toolState.points.length, towards: toolState.towards, refused: toolState.refused };
    return {
      corners: 0,
      towards: toolState.on === "draw" ? toolState.towards : undefined,
      refused: toolState.on === "rest" ? toolState.refused : undefined,
    };
  });
  const [typed, setTyped] = useState("");
  const [trouble, setTrouble] = useState<string | undefined>();
  const units = useUnits();
  const field = useRef<HTMLInputElement>(null);
  const gesture = gestureOf(tool.what);
  const lengthsOf = (text: string) => (gesture === "box" ? sidesIn(text, units) : lengthsIn(text, units));
  /** What is typed shows on the plan before it is set down. */
  const show = (text: string): void => {
    const lengths = lengthsOf(text);
    input({ do: "tried", ...(lengths ? { lengths } : {}) });
  };
  const turn = (way: Towards): void => {
    input({ do: "towards", way });
    if (typed !== "") show(typed);
  };
  const submit = (): void => {
    if (typed.trim() === "") {
      input({ do: "finish" });
      return;
    }
    const lengths = lengthsOf(typed);
    if (!lengths) {
      setTrouble(t(gesture === "box" ? "draw.wrong-sides" : "draw.wrong", { typed }));
      return;
    }
    setTyped("");
    setTrouble(undefined);
    input({ do: "typed", lengths });
    field.current?.focus();
  };
  const onKey = (event: React.KeyboardEvent): void => {
    const way = ways.find(({ key }) => key === event.key);
    if (event.key === "Enter") submit();
    else if (event.key === "Escape") onStop();
    else if (way && (typed === "" || event.key === "ArrowUp" || event.key === "ArrowDown")) turn(way.way);
    else if (event.key === "Backspace" && typed === "") input({ do: "back" });
    else return;
    event.preventDefault();
  };
  return (
    <div className="stack draw-card">
      <p role="status" className="draw-how">
        {t(`plan.add.${tool.what}.how`)}
        {gesture === "chain" && state.corners > 0
          ? ` · ${t("draw.chain.done", { count: state.corners })}`
          : null}
      </p>
      {gesture === "touch" ? null : (
        <div className="draw-lengths">
          <TextField
            className="field"
            value={typed}
            onChange={(next) => {
              setTyped(next);
              setTrouble(undefined);
              show(next);
            }}
          >
            <Label className="field-label">{t(gesture === "box" ? "draw.sides" : "draw.length")}</Label>
            <span className="field-box">
              <Input
                ref={field}
                className="field-input"
                data-draw-length=""
                inputMode="text"
                enterKeyHint="done"
                autoComplete="off"
                placeholder={gesture === "box" ? t("draw.sides.hint") : "3.42"}
                onKeyDown={onKey}
              />
            </span>
          </TextField>
          {gesture === "box" ? null : (
            <span className="draw-ways">
              {ways.map(({ way, sign }) => (
                <Button
                  key={way}
                  className="button button-sign"
                  aria-label={t(`draw.${way}`)}
                  aria-pressed={state.towards === way}
                  onPress={() => turn(way)}
                >
                  <Sign name={sign} />
                </Button>
              ))}
            </span>
          )}
        </div>
      )}
      {(trouble ?? state.refused) ? (
        <p className="field-trouble" role="alert">
          {trouble ?? t(`draw.refused.${state.refused ?? "few"}`)}
        </p>
      ) : null}
      <div className="draw-deeds">
        {gesture === "chain" ? (
          <>
            <Button className="button" isDisabled={typed === ""} onPress={submit}>
              {t("draw.next")}
            </Button>
            <Button className="button" isDisabled={state.corners === 0} onPress={() => input({ do: "back" })}>
              {t("draw.back")}
            </Button>
            <Button
              className="button button-first"
              isDisabled={state.corners < 3}
              onPress={() => input({ do: "finish" })}
            >
              {t("draw.close")}
            </Button>
          </>
        ) : gesture === "touch" ? null : (
          <Button className="button" isDisabled={typed === ""} onPress={submit}>
            {t("draw.set")}
          </Button>
        )}
        <Button className="button" onPress={onStop}>
          {t("plan.add.stop")}
        </Button>
      </div>
      <Tick
        on={tool.after === "again"}
        onChange={(again) => store.set({ tool: { ...tool, after: again ? "again" : "away" } })}
      >
        {t("draw.again")}
      </Tick>
    </div>
  );
}

function lengthsIn(typed: string, units: Parameters<typeof lengthIn>[1]): readonly [number] | undefined {
  const metres = lengthIn(typed, units);
  return metres !== undefined && metres > 0 ? [metres] : undefined;
}

/** Two lengths with a cross between them: 6 × 4, 6 x 4 m, 20' by 13' 6". A unit after the second counts for both where the first has none. */
function sidesIn(
  typed: string,
  units: Parameters<typeof lengthIn>[1],
): readonly [number, number] | undefined {
  const parts = typed.split(/\s*(?:×|x|\*|by|;)\s*/i);
  if (parts.length !== 2) return undefined;
  const [first, second] = parts as [string, string];
  const unit = /[a-z'"]+\s*$/i.exec(second)?.[0].trim() ?? "";
  const bare = /^[\d.,\s]+$/.test(first);
  const wide = lengthIn(bare && /^(m|cm|mm|dm|ft|in)$/i.test(unit) ? `${first} ${unit}` : first, units);
  const high = lengthIn(second, units);
  return wide !== undefined && high !== undefined && wide > 0 && high > 0 ? [wide, high] : undefined;
}
