/** Whether two plain values hold the same. Order of fields does not matter; a field that is undefined is absent. */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    if (!Array.isArray(a) || !Array.isArray(b)) return false;
    return a.length === b.length && a.every((part, index) => same(part, b[index]));
  }
  const left = a as Readonly<Record<string, unknown>>;
  const right = b as Readonly<Record<string, unknown>>;
  const names = new Set([...Object.keys(left), ...Object.keys(right)]);
  return [...names].every((name) => same(left[name], right[name]));
}
