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
    // The page carries the drawing of papers only when somebody prints.
    import("../shell/print.ts")
      .then(({ printTemplate }) => printTemplate(job, device))
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
