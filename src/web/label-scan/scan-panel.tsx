import { useEffect, useRef, useState } from "react";
import { Button, FileTrigger, Form, Input, Label, TextField } from "react-aria-components";
import type { Detector } from "#engine";
import { roomTitle } from "#engine";
import { identityOf } from "#job";
import type { OpenJob } from "../contract.ts";
import { Say } from "../fields/index.ts";
import type { Actions } from "../shell/actions.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { t } from "../texts/label-scan.ts";
import { Camera } from "./camera.tsx";
import { codeReader } from "./code-reader.ts";
import { type Resolved, resolveCode, resolveTag } from "./resolve-label.ts";
import "./label-scan.css";

interface ScanPanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly actions: Actions;
  /** The id under which a job is kept here, by the identity that its labels carry. */
  readonly known: (identity: string) => Promise<string | undefined>;
  readonly onClose: () => void;
}

type Answer = Resolved | { readonly kind: "no-code"; readonly file: string };

/** A label leads to its detector: by the camera, by a picture, or by the tag that stands on it. All of it without a network. */
export function ScanPanel({ job, store, actions, known, onClose }: ScanPanelProps) {
  const [answer, setAnswer] = useState<Answer | undefined>();
  const [typed, setTyped] = useState("");
  const last = useRef<string | undefined>(undefined);
  const labelled = { identity: identityOf(job.id), site: job.site };
  const open = (device: Detector, notice?: string): void => {
    const room = job.site.rooms.find(({ id }) => id === device.room);
    if (room) actions.goTo(room.storey);
    store.set({
      stage: "test",
      panel: { kind: "thing" },
      selection: [{ kind: "detectors", id: device.id }],
      notice,
    });
    actions.lookAt(device.at);
  };
  const take = (found: Resolved): void => {
    if (found.kind !== "device" && found.kind !== "swapped") {
      setAnswer(found);
      return;
    }
    navigator.vibrate?.(60);
    open(
      found.device,
      found.kind === "swapped" ? t("label.found.swapped", { tag: found.device.tag }) : undefined,
    );
  };
  const takeText = (text: string): void => {
    // The camera reads the same code many times a second.
    if (text === last.current) return;
    last.current = text;
    take(resolveCode(text, labelled));
  };
  const takePicture = async (file: File): Promise<void> => {
    last.current = undefined;
    const picture = await createImageBitmap(file).catch(() => undefined);
    const [text] = picture ? await (await codeReader())(picture) : [];
    picture?.close();
    if (text === undefined) setAnswer({ kind: "no-code", file: file.name });
    else takeText(text);
  };
  return (
    <div className="stack label-scan">
      <div className="row row-apart">
        <h2 className="panel-title">{t("shell.panel.scan")}</h2>
        <Button className="button button-quiet" onPress={onClose}>
          {t("shell.close")}
        </Button>
      </div>
      <Camera onCode={takeText} />
      {answer ? <Said answer={answer} job={job} onOpen={open} known={known} /> : null}
      <FileTrigger
        acceptedFileTypes={["image/*"]}
        onSelect={(files) => {
          const file = files?.[0];
          if (file) void takePicture(file);
        }}
      >
        <Button className="button wide-button">{t("label.picture")}</Button>
      </FileTrigger>
      <Form
        className="label-typed"
        onSubmit={(event) => {
          event.preventDefault();
          last.current = undefined;
          take(resolveTag(typed, labelled));
        }}
      >
        <TextField className="field" value={typed} onChange={setTyped} autoComplete="off">
          <Label className="field-label">{t("label.tag")}</Label>
          <span className="field-box">
            <Input className="field-input" autoCapitalize="characters" enterKeyHint="go" />
          </span>
        </TextField>
        <Button className="button" type="submit">
          {t("label.open")}
        </Button>
      </Form>
    </div>
  );
}

interface SaidProps extends Pick<ScanPanelProps, "job" | "known"> {
  readonly answer: Answer;
  readonly onOpen: (device: Detector) => void;
}

/** Why a label leads nowhere yet. */
function Said({ answer, job, onOpen, known }: SaidProps) {
  switch (answer.kind) {
    case "several":
      return (
        <div className="stack" role="status">
          <p>{t("label.found.several")}</p>
          {answer.devices.map((device) => (
            <Button key={device.id} className="button wide-button" onPress={() => onOpen(device)}>
              {`${device.tag} · ${roomTitle(job.site.rooms.find(({ id }) => id === device.room))}`}
            </Button>
          ))}
        </div>
      );
    case "other-job":
      return (
        <Say severity="should" live>
          <p>{t("label.found.other-job", { tag: answer.tag })}</p>
          <OtherJob identity={answer.identity} known={known} />
        </Say>
      );
    case "gone":
    case "no-tag":
      return (
        <Say severity="should" live>
          <p>{t(`label.found.${answer.kind}`, { tag: answer.tag })}</p>
        </Say>
      );
    case "no-label":
      return (
        <Say severity="should" live>
          <p>{t("label.found.no-label", { text: answer.text.slice(0, 80) })}</p>
        </Say>
      );
    case "no-code":
      return (
        <Say severity="should" live>
          <p>{t("label.found.no-code", { file: answer.file })}</p>
        </Say>
      );
    case "device":
    case "swapped":
      return null;
  }
}

/** The way to the job that a label belongs to, where this device has it. */
function OtherJob({ identity, known }: Pick<ScanPanelProps, "known"> & { readonly identity: string }) {
  const [id, setId] = useState<string | undefined>();
  useEffect(() => {
    let gone = false;
    known(identity).then(
      (found) => {
        if (!gone) setId(found);
      },
      () => undefined,
    );
    return () => {
      gone = true;
    };
  }, [identity, known]);
  return id === undefined ? null : (
    <a href={`#/job/${encodeURIComponent(id)}`}>{t("label.found.other-job.open")}</a>
  );
}
