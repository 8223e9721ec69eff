import { useEffect, useState } from "react";
import type { AlternatingPresence, DayDelays, DayInput, DayRun, Seconds, SwitchedLoad } from "#engine";
import { type DayLine, dayLine } from "../calculate/day-line.ts";
import type { DayLog } from "../calculate/day-protocol.ts";

/** What is known of a question: the last answer stays while a newer one is on its way. */
export interface Answered<T> {
  readonly value: T | undefined;
  readonly busy: boolean;
  readonly trouble: string | undefined;
}

const nothing = { value: undefined, busy: true, trouble: undefined };

/** A line that ends with the component. */
export function useDayLine(): DayLine {
  const [line] = useState(dayLine);
  useEffect(() => line.stop, [line]);
  return line;
}

/** The simulated day of a load. */
export function useDay(
  line: DayLine,
  load: SwitchedLoad | undefined,
  input: DayInput | undefined,
): Answered<DayRun> {
  const [known, setKnown] = useState<Answered<DayRun>>(nothing);
  useEffect(() => {
    if (!load || !input) return;
    setKnown((before) => ({ ...before, busy: true }));
    void line.ask({ ask: "day", load, input }).then((answer) => {
      if (answer?.tell === "day") setKnown({ value: answer.run, busy: false, trouble: undefined });
      if (answer?.tell === "trouble") setKnown({ value: undefined, busy: false, trouble: answer.sentence });
    });
  }, [line, load, input]);
  return known;
}

/** A question about delays: the days to try them on, or a log to replay. */
export type DelaysWish =
  | {
      readonly kind: "days";
      readonly input: DayInput;
      readonly beside: readonly Seconds[];
      readonly presence: AlternatingPresence | undefined;
      readonly longest: Seconds | undefined;
    }
  | { readonly kind: "log"; readonly log: DayLog; readonly still: Seconds };

/** So long after the last change delays are tried: a drag asks once. [ms] */
const settled = 350;

/** Delays tried on the days. Stopped, it keeps what it had. */
export function useDelays(
  line: DayLine,
  load: SwitchedLoad | undefined,
  wish: DelaysWish | undefined,
): Answered<Pick<DayDelays, "results" | "recommended">> & { readonly stop: () => void } {
  const [known, setKnown] = useState<Answered<Pick<DayDelays, "results" | "recommended">>>(nothing);
  useEffect(() => {
    if (!load || !wish) return;
    setKnown((before) => ({ ...before, busy: true }));
    const wait = setTimeout(() => {
      const { kind, ...rest } = wish;
      const question =
        kind === "log"
          ? ({ ask: "replay", load, ...rest } as const)
          : ({ ask: "delays", load, ...rest } as const);
      void line.ask(question as Parameters<DayLine["ask"]>[0]).then((answer) => {
        if (answer?.tell === "delays") setKnown({ value: answer.delays, busy: false, trouble: undefined });
        if (answer?.tell === "replay")
          setKnown({
            value: { results: answer.replayed.run.results, recommended: answer.replayed.recommended },
            busy: false,
            trouble: undefined,
          });
        if (answer?.tell === "trouble") setKnown({ value: undefined, busy: false, trouble: answer.sentence });
      });
    }, settled);
    return () => clearTimeout(wait);
  }, [line, load, wish]);
  const stop = (): void => {
    line.stop();
    setKnown((before) => ({ ...before, busy: false }));
  };
  return { ...known, stop };
}
