import { dayAnswer } from "./day-answer.ts";
import type { DayAnswer, DayQuestion } from "./day-protocol.ts";

/** Simulates days beside the screen: one question, one answer. */
addEventListener("message", ({ data }: MessageEvent<DayQuestion>) => {
  let answer: DayAnswer;
  try {
    answer = dayAnswer(data);
  } catch (trouble) {
    answer = { tell: "trouble", sentence: trouble instanceof Error ? trouble.message : String(trouble) };
  }
  postMessage(answer);
});
