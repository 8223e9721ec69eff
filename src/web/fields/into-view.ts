/**
 * Brings what has just come into the page into sight, given as its `ref`.
 * In braces: a browser may answer a scroll with a promise, which React would take for something to clean up.
 */
export const intoView = (element: HTMLElement | null): void => {
  element?.scrollIntoView({ block: "nearest" });
};
