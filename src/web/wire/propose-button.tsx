import { Button } from "react-aria-components";
import type { OpenJob } from "../contract.ts";
import { t } from "../texts/wire.ts";
import { circuitOf } from "./assign.ts";
import { mostLuminaires, proposeCircuits } from "./propose.ts";

/** Luminaires without a circuit: one sentence, one button. */
export function Propose({ job }: { readonly job: OpenJob }) {
  const { site, kept } = job;
  const lost = site.luminaires.filter(
    (one) => one.emergency === undefined && circuitOf(job, one) === undefined,
  );
  if (site.luminaires.length === 0)
    return kept.circuits.length > 0 ? null : <p>{t("wire.empty.no-luminaire")}</p>;
  if (lost.length === 0 || job.readOnly) return null;
  const propose = (): void => {
    const { site: edits, kept: steps } = proposeCircuits(job, {
      board: (number) => t("wire.board.name", { number }),
      circuit: (number) => t("wire.circuit.name", { number }),
    });
    job.editBoth("wire.edit.propose", { site: edits, kept: steps });
  };
  const first = kept.circuits.length === 0;
  return (
    <div className="stack">
      <p>{t(first ? "wire.empty" : "wire.lost", { count: lost.length, most: mostLuminaires })}</p>
      <Button className={first ? "button button-first wide-button" : "button wide-button"} onPress={propose}>
        {t("wire.propose", { count: lost.length })}
      </Button>
    </div>
  );
}
