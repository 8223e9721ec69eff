import { type FaultCorrection, roomTitle, type Site } from "#engine";
import { nameOf } from "../plan/names.ts";
import { recordOf } from "../plan/pick.ts";
import { valueWord } from "../set/setting-words.ts";
import { type TextKey, t } from "../texts/faults.ts";
import { withinSentence } from "../texts/language.ts";
import { t as set } from "../texts/set.ts";

/** What mends a fault, as a sentence that can be recorded. */
export function correctionWords(site: Site, correction: FaultCorrection): string {
  const tag = (id: string | undefined): string => recordOf(site, "detectors", id ?? "")?.tag ?? "";
  switch (correction.kind) {
    case "mask":
      return "source" in correction
        ? t("fault.mend.mask-source", {
            device: tag(correction.device),
            source: withinSentence(nameOf(site, { kind: "interference", id: correction.source })),
          })
        : t("fault.mend.mask-room", {
            device: tag(correction.device),
            room:
              correction.room === null
                ? t("fault.outside")
                : roomTitle(recordOf(site, "rooms", correction.room)),
          });
    case "unmask":
    case "hang-as-planned":
      return t(`fault.mend.${correction.kind}`, { device: tag(correction.device) });
    case "set":
      return t("fault.mend.set", {
        device: tag(correction.device),
        setting: withinSentence(set(`set.name.${correction.setting}`)),
        value: valueWord(correction.setting, correction.value),
      });
    case "move-or-add":
      return t("fault.mend.move-or-add");
    case "take-away":
      return t("fault.mend.take-away", {
        what:
          correction.obstacle === undefined
            ? t("fault.something")
            : withinSentence(nameOf(site, { kind: "obstacles", id: correction.obstacle })),
      });
    case "keep-shut":
      return t("fault.mend.keep-shut");
    case "rewire":
      return t("fault.mend.rewire", { rule: correction.rule });
    case "replace":
    case "repair":
    case "fit":
      return t(`fault.mend.${correction.kind}.${correction.what}` as TextKey);
  }
}
