import { type Language, type Spoken, take } from "./language.ts";

/** English is in the pages themselves; each other language is one file, loaded where it is spoken. */
const loaders: Readonly<Record<Exclude<Language, "en">, () => Promise<{ readonly spoken: Spoken }>>> = {
  de: () => import("./de/spoken.ts"),
  fr: () => import("./fr/spoken.ts"),
  es: () => import("./es/spoken.ts"),
};

/**
 * Speaks a language from now on.
 *
 * @returns When its sentences are there; where they cannot be loaded, English goes on.
 */
export async function speak(language: Language): Promise<void> {
  if (language === "en") return take(undefined);
  const loaded = await loaders[language]().catch(() => undefined);
  take(loaded && { language, ...loaded.spoken });
}
