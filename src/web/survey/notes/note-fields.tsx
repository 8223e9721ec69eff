import { useState } from "react";
import { Button, FileTrigger, Label, TextArea, TextField } from "react-aria-components";
import type { JobNote } from "#job";
import type { OpenJob } from "../../contract.ts";
import { Say } from "../../fields/index.ts";
import { t } from "../../texts/index.ts";
import { smallPicture } from "../drawings/picture-file.ts";

interface NoteFieldsProps {
  readonly job: OpenJob;
  readonly note: JobNote;
  readonly number: number;
  readonly placing: boolean;
  readonly onPlace: () => void;
}

/** One note: its words, its photographs, where it is pinned. */
export function NoteFields({ job, note, number, placing, onPlace }: NoteFieldsProps) {
  const [text, setText] = useState<string | undefined>();
  const [large, setLarge] = useState<string | undefined>();
  const [sentences, setSentences] = useState<readonly string[]>([]);
  const set = (fields: Partial<JobNote>): void =>
    job.keep("notes.change", [{ do: "set", kind: "notes", id: note.id, fields }]);
  const photos = note.photos.flatMap((id) => job.kept.photos.find((photo) => photo.id === id) ?? []);
  const add = async (files: FileList | null): Promise<void> => {
    const made: { readonly id: string; readonly file: File }[] = [...(files ?? [])].map((file) => ({
      id: job.newId("photos"),
      file,
    }));
    const pictures = await Promise.all(made.map(({ file }) => smallPicture(file)));
    setSentences(pictures.flatMap((picture) => ("sentences" in picture ? picture.sentences : [])));
    const good = made.flatMap(({ id }, index) => {
      const picture = pictures[index];
      if (!picture || "sentences" in picture) return [];
      const { name: _, ...pixels } = picture;
      return [{ id, ...pixels }];
    });
    if (good.length === 0) return;
    job.keep("notes.photo", [
      ...good.map((record) => ({ do: "put", kind: "photos", record }) as const),
      {
        do: "set",
        kind: "notes",
        id: note.id,
        fields: { photos: [...note.photos, ...good.map(({ id }) => id)] },
      },
    ]);
  };
  return (
    <section
      className="stack note"
      id={`note-${note.id}`}
      aria-label={t("notes.pin", { number: String(number) })}
    >
      <TextField
        className="field"
        value={text ?? note.text}
        onChange={setText}
        onBlur={() => {
          if (text !== undefined && text !== note.text) set({ text });
          setText(undefined);
        }}
        isDisabled={job.readOnly}
      >
        <Label className="field-label">{t("notes.text", { number: String(number) })}</Label>
        <TextArea className="field-input note-text" rows={3} />
      </TextField>
      {photos.length > 0 ? (
        <div className="note-photos">
          {photos.map((photo, index) => (
            <Button
              key={photo.id}
              className="note-photo"
              data-large={large === photo.id || undefined}
              aria-expanded={large === photo.id}
              onPress={() => setLarge(large === photo.id ? undefined : photo.id)}
            >
              <img
                src={`data:${photo.type};base64,${photo.data}`}
                alt={t("notes.photo.number", { number: String(index + 1) })}
              />
            </Button>
          ))}
        </div>
      ) : null}
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
            <Button className="button">{t("notes.photo.add")}</Button>
          </FileTrigger>
          <Button className="button" aria-pressed={placing} onPress={onPlace}>
            {t(placing ? "notes.place.now" : "notes.place")}
          </Button>
          {large === undefined ? (
            <Button
              className="button"
              onPress={() => job.keep("notes.remove", [{ do: "remove", kind: "notes", id: note.id }])}
            >
              {t("notes.remove")}
            </Button>
          ) : (
            <Button
              className="button"
              onPress={() => {
                job.keep("notes.photo.remove", [
                  { do: "remove", kind: "photos", id: large },
                  {
                    do: "set",
                    kind: "notes",
                    id: note.id,
                    fields: { photos: note.photos.filter((id) => id !== large) },
                  },
                ]);
                setLarge(undefined);
              }}
            >
              {t("notes.photo.remove")}
            </Button>
          )}
        </div>
      )}
    </section>
  );
}
