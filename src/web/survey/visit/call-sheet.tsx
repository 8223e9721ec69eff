import type { JobVisit } from "#job";
import type { OpenJob } from "../../contract.ts";
import { Choice, FigureField, More, Say, TextBox } from "../../fields/index.ts";
import { t } from "../../texts/visit.ts";
import { PhotoShelf } from "../photos/index.ts";
import { LongText } from "./long-text.tsx";
import { asbestosIsOpen } from "./open-points.ts";

type Fields = { readonly [Name in keyof JobVisit]?: JobVisit[Name] | undefined };

const setVisit =
  (job: OpenJob) =>
  (fields: Fields): void =>
    job.keep("visit.edit", [{ do: "visit", fields }]);

const orNone = (text: string): string | undefined => (text === "" ? undefined : text);

/** What one asks on the telephone: what is wrong, whom to ask for, how to get in. */
export function CallSheet({ job }: { readonly job: OpenJob }) {
  const { visit } = job.kept;
  const set = setVisit(job);
  return (
    <section className="stack" aria-labelledby="visit-call">
      <h3 id="visit-call" className="visit-head">
        {t("visit.call")}
      </h3>
      <LongText
        label={t("visit.complaint")}
        value={visit.complaint ?? ""}
        disabled={job.readOnly}
        onChange={(complaint) => set({ complaint: orNone(complaint) })}
      />
      <div className="fields">
        <TextBox
          label={t("visit.contact")}
          value={visit.contact ?? ""}
          disabled={job.readOnly}
          onChange={(contact) => set({ contact: orNone(contact) })}
        />
        <TextBox
          label={t("visit.access")}
          value={visit.access ?? ""}
          disabled={job.readOnly}
          onChange={(access) => set({ access: orNone(access) })}
        />
        <FigureField
          label={t("visit.year")}
          value={visit.yearBuilt}
          whole
          least={1000}
          most={3000}
          disabled={job.readOnly}
          onChange={(yearBuilt) => set({ yearBuilt })}
          onClear={() => set({ yearBuilt: undefined })}
        />
      </div>
      <div className="stack">
        <h4 className="field-label">{t("visit.photos")}</h4>
        <p className="hint">{t("visit.photos.hint")}</p>
        <PhotoShelf
          job={job}
          photos={job.kept.photos.filter(({ of }) => of === "visit")}
          onAdd={(photos) =>
            job.keep(
              "visit.photos.add",
              photos.map((photo) => ({ do: "put", kind: "photos", record: { ...photo, of: "visit" } })),
            )
          }
          onRemove={(id) => job.keep("visit.edit.remove", [{ do: "remove", kind: "photos", id }])}
        />
      </div>
    </section>
  );
}

const answers = ["unasked", "none", "seen", "not-seen"] as const;

/** The question that comes before the first hole. */
export function Asbestos({ job }: { readonly job: OpenJob }) {
  const { visit } = job.kept;
  const set = setVisit(job);
  const answer = visit.asbestosRegister ?? "unasked";
  return (
    <section className="stack" aria-labelledby="visit-asbestos">
      <h3 id="visit-asbestos" className="visit-head">
        {t("visit.asbestos")}
      </h3>
      <Choice
        label={t("visit.asbestos.register")}
        value={answer}
        options={answers.map((value) => ({ value, word: t(`visit.asbestos.${value}`) }))}
        onChange={(next) => {
          if (!job.readOnly) set({ asbestosRegister: next === "unasked" ? undefined : next });
        }}
      />
      {asbestosIsOpen(visit) ? (
        <Say severity="must">
          <p>{t("visit.asbestos.warning")}</p>
        </Say>
      ) : null}
      <More open={visit.asbestosRemark !== undefined}>
        <TextBox
          label={t("visit.asbestos.remark")}
          value={visit.asbestosRemark ?? ""}
          disabled={job.readOnly}
          onChange={(asbestosRemark) => set({ asbestosRemark: orNone(asbestosRemark) })}
        />
      </More>
    </section>
  );
}
