import type { Contact, LoadKind, OutputKind } from "#engine";
import { Amount, Maybe, Tick, without } from "../fields/index.ts";
import { t } from "../texts/models.ts";
import { type SheetWiringProps, setIn } from "./sheet-parts.tsx";

const outputKinds: readonly OutputKind[] = ["switch", "two-level", "dimming-broadcast", "addressed-bus"];
const loads = [
  "led",
  "fluorescent",
  "incandescent",
  "resistive",
  "inductive",
] as const satisfies readonly LoadKind[];

/** The switched output as the data sheet declares it, in the units that stand on it. */
export function SheetElectrical({ draft, onChange }: SheetWiringProps) {
  const { rest } = draft;
  const set = setIn(onChange);
  const contact = rest.contact;
  const setContact = (part: { readonly [Name in keyof Contact]?: Contact[Name] | undefined }): void =>
    set(({ contact: now }) => {
      const { kind = "relay", rated = {}, ...others } = without({ ...now, ...part });
      const bare = Object.keys(rated).length === 0 && Object.keys(others).length === 0;
      return { contact: bare && part.kind === undefined ? undefined : { kind, rated, ...others } };
    });
  const figure = (
    name: Exclude<keyof Contact, "kind" | "rated" | "ratedPower" | "zeroCross">,
    how: { readonly unit?: string; readonly per?: number; readonly whole?: boolean },
  ) => (
    <Amount
      label={t(`models.contact.${name}`)}
      value={contact?.[name]}
      least={0}
      most={100_000_000}
      onChange={(value) => setContact({ [name]: value === 0 ? undefined : value })}
      {...how}
    />
  );
  return (
    <div className="fields fields-roomy">
      <Maybe
        label={t("models.contact.kind")}
        value={contact?.kind}
        options={(["relay", "potential-free", "electronic"] as const).map((value) => ({
          value,
          word: t(`models.contact.kind.${value}`),
        }))}
        onChange={(kind) => (kind === undefined ? set(() => ({ contact: undefined })) : setContact({ kind }))}
      />
      {loads.map((kind) => (
        <Amount
          key={kind}
          label={t(`models.contact.rated.${kind}`)}
          value={contact?.rated[kind]}
          unit="A"
          least={0.001}
          most={1000}
          onChange={(rated) => setContact({ rated: without({ ...contact?.rated, [kind]: rated }) })}
        />
      ))}
      <Amount
        label={t("models.contact.power.led")}
        value={contact?.ratedPower?.led}
        unit="W"
        least={0.1}
        most={1_000_000}
        onChange={(led) => setContact({ ratedPower: without({ ...contact?.ratedPower, led }) })}
      />
      {figure("makingPeak", { unit: "A" })}
      {figure("makingWidth", { unit: "µs", per: 1e-6 })}
      {figure("makingIntegral", { unit: "A²s" })}
      {figure("drivers", { whole: true })}
      {figure("capacitance", { unit: "µF", per: 1e-6 })}
      {figure("backUp", { unit: "A" })}
      {figure("joined", { whole: true })}
      {figure("openLeakage", { unit: "mA", per: 1e-3 })}
      {figure("life", { whole: true })}
      <fieldset className="plain-set field-wide">
        <legend className="field-label">{t("models.output")}</legend>
        {outputKinds.map((kind) => (
          <Tick
            key={kind}
            on={rest.outputKinds?.includes(kind) === true}
            onChange={(on) =>
              set(({ outputKinds: now = [] }) => ({
                outputKinds: on ? [...now, kind] : now.filter((other) => other !== kind),
              }))
            }
          >
            {t(`models.output.${kind}`)}
          </Tick>
        ))}
      </fieldset>
      <Maybe
        label={t("models.supply")}
        value={rest.supply}
        options={(["mains", "low-voltage"] as const).map((value) => ({
          value,
          word: t(`models.supply.${value}`),
        }))}
        onChange={(supply) => set(() => ({ supply }))}
      />
      {rest.supply === "low-voltage" ? (
        <Amount
          label={t("models.supply-current")}
          value={rest.supplyCurrent}
          per={1e-3}
          unit="mA"
          least={0.1}
          most={10_000}
          onChange={(supplyCurrent) => set(() => ({ supplyCurrent }))}
        />
      ) : null}
      <Maybe
        label={t("models.button")}
        value={rest.inputs === undefined ? undefined : (rest.inputs.pushButton ?? "none")}
        options={(["line", "neutral", "none"] as const).map((value) => ({
          value,
          word: t(`models.button.${value}`),
        }))}
        onChange={(button) =>
          set(({ inputs }) => {
            if (button === undefined) return { inputs: undefined };
            const { pushButton: _, ...others } = inputs ?? {};
            return { inputs: button === "none" ? others : { ...others, pushButton: button } };
          })
        }
      />
      <Maybe
        label={t("models.warm-up-output")}
        value={rest.warmUpOutput}
        options={(["on", "off"] as const).map((value) => ({
          value,
          word: t(`models.warm-up-output.${value}`),
        }))}
        onChange={(warmUpOutput) => set(() => ({ warmUpOutput }))}
      />
      <Amount
        label={t("models.standby")}
        value={rest.standby}
        unit="W"
        least={0}
        most={1000}
        onChange={(standby) => set(() => ({ standby }))}
      />
      <Amount
        label={t("models.leakage")}
        value={rest.leakage}
        per={1e-3}
        unit="mA"
        least={0}
        most={10_000}
        onChange={(leakage) => set(() => ({ leakage }))}
      />
      <Amount
        label={t("models.water")}
        value={rest.waterProtection}
        whole
        least={0}
        most={9}
        onChange={(waterProtection) => set(() => ({ waterProtection }))}
      />
    </div>
  );
}
