import type { Asked, Told, Trouble } from "./line.ts";

/** The other end of a line, in its worker: one question, one answer; what is thrown is told as trouble. */
export function answerLine<Question, Answer>(answerOf: (question: Question) => Answer): void {
  addEventListener("message", ({ data: { number, question } }: MessageEvent<Asked<Question>>) => {
    let answer: Answer | Trouble;
    try {
      answer = answerOf(question);
    } catch (trouble) {
      answer = { tell: "trouble", sentence: trouble instanceof Error ? trouble.message : String(trouble) };
    }
    postMessage({ number, answer } satisfies Told<Answer>);
  });
}
