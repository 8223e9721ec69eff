import { useState } from "react";
import { Button } from "react-aria-components";
import type { JobSignature } from "#job";
import type { OpenJob } from "../contract.ts";
import { More, TextBox } from "../fields/index.ts";
import { momentOf } from "../site-test/local-time.ts";
import { setTester, useTester } from "../site-test/tester.ts";
import { dayText } from "../texts/index.ts";
import { t } from "../texts/sign.ts";
import { SignatureField, SignaturePicture } from "./signature-field.tsx";
import type { Strokes } from "./strokes.ts";
import "./sign.css";

interface SignaturesProps {
  readonly job: OpenJob;
  readonly purpose: "test" | "hand-over";
}

/** Who has signed, and a field for the next name. */
export function Signatures({ job, purpose }: SignaturesProps) {
  const own = job.kept.signatures.filter((one) => one.for === purpose);
  return (
    <section className="stack" aria-label={t(`sign.${purpose}`)}>
      <h3 className="sign-head">{t(`sign.${purpose}`)}</h3>
      {own.map((one) => (
        <Signed key={one.id} signature={one} />
      ))}
      {job.readOnly ? null : (
        <More word={t(own.length === 0 ? "sign.now" : "sign.again")}>
          <SignForm key={own.length} job={job} purpose={purpose} />
        </More>
      )}
    </section>
  );
}

const Signed = ({ signature: { strokes, name, role, time } }: { readonly signature: JobSignature }) => (
  <div>
    {strokes.length > 0 ? <SignaturePicture strokes={strokes} name={name} /> : null}
    <p className="hint">{[name, role, dayText(time.slice(0, 10))].filter(Boolean).join(" · ")}</p>
  </div>
);

function SignForm({ job, purpose }: SignaturesProps) {
  const tester = useTester();
  // Who tests signs the test; who receives it is somebody else.
  const [other, setOther] = useState({ name: "", role: "" });
  const { name, role } = purpose === "test" ? tester : other;
  const set = (change: Partial<typeof other>): void =>
    purpose === "test" ? setTester(change) : setOther((before) => ({ ...before, ...change }));
  const [strokes, setStrokes] = useState<Strokes>([]);
  const sign = (): void =>
    job.keep("sign.edit", [
      {
        do: "put",
        kind: "signatures",
        record: {
          id: job.newId("signatures"),
          ...momentOf(new Date()),
          name,
          role,
          for: purpose,
          strokes: strokes.map((stroke) => stroke.map(([x, y]): [number, number] => [x, y])),
        },
      },
    ]);
  return (
    <div className="stack">
      <div className="fields">
        <TextBox label={t("sign.name")} value={name} onChange={(next) => set({ name: next })} />
        <TextBox label={t("sign.role")} value={role} onChange={(next) => set({ role: next })} />
      </div>
      <SignatureField strokes={strokes} onChange={setStrokes} />
      <Button className="button button-first wide-button" isDisabled={name === ""} onPress={sign}>
        {t("sign.put")}
      </Button>
      <p className="hint">{t("sign.stands")}</p>
    </div>
  );
}
