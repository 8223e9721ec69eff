import type { OpenJob } from "../contract.ts";
import { isTrouble, type LineWorker, newestLine, type Trouble } from "./line.ts";

/** Keeps up with the open job: asks a worker again whenever something changed that its answer hangs on. */
export interface Follower {
  /** Asks for this state of the job, unless it is known or under way. @param whole - Or only for what is counted outside its stage. */
  readonly follow: (job: OpenJob, whole: boolean) => void;
  readonly stop: () => void;
}

/** How something follows from the open job. */
export interface Followed<Question> {
  readonly newWorker: () => LineWorker;
  /** As long as these are the same, so is the answer. */
  readonly parts: (job: OpenJob) => readonly unknown[];
  readonly question: (job: OpenJob, whole: boolean) => Question;
}

export type Heard<Known> = { readonly known: Known } | Trouble;

/** While one state is looked at the newest waits, those between are left out. */
export function follower<Question, Known extends object>(
  { newWorker, parts, question }: Followed<Question>,
  hear: (heard: Heard<Known>) => void,
): Follower {
  const line = newestLine<Question, Known>({ newWorker });
  let asked: { readonly parts: readonly unknown[]; readonly whole: boolean } | undefined;
  return {
    follow: (job, whole) => {
      const next = { parts: parts(job), whole };
      const known = asked?.parts.every((part, i) => part === next.parts[i]) && (asked.whole || !whole);
      if (known) return;
      asked = next;
      void line.ask(question(job, whole)).then((answer) => {
        if (answer) hear(isTrouble(answer) ? answer : { known: answer });
      });
    },
    stop: () => {
      asked = undefined;
      line.stop();
    },
  };
}
