import type { DxfLimits } from "../dxf/limits.ts";
import { readDxf } from "../dxf/read-dxf.ts";
import type { DxfResult } from "../dxf/report.ts";
import type { PlanLimits } from "../plan/limits.ts";
import { looksLike } from "../plan/looks-like.ts";
import { readPdf } from "../plan/pdf/read-pdf.ts";
import type { PlanResult } from "../plan/report.ts";
import { readSvg } from "../plan/svg/read-svg.ts";
import { planKind } from "./plan-kind.ts";

/** Lines and report of a plan of any kind, or the problems that stopped the reading. */
export type AnyPlanResult = PlanResult | DxfResult;

/** A plan to be read. */
export interface PlanTask {
  readonly bytes: Uint8Array;
  readonly fileName: string;
  readonly limits: Partial<PlanLimits & DxfLimits>;
  /** From 1, where the file has pages. Absent: the first. */
  readonly page?: number;
}

/** Reads a plan with the reader of its kind. */
export async function readPlan(
  { bytes, fileName, limits, page }: PlanTask,
  progress: (step: string, share: number) => void,
): Promise<AnyPlanResult> {
  const common = { fileName, limits, progress };
  const kind = planKind({ name: fileName, bytes });
  switch (kind) {
    case "dxf":
      return readDxf(bytes, common);
    case "pdf":
      return readPdf(bytes, { ...common, ...(page === undefined ? {} : { page }) });
    case "svg":
      return readSvg(bytes, common);
    case undefined:
      if (bytes.length === 0) return { problems: [{ code: "file-empty", values: {} }] };
      return { problems: [{ code: "plan-kind-unknown", values: { found: looksLike(bytes) } }] };
  }
}
