import { useEffect, useRef, useState } from "react";
import { Button, Label, ProgressBar } from "react-aria-components";
import { DueList } from "../after/due-list.tsx";
import type { Calculations, OpenJob } from "../contract.ts";
import { Pick } from "../fields/index.ts";
import { saveFile } from "../fields/save-file.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { Signatures } from "../sign/index.ts";
import { type TextKey, t } from "../texts/hand-over.ts";
import { sizeText } from "../texts/index.ts";
import { type Language, languageNames, languages, spokenLanguage } from "../texts/language.ts";
import { type GivenFile, makePapers, type PaperProgress, type PapersUnderWay } from "./make-papers.ts";
import { ModelChoice } from "./model-choice.tsx";
import { RevisionsSection } from "./revisions-section.tsx";
import "./hand-over.css";

/** Papers that one may want by themselves, by the beginnings of the names of their files. */
const papers = [
  { key: "hand-over.paper.whole", only: ["handover."] },
  { key: "hand-over.paper.plans", only: ["plan-"] },
  { key: "hand-over.paper.setting-out", only: ["setting-out"] },
  { key: "hand-over.paper.wiring", only: ["wiring", "terminal", "cable", "box", "fitting"] },
  { key: "hand-over.paper.settings", only: ["setting-sheets.pdf"] },
  { key: "hand-over.paper.quote", only: ["quote", "variation", "materials", "price-list"] },
  { key: "hand-over.paper.labels", only: ["labels.pdf"] },
  { key: "hand-over.paper.cards", only: ["room-cards.pdf"] },
  { key: "hand-over.paper.schedules", only: ["schedules."] },
  { key: "hand-over.paper.model", only: ["building.ifc"] },
] as const satisfies readonly { readonly key: TextKey; readonly only: readonly string[] }[];

/** Stands for all storeys; no record has such an id. */
const whole = "";

interface Making {
  readonly what: TextKey;
  readonly step: PaperProgress | undefined;
}

interface HandOverPanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly calculations: Pick<Calculations, "readModel">;
}

