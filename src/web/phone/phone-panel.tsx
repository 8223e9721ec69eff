import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import type { OpenJob } from "../contract.ts";
import { Say } from "../fields/index.ts";
import { t } from "../texts/phone.ts";
import { BackFromPhone, type ReadCopy } from "./back-from-phone.tsx";
import { useKeptHere } from "./kept-here.ts";
import { type Pairing, pairingOf } from "./pairing.ts";
import { QrPicture } from "./qr-picture.tsx";
import { SendJob } from "./send-job.tsx";
import "./phone.css";

interface PhonePanelProps {
  readonly job: OpenJob;
  /** The whole job, packed with its pictures and history. */
  readonly packed: () => Promise<Uint8Array>;
  readonly readCopy: ReadCopy;
  readonly onClose: () => void;
}

/** The job on a phone, by the network or as a file, and what comes back from there. */
export function PhonePanel({ job, packed, readCopy, onClose }: PhonePanelProps) {
  return (
    <div className="stack phone">
      <div className="row row-apart">
        <h2 className="panel-title">{t("shell.panel.phone")}</h2>
        <Button className="button button-quiet" onPress={onClose}>
          {t("shell.close")}
        </Button>
      </div>
      <ByNetwork job={job.id} />
      <section className="stack" aria-label={t("phone.file")}>
        <h3 className="phone-head">{t("phone.file")}</h3>
        <p className="hint">{t("phone.file.what")}</p>
        <SendJob name={job.site.name} packed={packed} />
      </section>
      <BackFromPhone job={job.id} readCopy={readCopy} />
    </div>
  );
}

function ByNetwork({ job }: { readonly job: string }) {
  const [pairing, setPairing] = useState<Pairing | undefined>();
  const kept = useKeptHere();
  useEffect(() => {
    let gone = false;
    void pairingOf(job, { page: location.href, fetch: fetch.bind(globalThis) }).then((found) => {
      if (!gone) setPairing(found);
    });
    return () => {
      gone = true;
    };
  }, [job]);
  return (
    <section className="stack" aria-label={t("phone.network")}>
      <h3 className="phone-head">{t("phone.network")}</h3>
      {pairing ? <Way pairing={pairing} /> : <p className="hint">{t("phone.network.looking")}</p>}
      {kept === undefined ? null : kept === "kept" ? (
        <p className="hint">{t("phone.here.kept")}</p>
      ) : (
        <Say severity="should">
          <p>{t(`phone.here.${kept}`)}</p>
        </Say>
      )}
    </section>
  );
}

function Way({ pairing }: { readonly pairing: Pairing }) {
  switch (pairing.way) {
    case "server":
    case "host":
      return (
        <>
          <QrPicture text={pairing.address} label={t("phone.code")} />
          <p className="phone-address">{pairing.address}</p>
          <p>{t("phone.network.scan")}</p>
          <p className="hint">{t(pairing.way === "server" ? "phone.network.secret" : "phone.network.app")}</p>
        </>
      );
    case "start":
      return (
        <>
          <p>{t("phone.network.start")}</p>
          <p className="phone-address">{pairing.command}</p>
          <p className="hint">{t("phone.network.steps")}</p>
        </>
      );
    case "plain":
      return (
        <Say severity="should">
          <p>{t("phone.network.plain")}</p>
        </Say>
      );
    case "away":
      return <p>{t("phone.network.not-found")}</p>;
  }
}
