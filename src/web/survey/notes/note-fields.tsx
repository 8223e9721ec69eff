import { useState } from "react";
import { Button, Label, TextArea, TextField } from "react-aria-components";
import type { JobNote, JobPhoto } from "#job";
import type { OpenJob } from "../../contract.ts";
import { t } from "../../texts/index.ts";
import { PhotoShelf } from "../photos/index.ts";

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
  const setOf = (fields: Partial<JobNote>) => ({ do: "set", kind: "notes", id: note.id, fields }) as const;
  const photos = note.photos.flatMap((id) => job.kept.photos.find((photo) => photo.id === id) ?? []);
  const add = (made: readonly JobPhoto[]): void =>
    job.keep("notes.photo", [
      ...made.map((record) => ({ do: "put", kind: "photos", record }) as const),
      setOf({ photos: [...note.photos, ...made.map(({ id }) => id)] }),
    ]);
  const remove = (photo: string): void =>
    job.keep("notes.photo.remove", [
      { do: "remove", kind: "photos", id: photo },
      setOf({ photos: note.photos.filter((id) => id !== photo) }),
    ]);
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
          if (text !== undefined && text !== note.text) job.keep("notes.change", [setOf({ text })]);
          setText(undefined);
        }}
        isDisabled={job.readOnly}
      >
        <Label className="field-label">{t("notes.text", { number: String(number) })}</Label>
        <TextArea className="field-input note-text" rows={3} />
      </TextField>
      <PhotoShelf job={job} photos={photos} onAdd={add} onRemove={remove}>
        <Button className="button" aria-pressed={placing} onPress={onPlace}>
          {t(placing ? "notes.place.now" : "notes.place")}
        </Button>
        <Button
          className="button"
          onPress={() => job.keep("notes.remove", [{ do: "remove", kind: "notes", id: note.id }])}
        >
          {t("notes.remove")}
        </Button>
      </PhotoShelf>
    </section>
  );
}
