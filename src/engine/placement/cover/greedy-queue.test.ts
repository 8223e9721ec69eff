import fc from "fast-check";
import { expect, test } from "vitest";
import { greedyQueue } from "./greedy-queue.ts";

test("The queue gives what a look at all columns gives, while scores fall between", () => {
  const columns = fc.array(fc.record({ score: fc.nat(20), cost: fc.nat(5) }), {
    minLength: 1,
    maxLength: 30,
  });
  fc.assert(
    fc.property(columns, fc.array(fc.nat(6), { minLength: 30, maxLength: 30 }), (list, falls) => {
      const score = list.map((one) => one.score);
      const costs = list.map((one) => one.cost);
      const taken = new Set<number>();
      const may = (column: number): boolean => !taken.has(column);
      const queue = greedyQueue([...list.keys()], { score, costs });
      for (const fall of falls) {
        let best = -1;
        for (const column of list.keys())
          if (
            may(column) &&
            score[column] !== 0 &&
            (best < 0 || score[column]! * costs[best]! > score[best]! * costs[column]!)
          )
            best = column;
        expect(queue.next(may)).toBe(best);
        if (best < 0) return;
        taken.add(best);
        score.forEach((one, column) => {
          score[column] = Math.max(0, one - (column % (fall + 1)));
        });
      }
    }),
    { seed: 17, numRuns: 300 },
  );
});
