import { useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import type { JobPhoto } from "#job";
import type { OpenJob } from "../../contract.ts";
import { Say, TextBox } from "../../fields/index.ts";
import { t } from "../../texts/survey.ts";
import { smallPicture } from "../drawings/picture-file.ts";
import "./photos.css";

interface PhotoShelfProps {
  readonly job: OpenJob;
  readonly photos: readonly JobPhoto[];
  readonly onAdd: (photos: readonly JobPhoto[]) => void;
  readonly onRemove: (photo: string) => void;
  /** What else can be done while no photograph is looked at. */
  readonly children?: React.ReactNode;
}

/** Photographs side by side; the one that is touched is shown large, with its caption and the way to remove it. */
export function PhotoShelf({ job, photos, onAdd, onRemove, children }: PhotoShelfProps) {
  const [chosen, setLarge] = useState<string | undefined>();
  const [sentences, setSentences] = useState<readonly string[]>([]);
  const large = photos.find(({ id }) => id === chosen);
  const add = async (files: FileList | null): Promise<void> => {
    const pictures = await Promise.all([...(files ?? [])].map(smallPicture));
    setSentences(pictures.flatMap((picture) => ("sentences" in picture ? picture.sentences : [])));
    const good = pictures.flatMap((picture): JobPhoto[] => {
      if ("sentences" in picture) return [];
      const { name: _, ...pixels } = picture;
      return [{ id: job.newId("photos"), ...pixels }];
    });
    if (good.length > 0) onAdd(good);
  };
  const caption = (id: string, text: string): void =>
    job.keep("photos.caption.edit", [
      { do: "set", kind: "photos", id, fields: { caption: text.trim() === "" ? undefined : text.trim() } },
    ]);
  return (
    <>
      {photos.length > 0 ? (
        <div className="photos">
          {photos.map((photo, index) => (
            <figure key={photo.id} data-large={large === photo || undefined}>
              <Button
                className="photo"
                aria-expanded={large === photo}
                onPress={() => setLarge(large === photo ? undefined : photo.id)}
              >
                <img
                  src={`data:${photo.type};base64,${photo.data}`}
                  alt={photo.caption ?? t("photos.number", { number: String(index + 1) })}
                />
              </Button>
              {photo.caption !== undefined && large !== photo ? (
                <figcaption className="hint">{photo.caption}</figcaption>
              ) : null}
            </figure>
          ))}
        </div>
      ) : null}
      {large === undefined ? null : (
        <TextBox
          key={large.id}
          label={t("photos.caption")}
          value={large.caption ?? ""}
          disabled={job.readOnly}
          onChange={(text) => caption(large.id, text)}
        />
      )}
      {sentences.length > 0 ? (
        <Say severity="must" live>
          {sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Say>
      ) : null}
      {job.readOnly ? null : (
        <div className="row">
          <FileTrigger
            acceptedFileTypes={["image/png", "image/jpeg"]}
            allowsMultiple
            onSelect={(files) => void add(files)}
          >
            <Button className="button">{t("photos.add")}</Button>
          </FileTrigger>
          {large === undefined ? (
            children
          ) : (
            <Button
              className="button"
              onPress={() => {
                onRemove(large.id);
                setLarge(undefined);
              }}
            >
              {t("photos.remove")}
            </Button>
          )}
        </div>
      )}
    </>
  );
}
