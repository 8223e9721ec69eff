import { useSyncExternalStore } from "react";
import { Problems, Say } from "../fields/index.ts";
import type { StoredJob } from "../storage/index.ts";
import { t } from "../texts/index.ts";

/** Says so where changes are not kept on this device, or wait for a server that is away; silent where all is well. */
export function Kept({ stored }: { readonly stored: StoredJob }) {
  const code = useSyncExternalStore(stored.onSync, () => stored.trouble()?.code);
  const sync = useSyncExternalStore(stored.onSync, stored.sync);
  const trouble = code === undefined ? undefined : stored.trouble();
  if (trouble)
    return (
      <div className="trouble no-print">
        <Say severity="must" live>
          <Problems of={[trouble]} />
        </Say>
      </div>
    );
  return (
    <div role="status">
      {sync === "away" ? <p className="standing no-print">{t("shell.sync.away")}</p> : null}
    </div>
  );
}

/** Where the changes of a job are, in a sentence. */
export function useStanding(stored: StoredJob): string {
  const code = useSyncExternalStore(stored.onSync, () => stored.trouble()?.code);
  const sync = useSyncExternalStore(stored.onSync, stored.sync);
  return code === undefined ? t(`shell.sync.${sync}`) : t("shell.sync.not-kept");
}
