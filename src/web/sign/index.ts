export { Signatures } from "./signatures.tsx";
