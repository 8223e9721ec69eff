import { Button } from "react-aria-components";
import type { Opening, OpeningKind, Point } from "#engine";
import type { OpenJob } from "../contract.ts";
import { AngleField, Choice, LengthField, More, Pick } from "../fields/index.ts";
import { turnSteps } from "../plan/change.ts";
import { distance } from "../plan/shapes.ts";
import { t } from "../texts/index.ts";
import { setFields } from "./edits.ts";
import { Figures } from "./figures.tsx";

const kinds: readonly OpeningKind[] = ["door", "passage", "window", "glazing"];

export function OpeningCard({ job, opening }: { readonly job: OpenJob; readonly opening: Opening }) {
  const ref = { kind: "openings", id: opening.id } as const;
  const set = (fields: Partial<Opening>): void => setFields(job, ref, fields);
  const nameOf = (id: string | null): string => {
    const room = job.site.rooms.find((one) => one.id === id);
    return room ? `${room.number} ${room.name}`.trim() : t("card.opening.outside");
  };
  const width = distance(opening.from, opening.to);
  return (
    <div className="stack">
      <Pick
        label={t("card.kind")}
        value={opening.kind}
        options={kinds.map((kind) => ({ value: kind, word: t(`opening.${kind}`) }))}
        onChange={(kind) => set({ kind })}
      />
      <div className="fields">
        <LengthField
          label={t("card.width")}
          value={width}
          least={0.3}
          onChange={(next) => set(widened(opening, next))}
        />
        <LengthField
          label={t("card.opening.head")}
          value={opening.head}
          least={0.5}
          onChange={(head) => set({ head })}
        />
      </div>
      <Figures
        rows={[
          [t("card.opening.between"), nameOf(opening.rooms[0])],
          [t("card.opening.and"), nameOf(opening.rooms[1])],
        ]}
      />
      {opening.kind === "door" ? (
        <Button
          className="button wide-button"
          onPress={() => job.edit("plan.edit.turn", turnSteps(job.site, [ref], 0))}
        >
          {t("card.opening.hang")}
        </Button>
      ) : null}
      <More>
        <div className="stack">
          <div className="fields">
            <LengthField
              label={t("card.opening.sill")}
              value={opening.sill}
              least={0}
              onChange={(sill) => set({ sill })}
            />
            <LengthField
              label={t("card.opening.thickness")}
              value={opening.thickness}
              least={0.01}
              most={2}
              onChange={(thickness) => set({ thickness })}
            />
          </div>
          {opening.kind === "door" ? (
            <>
              <AngleField
                label={t("card.opening.angle")}
                value={opening.angle}
                onChange={(angle) => set({ angle })}
              />
              <Choice
                label={t("card.opening.state")}
                value={opening.state}
                options={[
                  { value: "closed", word: t("card.opening.closed") },
                  { value: "open", word: t("card.opening.open") },
                ]}
                onChange={(state) => set({ state })}
              />
              <p className="hint">{t("card.opening.state.hint")}</p>
            </>
          ) : null}
        </div>
      </More>
    </div>
  );
}

/** Wider or narrower about its middle. */
function widened({ from, to }: Opening, width: number): { readonly from: Point; readonly to: Point } {
  const now = distance(from, to) || 1;
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const half: Point = [((to[0] - from[0]) / now) * (width / 2), ((to[1] - from[1]) / now) * (width / 2)];
  return { from: [middle[0] - half[0], middle[1] - half[1]], to: [middle[0] + half[0], middle[1] + half[1]] };
}
