export { NotesPanel } from "./notes-panel.tsx";
