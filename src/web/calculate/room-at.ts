import type { JobUnderlay } from "#job";
import type { RoomAtAnswer, RoomAtQuestion, RoomOnDrawing } from "./room-at-protocol.ts";

/** Longer than this nobody waits for one room. [ms] */
const longest = 10_000;

/** Asks drawings for rooms beside the screen; the drawings stay there for the next question. */
export function roomAsker(): (
  underlays: readonly JobUnderlay[],
  question: Pick<RoomAtQuestion, "point" | "of">,
) => Promise<RoomOnDrawing | undefined> {
  let worker: Worker | undefined;
  let number = 0;
  const sent = new Map<JobUnderlay, string>();
  return (underlays, { point, of }) =>
    new Promise((found) => {
      worker ??= new Worker(new URL("./room-at-worker.ts", import.meta.url), {
        type: "module",
        name: "room-at",
      });
      const own = worker;
      const question: RoomAtQuestion = {
        number: ++number,
        point,
        of,
        drawings: underlays
          .filter(({ lines }) => lines !== "")
          .map((underlay) => {
            const key = sent.get(underlay);
            if (key !== undefined) return { key, drawing: undefined };
            const next = `${underlay.id} ${sent.size}`;
            sent.set(underlay, next);
            const { file, lines, origin, turn, layers } = underlay;
            return { key: next, drawing: { file, lines, origin, turn, layers } };
          }),
      };
      const end = (answer: RoomOnDrawing | undefined): void => {
        clearTimeout(hung);
        own.removeEventListener("message", listen);
        found(answer);
      };
      const hung = setTimeout(() => {
        // The next question begins afresh.
        own.terminate();
        worker = undefined;
        sent.clear();
        end(undefined);
      }, longest);
      const listen = ({ data }: MessageEvent<RoomAtAnswer>): void => {
        if (data.number === question.number) end(data.found);
      };
      own.addEventListener("message", listen);
      own.postMessage(question);
    });
}
