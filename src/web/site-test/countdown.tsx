import { useEffect, useRef, useState } from "react";
import { Button } from "react-aria-components";
import { t } from "../texts/test.ts";
import { hum, tone } from "./awake.ts";

interface CountdownProps {
  /** Parts one after the other, each with what one does meanwhile. [s] */
  readonly parts: readonly { readonly seconds: number; readonly word: string }[];
}

/** A clock for what takes a known time: still and hands at a desk, the empty room. */
export function Countdown({ parts }: CountdownProps) {
  const [began, setBegan] = useState<number | undefined>();
  const [now, setNow] = useState(0);
  const told = useRef(0);
  const whole = parts.reduce((sum, { seconds }) => sum + seconds, 0);
  useEffect(() => {
    if (began === undefined) return;
    const tick = setInterval(() => setNow(Date.now()), 200);
    return () => clearInterval(tick);
  }, [began]);
  const passed = began === undefined ? 0 : Math.max(0, (now - began) / 1000);
  let before = 0;
  const at = parts.findIndex(({ seconds }) => {
    before += seconds;
    return passed < before;
  });
  const done = began !== undefined && at < 0;
  const finished = began === undefined ? 0 : done ? parts.length : at;
  useEffect(() => {
    if (finished <= told.current) return;
    told.current = finished;
    hum("time-up");
    tone("time-up");
  }, [finished]);
  if (began === undefined)
    return (
      <Button
        className="button wide-button"
        onPress={() => {
          told.current = 0;
          setNow(Date.now());
          setBegan(Date.now());
        }}
      >
        {t("test.clock.start", { time: clock(whole) })}
      </Button>
    );
  return (
    <p className="test-clock" role="timer">
      <strong>{done ? t("test.clock.up") : clock(before - passed)}</strong>
      <span>{done ? t("test.clock.now") : parts[at]?.word}</span>
      <Button className="button button-quiet" onPress={() => setBegan(undefined)}>
        {t(done ? "test.clock.again" : "test.clock.stop")}
      </Button>
    </p>
  );
}

/** @example clock(65) is "1:05" */
export const clock = (seconds: number): string => {
  const whole = Math.ceil(seconds - 1e-9);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
};
