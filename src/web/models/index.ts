export { firmModels, useFirmModels } from "./firm-list.ts";
export { ModelsEditor } from "./models-editor.tsx";
