import type { Calculated } from "../contract.ts";
import { usePart } from "../shell/workbench.ts";
import type { Calculator } from "./calculator.ts";

/** A part of what is known, kept up to date in a component; the component draws again only when that part changes. */
export const useCalculated = <P>(
  calculator: Pick<Calculator, "current" | "subscribe">,
  part: (known: Calculated) => P,
): P => usePart({ get: calculator.current, subscribe: calculator.subscribe }, part);
