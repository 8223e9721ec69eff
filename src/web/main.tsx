import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { showPreferences, wantedLanguage } from "./settings/preferences.ts";
import { App } from "./shell/app.tsx";
import { keepOffline } from "./shell/offline.ts";
import { spokenLanguage } from "./texts/language.ts";
import { speak } from "./texts/speak.ts";
import "./style/tokens.css";
import "./style/base.css";
import "./settings/contrast.css";

showPreferences();
const place = document.getElementById("app");
if (!place) throw new Error("The page has no place for the app");
await speak(wantedLanguage());
document.documentElement.lang = spokenLanguage();
createRoot(place).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
keepOffline();
