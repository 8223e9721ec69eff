import { useEffect, useState } from "react";
import { sizeText } from "../texts/index.ts";
import { t } from "../texts/shelf.ts";

interface Told {
  readonly used: string;
  readonly most: string;
  readonly kept: boolean;
}

/** How much of this browser's storage is used, and whether the browser may clear it. Silent where the browser does not say. */
export function StorageTold({ about }: { readonly about: unknown }) {
  const [told, setTold] = useState<Told | undefined>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is used changes with the jobs.
  useEffect(() => {
    let gone = false;
    storage().then(
      (found) => {
        if (!gone) setTold(found);
      },
      () => undefined,
    );
    return () => {
      gone = true;
    };
  }, [about]);
  if (!told) return null;
  const { used, most } = told;
  return (
    <p className="hint home-storage">
      {told.kept ? t("shelf.storage.kept", { used, most }) : t("shelf.storage.may-go", { used, most })}
    </p>
  );
}

async function storage(): Promise<Told | undefined> {
  const { usage, quota } = await navigator.storage.estimate();
  if (usage === undefined || quota === undefined || quota === 0) return undefined;
  return { used: sizeText(usage), most: sizeText(quota), kept: await navigator.storage.persisted() };
}
