import { useSyncExternalStore } from "react";
import { remedyOf, sentenceOf } from "#engine";
import { Say } from "../fields/index.ts";
import type { StoredJob } from "../storage/index.ts";

/** Says so where changes are not kept on this device; silent where all is well. */
export function Kept({ stored }: { readonly stored: StoredJob }) {
  const code = useSyncExternalStore(stored.onSync, () => stored.trouble()?.code);
  const trouble = code === undefined ? undefined : stored.trouble();
  return trouble ? (
    <div className="trouble no-print">
      <Say severity="must" live>
        <p>{sentenceOf(trouble)}</p>
        <p className="hint">{remedyOf(trouble)}</p>
      </Say>
    </div>
  ) : null;
}
