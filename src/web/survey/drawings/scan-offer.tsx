import { useEffect, useRef, useState } from "react";
import { Button } from "react-aria-components";
import type { ScannedPageOf } from "../../calculate/refused-file.ts";
import { scannedPage } from "../../calculate/scanned-page.ts";
import { FigureField, Running } from "../../fields/index.ts";
import { t } from "../../texts/scan.ts";

interface ScanOfferProps {
  readonly file: File;
  readonly scan: ScannedPageOf;
  readonly onPicture: (picture: File) => void;
  /** Something else comes first here. */
  readonly second?: boolean;
}

/** A plan that was scanned has no lines, or few: its page may lie under the plan as a picture instead. */
export function ScanOffer({ file, scan, onPicture, second = false }: ScanOfferProps) {
  const [page, setPage] = useState(scan.page);
  const [trouble, setTrouble] = useState<string | undefined>();
  const [running, setRunning] = useState<AbortController | undefined>();
  const last = useRef<AbortController | undefined>(undefined);
  useEffect(() => () => last.current?.abort(), []);
  const take = (): void => {
    const own = new AbortController();
    last.current = own;
    setRunning(own);
    setTrouble(undefined);
    scannedPage(file, { page, signal: own.signal })
      .then(onPicture, (cause: unknown) => {
        if (!own.signal.aborted) setTrouble(cause instanceof Error ? cause.message : String(cause));
      })
      .finally(() => setRunning(undefined));
  };
  if (running)
    return <Running doing={t("scan.making", { page })} share={undefined} onStop={() => running.abort()} />;
  return (
    <div className="stack">
      {scan.pages > 1 ? (
        <div className="fields">
          <FigureField
            label={t("scan.page", { pages: scan.pages })}
            value={page}
            onChange={setPage}
            when="typing"
            least={1}
            most={scan.pages}
            whole
          />
        </div>
      ) : null}
      <Button className={second ? "button" : "button button-first"} onPress={take}>
        {t("scan.take", { page })}
      </Button>
      {trouble === undefined ? null : (
        <p className="field-trouble" role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}
