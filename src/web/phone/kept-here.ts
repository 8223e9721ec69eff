import { useEffect, useState } from "react";

/** Whether this device keeps the program for where there is no signal, or why not. */
export type KeptHere = "kept" | "not-secure" | "refused";

/** Longest wait for the browser to have the program whole: it loads it once the page stands. [ms] */
const patience = 8000;

/** Undefined until the browser said it. */
export function useKeptHere(): KeptHere | undefined {
  const [kept, setKept] = useState<KeptHere | undefined>();
  useEffect(() => {
    if (!globalThis.isSecureContext || !("serviceWorker" in navigator)) return setKept("not-secure");
    let gone = false;
    const say = (found: KeptHere): void => {
      if (!gone) setKept((known) => (known === "kept" ? known : found));
    };
    navigator.serviceWorker.ready.then(
      () => say("kept"),
      () => say("refused"),
    );
    const timer = setTimeout(() => say("refused"), patience);
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, []);
  return kept;
}
