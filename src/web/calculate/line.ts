/** To a worker: a question with its number. */
export interface Asked<Question> {
  readonly number: number;
  readonly question: Question;
}

/** A worker could not answer. */
export interface Trouble {
  readonly tell: "trouble";
  readonly sentence: string;
}

export const isTrouble = (answer: object): answer is Trouble => "tell" in answer && answer.tell === "trouble";

/** From a worker: the answer to the question of that number. */
export interface Told<Answer> {
  readonly number: number;
  readonly answer: Answer | Trouble;
}

/** A worker as far as a line needs one. */
export type LineWorker = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror">;

/** Questions to one worker, the newest of which wins. */
export interface Line<Question, Answer> {
  /** Undefined where a newer question came first, or the line was stopped. */
  readonly ask: (question: Question) => Promise<Answer | Trouble | undefined>;
  /** Ends what runs. */
  readonly stop: () => void;
}

/**
 * A line of questions to a worker that starts with the first of them: while one is answered the newest waits, those between are left out.
 *
 * @param of.newWorker - Starts the worker; what it does is `answerLine`.
 * @param of.patience - A question that runs for longer than this gives way to a newer one; undefined: it always runs to its end. [ms]
 */
export function newestLine<Question, Answer>({
  newWorker,
  patience,
}: {
  readonly newWorker: () => LineWorker;
  readonly patience?: number;
}): Line<Question, Answer> {
  interface Waiting {
    readonly question: Question;
    readonly answer: (answer: Answer | Trouble | undefined) => void;
  }
  let worker: LineWorker | undefined;
  let number = 0;
  let running: Waiting | undefined;
  let next: Waiting | undefined;
  let impatient: ReturnType<typeof setTimeout> | undefined;

  const start = (asked: Waiting): void => {
    running = asked;
    next = undefined;
    number += 1;
    worker ??= started();
    worker.postMessage({ number, question: asked.question } satisfies Asked<Question>);
  };
  const started = (): LineWorker => {
    const made = newWorker();
    made.onmessage = ({ data }: MessageEvent<Told<Answer>>) => {
      if (data.number === number) done(data.answer);
    };
    made.onerror = (event) => {
      event.preventDefault();
      end();
      done({ tell: "trouble", sentence: event.message });
    };
    return made;
  };
  const done = (answer: Answer | Trouble | undefined): void => {
    clearTimeout(impatient);
    impatient = undefined;
    const asked = running;
    running = undefined;
    asked?.answer(answer);
    if (next) start(next);
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
        if (patience === undefined) return;
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
