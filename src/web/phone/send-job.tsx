import { useState } from "react";
import { Button } from "react-aria-components";
import { jobFileName } from "#job";
import { saveFile } from "../fields/save-file.ts";
import { t } from "../texts/phone.ts";

const type = "application/zip";

/** The job as one file: handed to another program of the device where the browser can, else saved. */
export function SendJob({
  name,
  packed,
}: {
  readonly name: string;
  readonly packed: () => Promise<Uint8Array>;
}) {
  const [trouble, setTrouble] = useState<string | undefined>();
  const send = async (): Promise<void> => {
    setTrouble(undefined);
    const bytes = await packed();
    const file = new File([bytes as BlobPart], jobFileName(name, "zip"), { type });
    if (navigator.canShare?.({ files: [file] })) await navigator.share({ files: [file] });
    else saveFile({ name: file.name, text: bytes, type });
  };
  return (
    <>
      <Button
        className="button wide-button"
        onPress={() =>
          void send().catch((cause: unknown) => {
            // Whoever closes the list of programs meant it.
            if (!(cause instanceof DOMException && cause.name === "AbortError"))
              setTrouble(cause instanceof Error ? cause.message : String(cause));
          })
        }
      >
        {t("phone.file.send")}
      </Button>
      <p role="status" className="phone-said">
        {trouble === undefined ? "" : t("phone.not-sent", { reason: trouble })}
      </p>
    </>
  );
}
