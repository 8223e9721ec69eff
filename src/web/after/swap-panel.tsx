import { useState } from "react";
import { Button } from "react-aria-components";
import { type Detector, roomTitle } from "#engine";
import type { OpenJob } from "../contract.ts";
import { More, Pick, Say, TextBox } from "../fields/index.ts";
import { recordOf } from "../plan/pick.ts";
import { useUnits } from "../settings/preferences.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { momentOf } from "../site-test/local-time.ts";
import { tester } from "../site-test/tester.ts";
import { t } from "../texts/after.ts";
import { dayText, lengthText } from "../texts/index.ts";
import { Caution } from "../wire/index.ts";
import { SwapRetest } from "./swap-retest.tsx";
import "../site-test/site-test.css";

export interface SwapPanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly device: string | undefined;
  readonly onClose: () => void;
}

/** A detector comes down and another goes up under the same tag: what is recorded, and what is to be tested again. */
export function SwapPanel({ job, store, device, onClose }: SwapPanelProps) {
  const { site } = job;
  const choose = (id: string): void => store.set({ panel: { kind: "swap", device: id } });
  const record = device === undefined ? undefined : recordOf(site, "detectors", device);
  return (
    <div className="stack test">
      <div className="row row-apart">
        <h2 className="panel-title">{t("after.swap")}</h2>
        <Button className="button button-quiet" onPress={onClose}>
          {t("after.back")}
        </Button>
      </div>
      <Pick
        label={t("after.swap.which")}
        value={record?.id ?? ""}
        options={[
          ...(record ? [] : [{ value: "", word: t("after.swap.choose") }]),
          ...site.detectors.map(({ id, tag, room }) => ({
            value: id,
            word: `${tag} · ${roomTitle(recordOf(site, "rooms", room))}`,
          })),
        ]}
        onChange={choose}
      />
      {record ? (
        <>
          {record.fitted === undefined ? null : <SwapRetest job={job} store={store} device={record} />}
          {job.readOnly ? null : record.fitted === undefined ? (
            <SwapForm job={job} store={store} device={record} />
          ) : (
            <More key={record.fitted} word={t("after.swap.again")}>
              <SwapForm job={job} store={store} device={record} />
            </More>
          )}
          <Past job={job} device={record.id} />
        </>
      ) : null}
    </div>
  );
}

interface SwapFormProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly device: Detector;
}

function SwapForm({ job, store, device }: SwapFormProps) {
  const units = useUnits();
  const { site } = job;
  const [model, setModel] = useState(device.model);
  const [serial, setSerial] = useState("");
  const [reason, setReason] = useState("");
  const title = (id: string): string => recordOf(site, "models", id)?.title || id;
  const mounting = recordOf(site, "models", model)?.mounting;
  const isOutside = mounting && (device.height < mounting.min || device.height > mounting.max);
  const swap = (): void => {
    const id = job.newId("swaps");
    const { name, role } = tester();
    job.editBoth("after.swap.edit", {
      site: [{ do: "set", kind: "detectors", id: device.id, fields: { model, fitted: id } }],
      kept: [
        {
          do: "put",
          kind: "swaps",
          record: {
            id,
            ...momentOf(new Date()),
            ...(name === "" ? {} : { by: name }),
            ...(role === "" ? {} : { role }),
            detector: device.id,
            tag: device.tag,
            from: title(device.model),
            to: title(model),
            reason,
            ...(serial === "" ? {} : { serial }),
          },
        },
      ],
    });
    store.set({ notice: t("after.swap.recorded", { tag: device.tag }) });
  };
  return (
    <section className="stack" aria-label={t("after.swap.new")}>
      <p className="hint">{t("after.swap.was", { model: title(device.model) })}</p>
      <Caution />
      <Pick
        label={t("after.swap.new")}
        value={model}
        options={site.models.map(({ id }) => ({ value: id, word: title(id) }))}
        onChange={setModel}
      />
      {isOutside ? (
        <Say severity="must" live>
          {t("after.swap.height", {
            tag: device.tag,
            height: lengthText(device.height, units),
            least: lengthText(mounting.min, units),
            most: lengthText(mounting.max, units),
          })}
        </Say>
      ) : null}
      {model !== device.model && device.masks.length > 0 ? (
        <Say severity="should">{t("after.swap.masks")}</Say>
      ) : null}
      <div className="fields">
        <TextBox label={t("after.swap.serial")} value={serial} onChange={setSerial} />
        <TextBox
          label={t("after.swap.reason")}
          value={reason}
          placeholder={t("after.swap.reason.example")}
          onChange={setReason}
        />
      </div>
      <Button className="button button-first wide-button" onPress={swap}>
        {t("after.swap.done", { tag: device.tag })}
      </Button>
    </section>
  );
}

/** What hung there before. */
function Past({ job, device }: { readonly job: OpenJob; readonly device: string }) {
  const swaps = job.kept.swaps.filter(({ detector }) => detector === device);
  if (swaps.length === 0) return null;
  return (
    <section aria-label={t("after.swap.past")}>
      <h3 className="test-stage">{t("after.swap.past")}</h3>
      <ul className="test-plain">
        {swaps.map(({ id, time, from, to, reason, serial, by }) => (
          <li key={id}>
            {t("after.swap.past.line", { date: dayText(time.slice(0, 10)), from, to })}
            <span className="hint test-of">{[reason, serial, by].filter(Boolean).join(" · ")}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
