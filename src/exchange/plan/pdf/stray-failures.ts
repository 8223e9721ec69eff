/** Failures that the package leaves lying about: on damaged files some of its promises are rejected with nobody listening. */
export interface StrayFailures {
  /** Rejects with the first of them; never resolves. */
  readonly first: Promise<never>;
  stop(): void;
}

interface World {
  readonly process?: {
    on?(event: string, hear: (reason: unknown) => void): void;
    off?(event: string, hear: (reason: unknown) => void): void;
  };
  addEventListener?(event: string, hear: (event: Rejection) => void): void;
  removeEventListener?(event: string, hear: (event: Rejection) => void): void;
}

interface Rejection {
  readonly reason: unknown;
  preventDefault(): void;
}

/**
 * Listens for failures of the package that nobody catches, which would end the process, or leave a reading waiting for an
 * answer that never comes. Failures of others stay what they are.
 */
export function strayFailures(): StrayFailures {
  const world = globalThis as unknown as World;
  let fail: (reason: unknown) => void = () => {};
  const first = new Promise<never>((_, reject) => {
    fail = reject;
  });
  first.catch(() => {});
  const inProcess = (reason: unknown): void => {
    if (!isOfPackage(reason)) throw reason;
    fail(reason);
  };
  const inBrowser = (event: Rejection): void => {
    if (!isOfPackage(event.reason)) return;
    event.preventDefault();
    fail(event.reason);
  };
  if (world.process?.on) world.process.on("unhandledRejection", inProcess);
  else world.addEventListener?.("unhandledrejection", inBrowser);
  return {
    first,
    stop: () => {
      if (world.process?.off) world.process.off("unhandledRejection", inProcess);
      else world.removeEventListener?.("unhandledrejection", inBrowser);
    },
  };
}

/** The package's own errors carry no stack of their own; the others that it throws come from its files. */
const isOfPackage = (reason: unknown): boolean =>
  reason instanceof Error && (!Object.hasOwn(reason, "stack") || /pdf/i.test(reason.stack ?? ""));
