import type { Problem } from "#engine";
import type { StepFile } from "./step-file.ts";

/** A record that refers to itself through others: a recursive reader would never come back from it. */
export function loopIn(file: StepFile): Problem | undefined {
  const { firstReference, references, indexOf, ids } = file;
  const state = new Uint8Array(ids.length);
  const path: number[] = [];
  const next = new Uint32Array(ids.length);
  for (let start = 0; start < ids.length; start++) {
    if (state[start] !== unseen) continue;
    path.push(start);
    state[start] = open;
    next[start] = firstReference[start]!;
    while (path.length > 0) {
      const at = path[path.length - 1]!;
      if (next[at]! >= firstReference[at + 1]!) {
        state[at] = done;
        path.pop();
        continue;
      }
      const target = indexOf.get(references[next[at]!++]!);
      if (target === undefined || state[target] === done) continue;
      if (state[target] === open)
        return {
          code: "ifc-loop",
          values: { id: ids[target]!, steps: path.length - 1 - path.indexOf(target) },
        };
      state[target] = open;
      next[target] = firstReference[target]!;
      path.push(target);
    }
  }
  return undefined;
}

const [unseen, open, done] = [0, 1, 2];
