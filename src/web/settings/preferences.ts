import "./contrast.css";
import { useSyncExternalStore } from "react";
import type { Units } from "../texts/index.ts";
import { type Language, languageOf, languages } from "../texts/language.ts";

export type Theme = "system" | "light" | "dark";

/** What a person chose for this browser; not part of any job. */
export interface Preferences {
  readonly units: Units;
  readonly theme: Theme;
  readonly contrast: "normal" | "more";
  /** What the screens speak; "browser": the first of the browser's languages that they know. */
  readonly language: Language | "browser";
}

const storageKey = "roomwake.preferences";
const initial: Preferences = { units: "metric", theme: "system", contrast: "normal", language: "browser" };

let current: Preferences | undefined;
const listeners = new Set<() => void>();

/** The preferences of this browser, read once. Anything unreadable counts as not chosen. */
export function preferences(): Preferences {
  current ??= read();
  return current;
}

/** The language that was chosen here, or else the first of the browser's that the screens speak. */
export const wantedLanguage = (): Language => {
  const { language } = preferences();
  return language === "browser" ? languageOf(navigator.languages) : language;
};

/** Changes preferences, keeps them, and shows them at once. */
export function setPreferences(change: Partial<Preferences>): void {
  current = { ...preferences(), ...change };
  try {
    localStorage.setItem(storageKey, JSON.stringify(current));
  } catch {
    // Private windows may refuse storage: the choice then lasts as long as the page.
  }
  showPreferences();
  for (const listener of listeners) listener();
}

/** Marks the page with theme and contrast; the style sheet does the rest. Call once before the first paint. */
export function showPreferences(): void {
  const { theme, contrast } = preferences();
  const root = document.documentElement;
  if (theme === "system") delete root.dataset.theme;
  else root.dataset.theme = theme;
  if (contrast === "more") root.dataset.contrast = "more";
  else delete root.dataset.contrast;
}

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

/** The preferences, kept up to date in a component. */
export const usePreferences = (): Preferences => useSyncExternalStore(subscribe, preferences, () => initial);

/** Metric or imperial, kept up to date in a component. */
export const useUnits = (): Units => usePreferences().units;

function read(): Preferences {
  try {
    return preferencesIn(localStorage.getItem(storageKey));
  } catch {
    return initial;
  }
}

/** Preferences out of stored text; each field that is not understood keeps its first value. */
export function preferencesIn(stored: string | null): Preferences {
  if (stored === null) return initial;
  let kept: unknown;
  try {
    kept = JSON.parse(stored);
  } catch {
    return initial;
  }
  if (typeof kept !== "object" || kept === null) return initial;
  const { units, theme, contrast, language } = kept as Record<string, unknown>;
  return {
    units: units === "imperial" ? "imperial" : initial.units,
    theme: theme === "light" || theme === "dark" ? theme : initial.theme,
    contrast: contrast === "more" ? "more" : initial.contrast,
    language: languages.find((known) => known === language) ?? initial.language,
  };
}
