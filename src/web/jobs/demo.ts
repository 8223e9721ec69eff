export { demoJob } from "#job";
