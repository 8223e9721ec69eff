import { Button } from "react-aria-components";
import type { OpenJob } from "../../contract.ts";
import { More, Say } from "../../fields/index.ts";
import { t } from "../../texts/visit.ts";
import { BoardForm } from "./board-form.tsx";
import { CircuitForm } from "./circuit-form.tsx";
import { openPoints } from "./open-points.ts";

/** Boards and circuits as found. What nobody knows stays unknown, and is counted. */
export function Installation({ job }: { readonly job: OpenJob }) {
  const { boards, circuits } = job.kept;
  const open = openPoints(job);
  const add = (kind: "boards" | "circuits"): void => {
    const id = job.newId(kind);
    const only = boards.length === 1 ? boards[0]?.id : undefined;
    job.keep(
      "visit.edit.add",
      kind === "boards"
        ? [{ do: "put", kind, record: { id, name: t("visit.board.new", { number: boards.length + 1 }) } }]
        : [
            {
              do: "put",
              kind,
              record: {
                id,
                name: t("visit.circuit.new", { number: circuits.length + 1 }),
                ...(only === undefined ? {} : { board: only }),
              },
            },
          ],
    );
  };
  return (
    <section className="stack" aria-labelledby="visit-installation">
      <h3 id="visit-installation" className="visit-head">
        {t("visit.installation")}
      </h3>
      <Say severity="must">
        <p>{t("visit.caution")}</p>
        <More word={t("visit.caution.more")}>
          <p>{t("home.cautions.licensed")}</p>
          <p>{t("home.cautions.dead")}</p>
        </More>
      </Say>
      {boards.map((board) => (
        <BoardForm key={board.id} job={job} board={board} />
      ))}
      {circuits.map((circuit) => (
        <CircuitForm key={circuit.id} job={job} circuit={circuit} />
      ))}
      {job.readOnly ? null : (
        <div className="row">
          <Button className="button" onPress={() => add("boards")}>
            {t("visit.board.add")}
          </Button>
          <Button className="button" onPress={() => add("circuits")}>
            {t("visit.circuit.add")}
          </Button>
        </div>
      )}
      {open.length === 0 ? (
        <p>{t("visit.open.none")}</p>
      ) : (
        <More word={t("visit.open", { count: open.length })}>
          <ul className="visit-open">
            {open.map(({ of, word }) => (
              <li key={`${of?.id ?? ""} ${word}`}>
                {of
                  ? t("visit.open.of", { name: of.name || t(`visit.open.unnamed-${of.kind}`), what: t(word) })
                  : t(word)}
              </li>
            ))}
          </ul>
        </More>
      )}
    </section>
  );
}
