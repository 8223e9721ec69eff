import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { dayLine, type LineWorker } from "./day-line.ts";
import type { DayAnswer, DayQuestion } from "./day-protocol.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** Workers that answer when they are told to. */
function workers() {
  const made: { asked: DayQuestion[]; ended: boolean; worker: LineWorker }[] = [];
  const make = (): LineWorker => {
    const own = {
      asked: [] as DayQuestion[],
      ended: false,
      worker: {
        onmessage: null,
        onerror: null,
        postMessage: (question: DayQuestion) => own.asked.push(question),
        terminate: () => {
          own.ended = true;
        },
      } as unknown as LineWorker,
    };
    made.push(own);
    return own.worker;
  };
  const answer = (index: number, sentence: string): void => {
    const data: DayAnswer = { tell: "trouble", sentence };
    made[index]!.worker.onmessage!.call(made[index]!.worker as Worker, { data } as MessageEvent<DayAnswer>);
  };
  return { made, make, answer };
}
const question = (name: string): DayQuestion => ({ ask: "log", bytes: name as unknown as ArrayBuffer });

test("of questions that wait the newest is asked, the others are told nothing", async () => {
  const { made, make, answer } = workers();
  const line = dayLine(make);
  const [first, second, third] = ["a", "b", "c"].map((name) => line.ask(question(name)));
  expect(await second).toBeUndefined();
  answer(0, "first");
  expect(await first).toMatchObject({ sentence: "first" });
  expect(made[0]!.asked).toEqual([question("a"), question("c")]);
  answer(0, "third");
  expect(await third).toMatchObject({ sentence: "third" });
  expect(made).toHaveLength(1);
});

test("a question that runs on gives way to a newer one, in a fresh worker", async () => {
  const { made, make, answer } = workers();
  const line = dayLine(make);
  const first = line.ask(question("a"));
  vi.advanceTimersByTime(5000);
  expect(made[0]!.ended).toBe(false);
  const second = line.ask(question("b"));
  vi.advanceTimersByTime(5000);
  expect(await first).toBeUndefined();
  expect([made[0]!.ended, made[1]!.asked]).toEqual([true, [question("b")]]);
  answer(1, "second");
  expect(await second).toMatchObject({ sentence: "second" });
});

test("stopped, it ends the worker; the next question has another one", async () => {
  const { made, make } = workers();
  const line = dayLine(make);
  const [first, second] = [line.ask(question("a")), line.ask(question("b"))];
  line.stop();
  expect([await first, await second, made[0]!.ended]).toEqual([undefined, undefined, true]);
  void line.ask(question("c"));
  expect(made[1]!.asked).toEqual([question("c")]);
});

test("a worker that breaks says so", async () => {
  const { made, make } = workers();
  const answer = dayLine(make).ask(question("a"));
  const { worker } = made[0]!;
  worker.onerror!.call(worker as Worker, { message: "out of memory" } as ErrorEvent);
  expect(await answer).toEqual({ tell: "trouble", sentence: "out of memory" });
});
