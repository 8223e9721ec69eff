import { type ReactNode, useEffect, useRef } from "react";

/** Heading of a view that takes the place of another one: the panel begins at it again, and the keyboard with it. */
export function ViewHead({ children }: { readonly children: ReactNode }) {
  const own = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    own.current?.focus({ preventScroll: true });
    own.current?.scrollIntoView({ block: "nearest" });
  }, []);
  return (
    <h2 ref={own} tabIndex={-1} className="models-title">
      {children}
    </h2>
  );
}