/** What is handed over: the whole pack with one button, and each paper by itself. All of it is made on this device. */
export function HandOverPanel({ job, store, calculations }: HandOverPanelProps) {
  const [making, setMaking] = useState<Making | undefined>();
  const [said, setSaid] = useState<
    { readonly kind: "saved" | "trouble"; readonly text: string } | undefined
  >();
  const [storey, setStorey] = useState(whole);
  const storeys = job.site.storeys.filter(({ id }) => job.site.rooms.some((room) => room.storey === id));
  // A storey may be deleted while it is chosen.
  const chosen = storeys.find(({ id }) => id === storey);
  const [language, setLanguage] = useState<Language>(spokenLanguage);
  // The people in the rooms may read another language than the owner; until somebody says so they do not.
  const [cards, setCards] = useState<Language | undefined>();
  const [given, setGiven] = useState<GivenFile | undefined>();
  const underWay = useRef<PapersUnderWay | undefined>(undefined);
  useEffect(() => () => underWay.current?.stop(), []);

  const stop = (): void => {
    underWay.current?.stop();
    underWay.current = undefined;
    setMaking(undefined);
  };
  const make = (what: TextKey, only?: readonly string[]): void => {
    setSaid(undefined);
    setMaking({ what, step: undefined });
    const now = makePapers(job, {
      only,
      storey: chosen?.id,
      model: given,
      language,
      cards: cards ?? language,
      progress: (step) => setMaking({ what, step }),
    });
    underWay.current = now;
    now.made.then(
      ({ name, type, bytes }) => {
        saveFile({ name, text: bytes, type });
        stop();
        setSaid({ kind: "saved", text: t("hand-over.saved", { file: name, size: sizeText(bytes.length) }) });
      },
      (cause: unknown) => {
        stop();
        setSaid({
          kind: "trouble",
          text: t("hand-over.trouble", { reason: cause instanceof Error ? cause.message : String(cause) }),
        });
      },
    );
  };

  const empty = job.site.rooms.length === 0;
  return (
    <div className="stack hand-over">
      <h2 className="panel-title">{t("shell.panel.hand-over")}</h2>
      {empty ? (
        <p>{t("hand-over.empty")}</p>
      ) : making ? (
        <Progress making={making} onStop={stop} />
      ) : (
        <>
          <p className="hint">{t("hand-over.what")}</p>
          {storeys.length > 1 ? (
            <Pick
              label={t("hand-over.of")}
              value={chosen?.id ?? whole}
              options={[
                { value: whole, word: t("hand-over.of.whole") },
                ...storeys.map(({ id, name }) => ({ value: id, word: name || id })),
              ]}
              onChange={setStorey}
            />
          ) : null}
          {chosen ? <p className="hint">{t("hand-over.of.storey")}</p> : null}
          <Pick
            label={t("hand-over.language")}
            value={language}
            options={languages.map((value) => ({ value, word: languageNames[value] }))}
            onChange={setLanguage}
          />
          <Button className="button button-first wide-button" onPress={() => make("hand-over.make")}>
            {t("hand-over.make")}
          </Button>
        </>
      )}
      <p className={said?.kind === "trouble" ? "hand-over-said" : "hint hand-over-said"} role="status">
        {said?.text ?? ""}
      </p>
      {empty ? null : <RevisionsSection job={job} store={store} />}
      {empty ? null : <Signatures job={job} purpose="hand-over" />}
      {job.site.detectors.length === 0 ? null : <AfterSection job={job} store={store} />}
      {empty ? null : (
        <section aria-label={t("hand-over.single")}>
          <h3 className="hand-over-head">{t("hand-over.single")}</h3>
          <ul className="hand-over-papers">
            {papers
              .filter(({ key }) => !chosen || key !== "hand-over.paper.quote")
              .map(({ key, only }) => (
                <li key={key}>
                  <Button
                    className="button wide-button"
                    isDisabled={making !== undefined}
                    onPress={() => make(key, only)}
                  >
                    {t(key)}
                  </Button>
                </li>
              ))}
          </ul>
          <Pick
            label={t("hand-over.cards")}
            value={cards ?? language}
            options={languages.map((value) => ({ value, word: languageNames[value] }))}
            onChange={setCards}
          />
        </section>
      )}
      {empty ? null : (
        <section className="stack" aria-label={t("hand-over.model")}>
          <h3 className="hand-over-head">{t("hand-over.model")}</h3>
          <ModelChoice calculations={calculations} given={given} onGiven={setGiven} />
        </section>
      )}
    </div>
  );
}

/** What comes after: the doors to it. */
function AfterSection({ job, store }: { readonly job: OpenJob; readonly store: Store<Workbench> }) {
  return (
    <section className="stack" aria-label={t("hand-over.after")}>
      <h3 className="hand-over-head">{t("hand-over.after")}</h3>
      <DueList job={job} store={store} />
      <Button className="button wide-button" onPress={() => store.set({ panel: { kind: "call-back" } })}>
        {t("shell.panel.call-back")}
      </Button>
      <Button className="button wide-button" onPress={() => store.set({ panel: { kind: "swap" } })}>
        {t("shell.panel.swap")}
      </Button>
    </section>
  );
}

function Progress({ making, onStop }: { readonly making: Making; readonly onStop: () => void }) {
  const { step } = making;
  const share =
    step === undefined
      ? 0
      : step.tell === "checking"
        ? (0.3 * step.done) / step.total
        : 0.3 + 0.7 * step.share;
  const words =
    step === undefined
      ? t("hand-over.begins")
      : step.tell === "checking"
        ? t("hand-over.checking", { done: step.done, total: step.total })
        : t("hand-over.drawing", { file: step.file });
  return (
    <>
      <ProgressBar className="hand-over-progress" value={Math.round(100 * share)}>
        {({ percentage = 0 }) => (
          <>
            <Label>{words}</Label>
            <div className="hand-over-track">
              <div className="hand-over-done" style={{ inlineSize: `${percentage}%` }} />
            </div>
          </>
        )}
      </ProgressBar>
      <Button className="button wide-button" onPress={onStop}>
        {t("hand-over.stop")}
      </Button>
    </>
  );
}
