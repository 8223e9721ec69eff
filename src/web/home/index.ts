export { HomePage } from "./home-page.tsx";
