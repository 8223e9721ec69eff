import { Button } from "react-aria-components";
import { roomTitle } from "#engine";
import type { JobOpenPoint } from "#job";
import type { OpenJob } from "../contract.ts";
import { More, TextBox } from "../fields/index.ts";
import { recordOf } from "../plan/pick.ts";
import { dayText } from "../texts/index.ts";
import { t } from "../texts/test.ts";
import { localDay } from "./local-time.ts";

/** What is still to be done, with who owes it and until when. */
export function OpenPoints({ job }: { readonly job: OpenJob }) {
  const { openPoints } = job.kept;
  const set = (
    id: string,
    fields: { readonly [Name in keyof JobOpenPoint]?: JobOpenPoint[Name] | undefined },
  ): void => job.keep("test.edit.point", [{ do: "set", kind: "openPoints", id, fields }]);
  const today = localDay(new Date());
  const open = openPoints.filter(({ closed }) => closed === undefined);
  return (
    <section aria-label={t("test.points")} className="stack">
      <h3 className="test-stage">
        {t("test.points")}
        {open.length > 0 ? ` (${open.length})` : ""}
      </h3>
      {[...open, ...openPoints.filter(({ closed }) => closed !== undefined)].map((point) => (
        <div key={point.id} className="test-point-row">
          <p className={point.closed === undefined ? "" : "test-part-behind"}>
            {point.text || "–"}
            <span className="hint test-of">
              {[
                point.room === undefined ? "" : roomTitle(recordOf(job.site, "rooms", point.room)),
                point.owner ?? "",
                dayText(point.due ?? ""),
              ]
                .filter((word) => word !== "")
                .join(" · ")}
            </span>
          </p>
          {job.readOnly ? null : (
            <>
              <Button
                className="button"
                onPress={() => set(point.id, { closed: point.closed === undefined ? today : undefined })}
              >
                {t(point.closed === undefined ? "test.point.close" : "test.point.again")}
              </Button>
              <More open={point.text === ""}>
                <div className="fields">
                  <TextBox
                    label={t("test.point.text")}
                    value={point.text}
                    onChange={(text) => set(point.id, { text })}
                    wide
                  />
                  <TextBox
                    label={t("test.point.owner")}
                    value={point.owner ?? ""}
                    onChange={(owner) => set(point.id, { owner })}
                  />
                  <TextBox
                    label={t("test.point.due")}
                    value={point.due ?? ""}
                    placeholder="2026-12-31"
                    onChange={(due) => set(point.id, { due })}
                  />
                  <Button
                    className="button"
                    onPress={() =>
                      job.keep("test.edit.point", [{ do: "remove", kind: "openPoints", id: point.id }])
                    }
                  >
                    {t("test.remove")}
                  </Button>
                </div>
              </More>
            </>
          )}
        </div>
      ))}
      {job.readOnly ? null : (
        <Button
          className="button wide-button"
          onPress={() =>
            job.keep("test.edit.point", [
              {
                do: "put",
                kind: "openPoints",
                record: { id: job.newId("openPoints"), text: "", photos: [] },
              },
            ])
          }
        >
          {t("test.point.add")}
        </Button>
      )}
    </section>
  );
}
