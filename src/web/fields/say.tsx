import { type ReactNode, useEffect, useRef } from "react";
import { Button, ProgressBar } from "react-aria-components";
import type { Severity } from "#engine";
import { t } from "../texts/index.ts";
import "./fields.css";

/** Severity as word, colour and shape: an octagon, a triangle, a ring. */
export function SeverityMark({ severity }: { readonly severity: Severity }) {
  return (
    <span className={`severity severity-${severity}`}>
      <SeverityShape severity={severity} />
      {t(`severity.${severity}`)}
    </span>
  );
}

/** The shape alone, where the word stands beside it anyway. */
export function SeverityShape({ severity }: { readonly severity: Severity }) {
  const shape = {
    must: "M5 1h6l4 4v6l-4 4H5l-4-4V5z",
    should: "M8 1.5 15 14H1z",
    note: "M8 2a6 6 0 1 1 0 12A6 6 0 0 1 8 2z",
  };
  return (
    <svg className={`severity-shape severity-${severity}`} viewBox="0 0 16 16" aria-hidden="true">
      <path d={shape[severity]} />
    </svg>
  );
}

interface SayProps {
  readonly severity: Severity;
  readonly children: ReactNode;
  /** Read out, and brought into view, when it appears. */
  readonly live?: boolean;
}

/** A sentence that needs attention, with its remedy. */
export function Say({ severity, children, live }: SayProps) {
  const own = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (live === true) own.current?.scrollIntoView({ block: "nearest" });
  }, [live]);
  return (
    <div
      ref={own}
      className={`say say-${severity}`}
      role={live === true ? (severity === "must" ? "alert" : "status") : undefined}
    >
      <SeverityShape severity={severity} />
      <div className="say-text">{children}</div>
    </div>
  );
}

interface RunningProps {
  /** What it is doing. */
  readonly doing: string;
  /** How far, 0 … 1; undefined: nobody knows. */
  readonly share: number | undefined;
  readonly onStop: () => void;
}

/** Long work: what, how far, and "stop". */
export function Running({ doing, share, onStop }: RunningProps) {
  return (
    <div className="running">
      <ProgressBar
        className="running-bar"
        aria-label={doing}
        isIndeterminate={share === undefined}
        value={(share ?? 0) * 100}
      >
        {({ percentage }) => (
          <>
            <span className="running-doing">{doing}</span>
            <span className="running-track">
              <span
                className={share === undefined ? "running-fill running-unknown" : "running-fill"}
                {...(share === undefined ? {} : { style: { inlineSize: `${percentage ?? 0}%` } })}
              />
            </span>
          </>
        )}
      </ProgressBar>
      <Button className="button" onPress={onStop}>
        {t("fields.stop")}
      </Button>
    </div>
  );
}
