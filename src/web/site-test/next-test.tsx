import { Button } from "react-aria-components";
import { type FaultTest, faultTests, shippedFaultKnowledge } from "#engine";
import { type TextKey, t } from "../texts/faults.ts";
import { spoken } from "../texts/index.ts";
import { Caution } from "../wire/index.ts";

/** A test of a fault with its outcomes to touch. */
export function NextTest({
  heading,
  test,
  minutes,
  onOutcome,
}: {
  readonly heading: string;
  readonly test: FaultTest;
  readonly minutes: number;
  readonly onOutcome: (outcome: string) => void;
}) {
  const { instruction, where } = shippedFaultKnowledge.descriptions[test];
  return (
    <section className="stack test-station" aria-label={heading}>
      <p>
        <strong>{heading}</strong>
        <span className="hint test-of">
          {t(`fault.where.${where}`)} · {t("fault.minutes", { minutes })}
        </span>
      </p>
      {where === "opened" ? <Caution /> : null}
      <p>{spoken(instruction)}</p>
      <div className="fault-outcomes">
        {(faultTests[test] as readonly string[]).map((outcome) => (
          <Button key={outcome} className="button test-answer" onPress={() => onOutcome(outcome)}>
            {t(`fault.outcome.${outcome}` as TextKey)}
          </Button>
        ))}
      </div>
    </section>
  );
}
