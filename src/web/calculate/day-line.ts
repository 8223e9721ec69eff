import type { DayAnswer, DayQuestion } from "./day-protocol.ts";

/** A worker as far as a line needs one. */
export type LineWorker = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror">;

/** Questions to one worker, the newest of which wins. */
export interface DayLine {
  /** Undefined where a newer question came first, or the line was stopped. */
  readonly ask: (question: DayQuestion) => Promise<DayAnswer | undefined>;
  /** Ends what runs. */
  readonly stop: () => void;
}

interface Asked {
  readonly question: DayQuestion;
  readonly answer: (answer: DayAnswer | undefined) => void;
}

/** A question that runs for longer than this gives way to a newer one. [ms] */
const patience = 400;

const dayWorker = (): LineWorker =>
  new Worker(new URL("./day-worker.ts", import.meta.url), { type: "module", name: "day" });

/** A line of questions about simulated days; the worker starts with the first. */
export function dayLine(newWorker: () => LineWorker = dayWorker): DayLine {
  let worker: LineWorker | undefined;
  let running: Asked | undefined;
  let next: Asked | undefined;
  let impatient: ReturnType<typeof setTimeout> | undefined;

  const done = (answer: DayAnswer | undefined): void => {
    clearTimeout(impatient);
    impatient = undefined;
    const asked = running;
    running = undefined;
    asked?.answer(answer);
    if (next) start(next);
  };
  const start = (asked: Asked): void => {
    running = asked;
    next = undefined;
    worker ??= newWorker();
    worker.onmessage = ({ data }: MessageEvent<DayAnswer>) => done(data);
    worker.onerror = (event) => {
      end();
      done({ tell: "trouble", sentence: event.message });
    };
    worker.postMessage(asked.question);
  };
  const end = (): void => {
    worker?.terminate();
    worker = undefined;
  };
  return {
    ask: (question) =>
      new Promise((answer) => {
        const asked = { question, answer };
        if (!running) return start(asked);
        next?.answer(undefined);
        next = asked;
        impatient ??= setTimeout(() => {
          end();
          done(undefined);
        }, patience);
      }),
    stop: () => {
      next?.answer(undefined);
      next = undefined;
      end();
      done(undefined);
    },
  };
}
