/** A check's title inside a sentence; abbreviations keep their capitals. */
export const lowered = (what: string): string =>
  /^[A-Z][a-z]/.test(what) ? what.charAt(0).toLowerCase() + what.slice(1) : what;
