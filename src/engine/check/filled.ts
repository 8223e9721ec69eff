/**
 * A sentence with its {gaps} filled; a gap without a value stays. It stands apart from the catalogue of problems, so that a page that only fills
 * sentences which came to it carries none of those.
 *
 * @example "{count} rooms" with 3: "3 rooms"
 */
export const filled = (text: string, values: Readonly<Record<string, string | number>>): string =>
  text.replace(/\{(\w+)\}/g, (whole, name: string) => (name in values ? String(values[name]) : whole));
