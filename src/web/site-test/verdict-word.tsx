import type { Verdict } from "#engine";
import { t } from "../texts/test.ts";

/** A verdict as a word with its shape, so that colour alone tells nothing. */
export function VerdictWord({
  verdict,
  why,
}: {
  readonly verdict: Verdict;
  readonly why?: string | undefined;
}) {
  return (
    <span className={`test-word test-word-${verdict}`} {...(why === undefined ? {} : { title: why })}>
      <svg viewBox="0 0 16 16" aria-hidden="true" className="test-shape">
        {verdict === "pass" ? (
          <path d="M3 8.5 6.5 12 13 4.5" />
        ) : verdict === "fail" ? (
          <path d="M4 4l8 8M12 4l-8 8" />
        ) : (
          <circle cx="8" cy="8" r="5" />
        )}
      </svg>
      {t(`test.verdict.${verdict}`)}
    </span>
  );
}
