import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { type Asked, type Line, type LineWorker, newestLine, type Told } from "./line.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** Workers that answer when they are told to. */
function workers() {
  const made: { asked: string[]; number: number; ended: boolean; worker: LineWorker }[] = [];
  const make = (): LineWorker => {
    const own = {
      asked: [] as string[],
      number: 0,
      ended: false,
      worker: {
        onmessage: null,
        onerror: null,
        postMessage: ({ number, question }: Asked<string>) => {
          own.asked.push(question);
          own.number = number;
        },
        terminate: () => {
          own.ended = true;
        },
      } as unknown as LineWorker,
    };
    made.push(own);
    return own.worker;
  };
  const answer = (index: number, sentence: string): void => {
    const { worker, number } = made[index]!;
    const data: Told<never> = { number, answer: { tell: "trouble", sentence } };
    worker.onmessage!.call(worker as Worker, { data } as MessageEvent<Told<never>>);
  };
  return { made, make, answer };
}
/** A line that gives way after a while. */
const impatient = (newWorker: () => LineWorker): Line<string, never> =>
  newestLine({ newWorker, patience: 400 });

test("of questions that wait the newest is asked, the others are told nothing", async () => {
  const { made, make, answer } = workers();
  const line = impatient(make);
  const [first, second, third] = ["a", "b", "c"].map((name) => line.ask(name));
  expect(await second).toBeUndefined();
  answer(0, "first");
  expect(await first).toMatchObject({ sentence: "first" });
  expect(made[0]!.asked).toEqual(["a", "c"]);
  answer(0, "third");
  expect(await third).toMatchObject({ sentence: "third" });
  expect(made).toHaveLength(1);
});

test("a question that runs on gives way to a newer one, in a fresh worker", async () => {
  const { made, make, answer } = workers();
  const line = impatient(make);
  const first = line.ask("a");
  vi.advanceTimersByTime(5000);
  expect(made[0]!.ended).toBe(false);
  const second = line.ask("b");
  vi.advanceTimersByTime(5000);
  expect(await first).toBeUndefined();
  expect([made[0]!.ended, made[1]!.asked]).toEqual([true, ["b"]]);
  answer(1, "second");
  expect(await second).toMatchObject({ sentence: "second" });
});

test("stopped, it ends the worker; the next question has another one", async () => {
  const { made, make } = workers();
  const line = impatient(make);
  const [first, second] = [line.ask("a"), line.ask("b")];
  line.stop();
  expect([await first, await second, made[0]!.ended]).toEqual([undefined, undefined, true]);
  void line.ask("c");
  expect(made[1]!.asked).toEqual(["c"]);
});

test("a worker that breaks says so", async () => {
  const { made, make } = workers();
  const answer = impatient(make).ask("a");
  const { worker } = made[0]!;
  worker.onerror!.call(
    worker as Worker,
    {
      message: "out of memory",
      preventDefault: () => {},
    } as ErrorEvent,
  );
  expect(await answer).toEqual({ tell: "trouble", sentence: "out of memory" });
});

test("without patience a question runs to its end, and its answer is still heard", async () => {
  const { made, make, answer } = workers();
  const line = newestLine<string, never>({ newWorker: make });
  const [first, second] = [line.ask("a"), line.ask("b")];
  vi.advanceTimersByTime(60_000);
  answer(0, "first");
  expect(await first).toMatchObject({ sentence: "first" });
  answer(0, "second");
  expect(await second).toMatchObject({ sentence: "second" });
  expect(made).toHaveLength(1);
});
