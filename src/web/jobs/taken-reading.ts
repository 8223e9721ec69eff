/** What takes a read file into a job; loaded with the first one that is kept: the first page stays small. */
export { printsOf, takeReading, underlayOf } from "#job";
