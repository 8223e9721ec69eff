import { useState } from "react";
import { Button } from "react-aria-components";
import type { OpenJob } from "../contract.ts";
import { Say } from "../fields/index.ts";
import { t } from "../texts/eye.ts";

/** Prints the lens of a detector with its masks, at its true size. */
export function PrintTemplate({ job, device }: { readonly job: OpenJob; readonly device: string }) {
  const [trouble, setTrouble] = useState<string | undefined>();
  const print = () => {
    setTrouble(undefined);
    Promise.all([import("#output"), import("../shell/print.ts")])
      .then(([{ maskTemplates }, { printSheets }]) => {
        const sheets = maskTemplates({
          site: job.site,
          detectors: [device],
          job: job.site.name,
          date: job.details.date,
          revision: job.details.revision,
        });
        return printSheets(
          sheets.map((sheet, i) => sheet(i + 1, sheets.length)),
          job.site.name,
        );
      })
      .catch((cause: unknown) => setTrouble(cause instanceof Error ? cause.message : String(cause)));
  };
  return (
    <>
      <div>
        <Button className="button" onPress={print}>
          {t("eye.print")}
        </Button>
      </div>
      {trouble === undefined ? null : <Say severity="must">{t("eye.print.failed", { reason: trouble })}</Say>}
    </>
  );
}
