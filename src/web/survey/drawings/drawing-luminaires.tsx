import { useState } from "react";
import { Button } from "react-aria-components";
import type { LuminaireBlock } from "#exchange";
import type { JobUnderlay } from "#job";
import type { OpenJob } from "../../contract.ts";
import { FigureField, More, TextBox, Tick } from "../../fields/index.ts";
import { useUnits } from "../../settings/preferences.ts";
import { lengthText } from "../../texts/index.ts";
import { t } from "../../texts/survey.ts";
import { luminaireSteps, takenOf } from "./luminaire-steps.ts";
import "./drawing-luminaires.css";

interface DrawingLuminairesProps {
  readonly job: OpenJob;
  readonly underlay: JobUnderlay;
}

type Block = NonNullable<JobUnderlay["blocks"]>[number];

/** More is a mistake of the unit: watts, not milliwatts. [W] */
const mostPower = 5000;

/** A person says once which blocks of a drawing are luminaires, and they come into the rooms they lie in. */
export function DrawingLuminaires({ job, underlay }: DrawingLuminairesProps) {
  const { blocks = [] } = underlay;
  // By name: a drawing that is read again may have its blocks in another order.
  const [said, setSaid] = useState<Readonly<Record<string, LuminaireBlock>>>({});
  const chosen = Object.values(said).filter(({ name }) => blocks.some((block) => block.name === name));
  const taking = luminaireSteps(job.site, underlay, chosen);
  const say = (name: string, words: LuminaireBlock | undefined): void => {
    const { [name]: _, ...rest } = said;
    setSaid(words === undefined ? rest : { ...rest, [name]: words });
  };
  return (
    <More word={t("drawings.luminaires")}>
      <div className="stack">
        <p className="hint">{t("drawings.luminaires.how")}</p>
        <ul className="drawing-blocks" aria-label={t("drawings.luminaires")}>
          {blocks.map((block) => (
            <BlockRow
              key={block.name}
              block={block}
              said={said[block.name]}
              taken={takenOf(job.site, underlay, block.name)}
              readOnly={job.readOnly}
              onSay={(words) => say(block.name, words)}
            />
          ))}
        </ul>
        {chosen.length === 0 ? null : (
          <>
            <p className="hint" role="status">
              {[
                ...(taking.steps.length === 0 && taking.outside === 0
                  ? [t("drawings.luminaires.nothing")]
                  : []),
                ...(taking.outside > 0 ? [t("drawings.luminaires.outside", { count: taking.outside })] : []),
              ].join(" ")}
            </p>
            {taking.steps.length === 0 ? null : (
              <Button
                className="button button-first"
                isDisabled={job.readOnly}
                onPress={() => job.edit("drawings.luminaires.edit", taking.steps)}
              >
                {taking.added > 0
                  ? t("drawings.luminaires.take", { count: taking.added })
                  : t("drawings.luminaires.change")}
              </Button>
            )}
          </>
        )}
      </div>
    </More>
  );
}

interface BlockRowProps {
  readonly block: Block;
  readonly said: LuminaireBlock | undefined;
  readonly taken: number;
  readonly readOnly: boolean;
  readonly onSay: (words: LuminaireBlock | undefined) => void;
}

function BlockRow({ block: { name, lines, places }, said, taken, readOnly, onSay }: BlockRowProps) {
  const units = useUnits();
  const [first] = places;
  return (
    <li className="drawing-block">
      <div className="drawing-block-head">
        <BlockPicture lines={lines} />
        <Tick on={said !== undefined} onChange={(on) => onSay(on ? { name } : undefined)} disabled={readOnly}>
          {name}{" "}
          <span className="hint">
            {first && first.length > 0
              ? t("drawings.luminaires.size", {
                  count: places.length,
                  length: lengthText(first.length, units),
                  width: lengthText(first.width, units),
                })
              : t("drawings.luminaires.count", { count: places.length })}
            {taken > 0 ? ` · ${t("drawings.luminaires.there", { count: taken })}` : ""}
          </span>
        </Tick>
      </div>
      {said === undefined ? null : (
        <div className="fields">
          <TextBox
            label={t("drawings.luminaires.type")}
            value={said.type ?? ""}
            onChange={(type) => onSay(withWord(said, "type", type.trim() === "" ? undefined : type.trim()))}
          />
          <FigureField
            label={t("drawings.luminaires.power")}
            value={said.power}
            unit="W"
            least={0}
            most={mostPower}
            onChange={(power) => onSay(withWord(said, "power", power))}
            onClear={() => onSay(withWord(said, "power", undefined))}
          />
        </div>
      )}
    </li>
  );
}

function withWord<Key extends "type" | "power">(
  said: LuminaireBlock,
  key: Key,
  value: LuminaireBlock[Key] | undefined,
): LuminaireBlock {
  const { [key]: _, ...rest } = said;
  return (value === undefined ? rest : { ...rest, [key]: value }) as LuminaireBlock;
}

/** One of the blocks, as it is drawn. */
function BlockPicture({ lines }: { readonly lines: readonly number[] }) {
  let reach = 0;
  for (const value of lines) reach = Math.max(reach, Math.abs(value));
  if (reach === 0) return <span className="drawing-block-picture" />;
  const half = reach * 1.1;
  let path = "";
  for (let i = 0; i + 3 < lines.length; i += 4)
    path += `M${lines[i]} ${-lines[i + 1]!}L${lines[i + 2]} ${-lines[i + 3]!}`;
  return (
    <svg
      className="drawing-block-picture"
      viewBox={`${-half} ${-half} ${2 * half} ${2 * half}`}
      aria-hidden="true"
    >
      <path d={path} vectorEffect="non-scaling-stroke" />
    </svg>
  );
}
