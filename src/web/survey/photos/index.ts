export { PhotoShelf } from "./photo-shelf.tsx";
