import type { Point } from "#engine";

/** Straight lines that join points with the least length in all. @param points - Places. [m] @returns One line fewer than there are points. @example Three on a line at 0, 1, 3: 0–1 and 1–3 */
export function shortestTree(points: readonly Point[]): readonly (readonly [Point, Point])[] {
  const [first, ...others] = points;
  if (!first) return [];
  const waiting = others.map((at) => ({ at, from: first, away: distance(at, first) }));
  const lines: (readonly [Point, Point])[] = [];
  while (waiting.length > 0) {
    const index = waiting.reduce((best, { away }, i) => (away < waiting[best]!.away ? i : best), 0);
    const [next] = waiting.splice(index, 1) as [(typeof waiting)[number]];
    lines.push([next.from, next.at]);
    for (const one of waiting) {
      const away = distance(one.at, next.at);
      if (away < one.away) {
        one.away = away;
        one.from = next.at;
      }
    }
  }
  return lines;
}

const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
