import { useEffect, useRef, useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import type { Calculations } from "../contract.ts";
import { Running, Say } from "../fields/index.ts";
import { t } from "../texts/hand-over.ts";
import type { GivenFile } from "./make-papers.ts";

interface ModelChoiceProps {
  readonly calculations: Pick<Calculations, "readModel">;
  readonly given: GivenFile | undefined;
  readonly onGiven: (file: GivenFile | undefined) => void;
}

type Reading =
  | { readonly on: "reading"; readonly name: string; readonly doing: string; readonly share: number }
  | { readonly on: "refused"; readonly name: string; readonly reason: string };

/** The building model that the devices are added to; without one a new model is written. */
export function ModelChoice({ calculations, given, onGiven }: ModelChoiceProps) {
  const [reading, setReading] = useState<Reading | undefined>();
  const stop = useRef<AbortController | undefined>(undefined);
  useEffect(() => () => stop.current?.abort(), []);
  const take = async (file: File): Promise<void> => {
    const { name } = file;
    stop.current?.abort();
    const now = new AbortController();
    stop.current = now;
    onGiven(undefined);
    setReading({ on: "reading", name, doing: "", share: 0 });
    try {
      const read = await calculations.readModel(file, {
        progress: (doing, share) => setReading({ on: "reading", name, doing, share }),
        signal: now.signal,
      });
      onGiven({ name, bytes: new Uint8Array(await file.arrayBuffer()), shift: read.shift });
      setReading(undefined);
    } catch (cause) {
      if (stop.current !== now) return;
      setReading(
        now.signal.aborted
          ? undefined
          : { on: "refused", name, reason: cause instanceof Error ? cause.message : String(cause) },
      );
    }
  };
  if (reading?.on === "reading")
    return (
      <Running
        doing={t("hand-over.model.reading", { file: reading.name })}
        share={reading.share}
        onStop={() => stop.current?.abort()}
      />
    );
  return (
    <div className="stack">
      <p className="hint">
        {given ? t("hand-over.model.given", { file: given.name }) : t("hand-over.model.what")}
      </p>
      {reading?.on === "refused" ? (
        <Say severity="must" live>
          <p>{t("hand-over.model.refused", { file: reading.name })}</p>
          <p className="hint">{reading.reason}</p>
        </Say>
      ) : null}
      {given ? (
        <Button className="button wide-button" onPress={() => onGiven(undefined)}>
          {t("hand-over.model.leave")}
        </Button>
      ) : (
        <FileTrigger
          acceptedFileTypes={[".ifc", ".ifczip"]}
          onSelect={(files) => {
            const file = files?.[0];
            if (file) void take(file);
          }}
        >
          <Button className="button wide-button">{t("hand-over.model.give")}</Button>
        </FileTrigger>
      )}
    </div>
  );
}
