import { compareDayDelays, daySeconds, presenceOf, replayLoads, simulateDay } from "#engine";
import { type PresenceLog, readLog } from "#exchange";
import type { DayAnswer, DayLog, DayQuestion } from "./day-protocol.ts";

/** What the worker answers to a question about a simulated day. */
export function dayAnswer(question: DayQuestion): DayAnswer {
  switch (question.ask) {
    case "day":
      return { tell: "day", run: simulateDay(question.load, question.input) };
    case "delays": {
      const { load, input, beside, presence, longest } = question;
      const more = { ...(presence ? { presence } : {}), ...(longest === undefined ? {} : { longest }) };
      return { tell: "delays", delays: compareDayDelays(load, input, { beside, ...more }) };
    }
    case "replay": {
      const { load, log, still } = question;
      const { step, longestStep } = log;
      const rows = {
        times: Array.from(log.times),
        occupied: Array.from(log.occupied, (there) => there === 1),
        step,
        longestStep,
      };
      return { tell: "replay", replayed: replayLoads([load], rows, still)[0]! };
    }
    case "log": {
      const read = readLog(new TextDecoder().decode(question.bytes));
      return "problems" in read
        ? { tell: "refused", problems: read.problems }
        : { tell: "log", log: dayLog(read.log) };
    }
  }
}

function dayLog(log: PresenceLog): DayLog {
  const { times, occupied, step, longestStep, begins, timeOfDay, notes } = log;
  const stays = presenceOf(times, occupied, { longestStep, lastsFor: step }).map(([from, to]) => ({
    from: from + timeOfDay,
    to: to + timeOfDay,
    what: "somebody" as const,
  }));
  return {
    times: Float64Array.from(times),
    occupied: Uint8Array.from(occupied, (there) => (there ? 1 : 0)),
    step,
    longestStep,
    begins,
    timeOfDay,
    days: Math.floor((timeOfDay + (times.at(-1) ?? 0)) / daySeconds) + 1,
    stays,
    notes,
  };
}
