export { writeJobArchive } from "#job";
