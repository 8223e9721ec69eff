import type { Calculated } from "../contract.ts";

/** What is known before anything was calculated: an older state than any of a job, the first of which is 0. */
export const nothingCalculated: Calculated = {
  revision: -1,
  busy: false,
  rooms: new Map(),
  zones: new Map(),
  findings: [],
  trouble: undefined,
};

/** What is known as soon as nothing is being calculated any more: paper must not leave out what is still on its way. */
export function whenSettled({
  current,
  subscribe,
}: {
  readonly current: () => Calculated;
  readonly subscribe: (listener: () => void) => () => void;
}): Promise<Calculated> {
  return new Promise((settle) => {
    if (!current().busy) return settle(current());
    const end = subscribe(() => {
      if (current().busy) return;
      end();
      settle(current());
    });
  });
}
