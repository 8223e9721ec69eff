import { useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import type { Problem } from "#engine";
import type { JobDetails } from "#job";
import type { OpenJob } from "../contract.ts";
import { Problems, Say } from "../fields/index.ts";
import { t } from "../texts/wire.ts";
import { Amount, without } from "./amount.tsx";
import { rememberedPrices, rememberPrices } from "./remembered-prices.ts";

type Terms = NonNullable<JobDetails["quoteTerms"]>;
type Name = "priceList" | "acceptedQuote";

/** The firm's price list, the quote that was accepted, and the terms of this job: they travel with it, and its papers are priced by them. */
export function Prices({ job }: { readonly job: OpenJob }) {
  const { details } = job.file;
  const terms: Terms = details.quoteTerms ?? {};
  const disabled = job.readOnly;
  const set = (fields: { readonly [Field in keyof JobDetails]?: JobDetails[Field] | undefined }): void =>
    job.setDetails(fields as Partial<JobDetails>);
  const setTerm = (name: keyof Terms, value: number | undefined): void => {
    const next = without({ ...terms, [name]: value }) as Terms;
    set({ quoteTerms: Object.keys(next).length === 0 ? undefined : next });
  };
  return (
    <div className="stack">
      <p className="hint">{t("wire.prices.hint")}</p>
      <KeptFile job={job} name="priceList" onSet={set} />
      <KeptFile job={job} name="acceptedQuote" onSet={set} />
      <div className="fields">
        {(
          [
            ["hour", 1, details.currency ?? "", 1_000_000],
            ["overhead", 0.01, "%", 1000],
            ["tax", 0.01, "%", 1000],
            ["validity", 1, t("wire.prices.days"), 3650],
          ] as const
        ).map(([name, per, unit, most]) => (
          <Amount
            key={name}
            label={t(`wire.prices.${name}`)}
            value={terms[name]}
            per={per}
            {...(unit === "" ? {} : { unit })}
            least={name === "validity" ? 1 : 0}
            most={most}
            whole={name === "validity"}
            placeholder={t("wire.prices.of-list")}
            disabled={disabled}
            onChange={(value) => setTerm(name, value)}
          />
        ))}
      </div>
    </div>
  );
}

/** A file that the job keeps: opened, read before it is taken, and let go again. */
function KeptFile({
  job,
  name,
  onSet,
}: {
  readonly job: OpenJob;
  readonly name: Name;
  readonly onSet: (fields: { readonly [Field in Name]?: JobDetails[Field] | undefined }) => void;
}) {
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const known = job.file.details[name];
  const take = async (files: FileList | null): Promise<void> => {
    const file = files?.[0];
    if (!file) return;
    const text = await file.text();
    const { readAcceptedQuote, readPriceList } = await import("#exchange");
    const read = (name === "priceList" ? readPriceList : readAcceptedQuote)(text, file.name);
    if ("problems" in read) setProblems(read.problems);
    else {
      setProblems([]);
      onSet({ [name]: { file: file.name, text } });
      if (name === "priceList") rememberPrices({ file: file.name, text });
    }
  };
  const last = name === "priceList" && known === undefined ? rememberedPrices() : undefined;
  return (
    <div className="stack">
      <dl className="figures">
        <dt>{t(`wire.prices.${name}`)}</dt>
        <dd>{known === undefined ? t("wire.prices.none") : known.file}</dd>
      </dl>
      {job.readOnly ? null : (
        <div className="row">
          <FileTrigger acceptedFileTypes={[".csv", "text/csv"]} onSelect={(files) => void take(files)}>
            <Button className="button">{t(`wire.prices.${name}.open`)}</Button>
          </FileTrigger>
          {last === undefined ? null : (
            <Button className="button" onPress={() => onSet({ priceList: last })}>
              {t("wire.prices.last", { file: last.file })}
            </Button>
          )}
          {known === undefined ? null : (
            <Button className="button button-quiet" onPress={() => onSet({ [name]: undefined })}>
              {t(`wire.prices.${name}.remove`)}
            </Button>
          )}
        </div>
      )}
      {problems.length > 0 ? (
        <Say severity="must" live>
          <Problems of={problems.slice(0, 5)} />
        </Say>
      ) : null}
    </div>
  );
}
