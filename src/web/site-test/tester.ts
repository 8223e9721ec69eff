import { useSyncExternalStore } from "react";

/** Who tests, as it is written beside every entry; kept in this browser, for the next job too. */
export interface Tester {
  readonly name: string;
  readonly role: string;
}

const storageKey = "roomwake.tester";
const nobody: Tester = { name: "", role: "" };
const listeners = new Set<() => void>();
let current: Tester | undefined;

/** Who tests; nobody where nothing was entered, or what was kept cannot be read. */
export function tester(): Tester {
  current ??= read();
  return current;
}

export function setTester(change: Partial<Tester>): void {
  current = { ...tester(), ...change };
  try {
    localStorage.setItem(storageKey, JSON.stringify(current));
  } catch {
    // Private windows may refuse storage: the name then lasts as long as the page.
  }
  for (const listener of listeners) listener();
}

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export const useTester = (): Tester => useSyncExternalStore(subscribe, tester, () => nobody);

function read(): Tester {
  try {
    return testerIn(localStorage.getItem(storageKey));
  } catch {
    return nobody;
  }
}

/** A tester out of stored text. @example testerIn("{}") is nobody */
export function testerIn(stored: string | null): Tester {
  try {
    const { name, role } = JSON.parse(stored ?? "{}") as Partial<Record<keyof Tester, unknown>>;
    return { name: typeof name === "string" ? name : "", role: typeof role === "string" ? role : "" };
  } catch {
    return nobody;
  }
}
