import type { Calculated, OpenJob } from "../contract.ts";

export async function printStorey(_of: {
  readonly job: OpenJob;
  readonly storey: string;
  readonly calculated: Calculated;
}): Promise<void> {
  globalThis.print();
}
