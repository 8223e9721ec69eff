import { useRef, useState } from "react";
import { RefusedFile, type ScannedPageOf } from "../calculate/refused-file.ts";
import type { Calculations, ModelRead, PlanWish } from "../contract.ts";
import { t } from "../texts/index.ts";

/** A file on its way in. */
export type Reading =
  | {
      readonly state: "reading";
      readonly name: string;
      readonly doing: string;
      readonly share: number | undefined;
    }
  | {
      readonly state: "read";
      readonly name: string;
      readonly read: ModelRead;
      /** The file itself: a plan may be read again with other choices. */
      readonly file: File;
      readonly choice: PlanWish;
    }
  | {
      readonly state: "refused";
      readonly name: string;
      readonly sentences: readonly string[];
      /** A page of the file that may be taken as a picture. */
      readonly scan?: { readonly file: File; readonly page: ScannedPageOf };
    };

export interface ReadingWays {
  readonly reading: Reading | undefined;
  readonly read: (file: File, choice?: PlanWish) => Promise<void>;
  readonly refuse: (name: string, sentences: readonly string[]) => void;
  readonly stop: () => void;
  readonly drop: () => void;
}

/** Reads models and plans apart from the page, one at a time; a newer one stops the one before. */
export function useReading(calculations: Pick<Calculations, "readModel">): ReadingWays {
  const [reading, setReading] = useState<Reading | undefined>();
  const stop = useRef<AbortController | undefined>(undefined);
  const refuse = (name: string, sentences: readonly string[]): void =>
    setReading({ state: "refused", name, sentences });
  const read = async (file: File, choice: PlanWish = {}): Promise<void> => {
    stop.current?.abort();
    const own = new AbortController();
    stop.current = own;
    const { name } = file;
    try {
      if (!/\.(ifc|ifczip|dxf|pdf|svgz?)$/i.test(name)) return refuse(name, [t("home.model.other-kind")]);
      setReading({ state: "reading", name, doing: t("home.model.opening"), share: undefined });
      const found = await calculations.readModel(file, {
        progress: (doing, share) => {
          if (!own.signal.aborted) setReading({ state: "reading", name, doing, share });
        },
        signal: own.signal,
        choice,
      });
      if (!own.signal.aborted) setReading({ state: "read", name, read: found, file, choice });
    } catch (trouble) {
      if (own.signal.aborted) return setReading(undefined);
      const scan = trouble instanceof RefusedFile ? trouble.scan : undefined;
      setReading({
        state: "refused",
        name,
        sentences: [trouble instanceof Error ? trouble.message : String(trouble)],
        ...(scan && { scan: { file, page: scan } }),
      });
    }
  };
  return {
    reading,
    read,
    refuse,
    stop: () => stop.current?.abort(),
    drop: () => setReading(undefined),
  };
}
