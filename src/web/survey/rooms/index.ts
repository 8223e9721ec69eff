export { RoomsTable } from "./rooms-table.tsx";
