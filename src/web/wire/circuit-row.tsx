import { Fragment, type ReactNode, useEffect, useRef } from "react";
import { Button, Disclosure, DisclosurePanel, Heading } from "react-aria-components";
import { type CircuitReview, english, type Finding } from "#engine";
import { SeverityShape } from "../fields/index.ts";
import { VerifyMark } from "../findings/evidence.tsx";
import { useUnits } from "../settings/preferences.ts";
import { inWords } from "../texts/told.ts";
import { t } from "../texts/wire.ts";
import { CheckRow } from "./check-row.tsx";
import { type CircuitVerdict, circuitVerdict } from "./circuit-verdict.ts";
import { amountText, dropCheckOf } from "./wire-figures.ts";

interface CircuitRowProps {
  readonly circuit: CircuitReview;
  readonly findings: readonly { readonly finding: Finding; readonly index: number }[];
  /** Breaker and cable were proposed, and nobody has looked. */
  readonly assumed: boolean;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
  readonly onFinding: (index: number) => void;
  /** What may be changed. */
  readonly children: ReactNode;
}

/** A circuit in two calm lines; opened: what is wrong, every check, what hangs on it, what may be changed. */
export function CircuitRow({
  circuit,
  findings,
  assumed,
  open,
  onOpen,
  onFinding,
  children,
}: CircuitRowProps) {
  const verdict = circuitVerdict(
    circuit,
    findings.map(({ finding }) => finding),
  );
  const own = useRef<HTMLDivElement>(null);
  // A row that opens without its own button was asked for from elsewhere: by a finding, or by a line on the plan.
  const pressed = useRef(false);
  useEffect(() => {
    if (open && !pressed.current) own.current?.scrollIntoView({ block: "start" });
    pressed.current = false;
  }, [open]);
  const wrong = findings.filter(({ finding }) => finding.severity !== "note");
  return (
    <Disclosure
      ref={own}
      className="wire-circuit"
      isExpanded={open}
      onExpandedChange={(next) => {
        pressed.current = next;
        onOpen(next);
      }}
    >
      <Heading level={4}>
        <Button slot="trigger" className="line-button wire-circuit-trigger">
          <svg viewBox="0 0 12 12" aria-hidden="true" className="more-sign">
            <path d="M4 2l4 4-4 4" />
          </svg>
          <span className="wire-circuit-name">
            {circuit.name} {assumed ? <VerifyMark /> : null}
          </span>
          <Word verdict={verdict} />
          <CircuitFigures circuit={circuit} />
        </Button>
      </Heading>
      <DisclosurePanel className="wire-circuit-panel">
        {open ? (
          <div className="stack">
            {wrong.length > 0 ? (
              <ul className="wire-wrong">
                {wrong.map(({ finding, index }) => (
                  <li key={`${finding.code} ${index}`}>
                    <Button className="line-button wire-wrong-line" onPress={() => onFinding(index)}>
                      <SeverityShape severity={finding.severity} />
                      <span>
                        <span className="unseen">{t(`severity.${finding.severity}`)} </span>
                        {inWords(finding).message}
                      </span>
                    </Button>
                  </li>
                ))}
              </ul>
            ) : null}
            {circuit.checks.length > 0 ? (
              <div>
                {circuit.checks.map((check, i) => (
                  // The same check may be made for several cables, so that their order tells them apart.
                  // biome-ignore lint/suspicious/noArrayIndexKey: checks have no name of their own
                  <CheckRow key={`${english(check.what)} ${i}`} check={check} />
                ))}
              </div>
            ) : null}
            {children}
          </div>
        ) : null}
      </DisclosurePanel>
    </Disclosure>
  );
}

const shapes = { fail: "must", should: "should", "not-proven": "note", pass: undefined } as const;

function Word({ verdict }: { readonly verdict: CircuitVerdict }) {
  const severity = shapes[verdict];
  return (
    <span className={`wire-word wire-word-${verdict}`}>
      {severity ? <SeverityShape severity={severity} /> : null}
      {verdict === "should" ? t("wire.verdict.should") : t(`findings.verdict.${verdict}`)}
    </span>
  );
}

/** Breaker, load, share of the rating, drop: in this order, what is unknown said so. */
function CircuitFigures({ circuit }: { readonly circuit: CircuitReview }) {
  const units = useUnits();
  const { breaker, rating, power, current, luminaires } = circuit;
  const drop = dropCheckOf(circuit)?.actual;
  const amperes = current === undefined ? undefined : amountText(current, "A", units);
  const parts = [
    breakerText(circuit),
    t("wire.circuit.luminaires", { count: luminaires }),
    ...(luminaires === 0
      ? []
      : power === undefined
        ? [t("wire.circuit.load-unknown")]
        : [
            amountText(power, "W", units),
            ...(amperes === undefined
              ? []
              : [
                  rating === undefined
                    ? amperes
                    : t("wire.circuit.of-rating", {
                        current: amperes,
                        rating: amountText(rating, "A", units),
                      }),
                ]),
          ]),
    ...(drop === undefined || luminaires === 0 || power === undefined
      ? []
      : [t("wire.circuit.drop", { drop: amountText(drop, "%", units) })]),
  ];
  return (
    <span className="wire-circuit-figures hint">
      {parts.map((part, i) => (
        <Fragment key={part}>
          {i > 0 ? " · " : ""}
          <span className="wire-figure">{part}</span>
        </Fragment>
      ))}
    </span>
  );

  function breakerText({ breaker: type }: CircuitReview): string {
    const size = rating === undefined ? "" : amountText(rating, "", units);
    if (type === "unknown") return rating === undefined ? t("wire.breaker.unknown") : `${size} A`;
    if (breaker === "fuse-gG") return t("wire.breaker.fuse", { rating: size });
    return `${type}${size}`;
  }
}
