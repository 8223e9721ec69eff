/** Columns by what they bring for their cost, where that may fall while they wait. */
export interface GreedyQueue {
  /** The column with the most score for its cost at the moment, of equals the first; -1: none is left that may be taken and has a score. */
  readonly next: (may: (column: number) => boolean) => number;
}

/**
 * A heap of columns whose scores may fall, and never rise, while it is in use: only the one on top is looked at again.
 *
 * @param columns - The columns that wait. @param by.score - Score of each column, as it is at the moment. @param by.costs - Costs.
 * @returns The queue.
 * @example Scores 6 and 4 at costs 2 and 1: the second first
 */
export function greedyQueue(
  columns: readonly number[],
  by: { readonly score: readonly number[]; readonly costs: readonly number[] },
): GreedyQueue {
  const { score, costs } = by;
  // What brings nothing at no cost would count as good as anything.
  const heap = columns.filter((column) => score[column]! > 0);
  const known = heap.map((column) => score[column]!);
  const before = (i: number, j: number): boolean => {
    const [a, b] = [heap[i]!, heap[j]!];
    const [one, other] = [known[i]! * costs[b]!, known[j]! * costs[a]!];
    return one > other || (one === other && a < b);
  };
  const swap = (i: number, j: number): void => {
    [heap[i], heap[j]] = [heap[j]!, heap[i]!];
    [known[i], known[j]] = [known[j]!, known[i]!];
  };
  const sink = (from: number): void => {
    for (let at = from; ; ) {
      let first = at;
      for (const child of [2 * at + 1, 2 * at + 2])
        if (child < heap.length && before(child, first)) first = child;
      if (first === at) return;
      swap(at, first);
      at = first;
    }
  };
  for (let at = (heap.length >> 1) - 1; at >= 0; at--) sink(at);
  const drop = (): void => {
    swap(0, heap.length - 1);
    heap.pop();
    known.pop();
    sink(0);
  };
  return {
    next: (may) => {
      while (heap.length > 0) {
        const top = heap[0]!;
        if (score[top] === 0 || !may(top)) drop();
        else if (known[0] !== score[top]) {
          known[0] = score[top]!;
          sink(0);
        } else {
          drop();
          return top;
        }
      }
      return -1;
    },
  };
}
