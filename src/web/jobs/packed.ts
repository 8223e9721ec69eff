export { jobText, writeJobArchive } from "#job";
