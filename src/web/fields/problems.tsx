import { lazy, Suspense } from "react";
import type { Problem } from "#engine";

const ProblemWords = lazy(() =>
  import("./problem-words.tsx").then((part) => ({ default: part.ProblemWords })),
);

/** Problems in words. The catalogue of sentences is large: it comes into the page with the first problem. */
export const Problems = ({ of }: { readonly of: readonly Problem[] }) => (
  <Suspense>
    <ProblemWords of={of} />
  </Suspense>
);
