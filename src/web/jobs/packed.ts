export { mergeCopy, readJobFile, writeJobArchive } from "#job";
