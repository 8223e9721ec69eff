import { type CarePoint, type CareState, type Occasion, roomTitle } from "#engine";
import type { JobTestEntry } from "#job";
import type { OpenJob } from "../contract.ts";
import { nameOf } from "../plan/names.ts";
import { recordOf } from "../plan/pick.ts";
import { t } from "../texts/after.ts";
import { dayText, numberText } from "../texts/index.ts";

/** What a visit is called. */
export const visitTitle = ({ kind, due }: Occasion): string =>
  t(`after.visit.${kind}`, { year: due.slice(0, 4) });

/** What a point is called; those of the whole job with what they are about. */
export function pointTitle(job: OpenJob, { name, about }: CarePoint): string {
  const word = t(`after.point.${name}`);
  switch (about.kind) {
    case "circuit":
      return `${word} · ${job.kept.circuits.find(({ id }) => id === about.id)?.name || about.id}`;
    case "luminaire": {
      const room = recordOf(job.site, "luminaires", about.id)?.room ?? "";
      const where = roomTitle(recordOf(job.site, "rooms", room));
      return `${word} · ${nameOf(job.site, { kind: "luminaires", id: about.id })}, ${where}`;
    }
    case "detector":
      return `${word} · ${recordOf(job.site, "detectors", about.id)?.tag ?? about.id}`;
    default:
      return word;
  }
}

/** What was found before, and what is allowed. */
export function beforeWords({ result }: CarePoint): string {
  if (result.kind !== "reading") return "";
  const { stored, limit, unit } = result;
  const figure = (value: number): string => `${numberText(value)} ${unit}`;
  return [
    stored
      ? t("after.before", { value: figure(stored.value), day: dayText(stored.time.slice(0, 10)) })
      : t("after.before.none"),
    limit?.least !== undefined && limit.most !== undefined
      ? t("after.limit.between", { least: numberText(limit.least), most: figure(limit.most) })
      : limit?.most !== undefined
        ? t("after.limit.most", { most: figure(limit.most) })
        : "",
  ]
    .filter(Boolean)
    .join(" ");
}

/** What was entered, as one line; "" where nothing was. */
export function enteredWords({ point, entry, check, drifted }: CareState<JobTestEntry>): string {
  if (!entry) return "";
  const unit = point.result.kind === "reading" ? point.result.unit : "";
  const value = entry.value === undefined ? "" : `${numberText(entry.value)} ${unit}`.trim();
  const drift =
    drifted === undefined
      ? ""
      : t(drifted > 0 ? "after.drift.more" : "after.drift.less", {
          by: `${numberText(Math.abs(drifted))} ${unit}`,
        });
  const verdict =
    check.verdict === "fail" ? t("after.failed") : check.verdict === "pass" ? t("after.passed") : "";
  return [
    [verdict, value, entry.by ?? "", dayText(entry.time.slice(0, 10))].filter(Boolean).join(" · "),
    drift,
  ]
    .filter(Boolean)
    .join(". ");
}
