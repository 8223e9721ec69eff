import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shortestTour, type TourLengths, tourLength } from "./index.ts";

/** Ways of different length forth and back, as between paths that are walked one way. */
const lengthsOf = (count: number): fc.Arbitrary<TourLengths> => {
  const metres = fc.integer({ min: 0, max: 400 }).map((decimetres) => decimetres / 10);
  return fc.record({
    fromStart: fc.array(metres, { minLength: count, maxLength: count }),
    between: fc.array(fc.array(metres, { minLength: count, maxLength: count }), {
      minLength: count,
      maxLength: count,
    }),
  });
};

function everyOrder(items: readonly number[]): readonly (readonly number[])[] {
  if (items.length === 0) return [[]];
  return items.flatMap((first) =>
    everyOrder(items.filter((item) => item !== first)).map((rest) => [first, ...rest]),
  );
}

const upTo = (count: number): number[] => Array.from({ length: count }, (_, i) => i);

describe("tour", () => {
  test("[TO-1] up to 7 stations no order of all is shorter", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 7 }).chain(lengthsOf), (lengths) => {
        const { order, length } = shortestTour(lengths);
        const best = Math.min(
          ...everyOrder(upTo(lengths.fromStart.length)).map((one) => tourLength(lengths, one)),
        );
        expect(length).toBeCloseTo(best, 9);
        expect(tourLength(lengths, order)).toBeCloseTo(length, 9);
      }),
      { seed: 501, numRuns: 60 },
    );
  });

  test("[TO-1] 9 stations on a line are visited one after the other, whatever their numbers", () => {
    const places = [5, 1, 9, 3, 7, 2, 8, 4, 6];
    const lengths = {
      fromStart: places,
      between: places.map((a) => places.map((b) => Math.abs(a - b))),
    };
    const { order, length } = shortestTour(lengths);
    expect(order.map((index) => places[index])).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(length).toBe(9);
  });

  test("[TO-1] above 9 stations neither moving one nor turning a stretch makes it shorter", () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 14 }).chain(lengthsOf), (lengths) => {
        const { order, length } = shortestTour(lengths);
        expect(tourLength(lengths, order)).toBeCloseTo(length, 9);
        for (let i = 0; i < order.length; i++) {
          const without = order.toSpliced(i, 1);
          for (let k = 0; k < order.length; k++) {
            const moved = without.toSpliced(k, 0, order[i] as number);
            expect(tourLength(lengths, moved)).toBeGreaterThanOrEqual(length - 1e-6);
          }
          for (let k = i + 2; k <= order.length; k++) {
            const turned = [...order.slice(0, i), ...order.slice(i, k).toReversed(), ...order.slice(k)];
            expect(tourLength(lengths, turned)).toBeGreaterThanOrEqual(length - 1e-6);
          }
        }
      }),
      { seed: 502, numRuns: 20 },
    );
  });

  test("[TO-1] the 300 stations of a hall on a line come out one after the other, before anybody waits for it", () => {
    const places = Array.from({ length: 300 }, (_, i) => 1 + ((i * 113) % 300));
    const lengths = {
      fromStart: places,
      between: places.map((a) => places.map((b) => Math.abs(a - b))),
    };
    const { order, length } = shortestTour(lengths);
    expect(order.map((index) => places[index])).toEqual(upTo(300).map((i) => i + 1));
    expect(length).toBe(300);
  });

  test("[TO-1] a tour of 10 stations is never shorter than the exact tour of 9 of them", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 })), {
          minLength: 10,
          maxLength: 10,
        }),
        (places) => {
          const far = (a: readonly [number, number], b: readonly [number, number]): number =>
            Math.hypot(a[0] - b[0], a[1] - b[1]);
          const lengths = {
            fromStart: places.map((a) => far([0, 0], a)),
            between: places.map((a) => places.map((b) => far(a, b))),
          };
          const nine = {
            fromStart: lengths.fromStart.slice(0, 9),
            between: lengths.between.slice(0, 9).map((row) => row.slice(0, 9)),
          };
          // Leaving out a station never makes the shortest tour longer, so that of nine is a lower bound.
          expect(shortestTour(lengths).length).toBeGreaterThanOrEqual(shortestTour(nine).length - 1e-9);
        },
      ),
      { seed: 503, numRuns: 40 },
    );
  });

  test("[TO-2] every station is visited once", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 14 }).chain(lengthsOf), (lengths) => {
        expect(shortestTour(lengths).order.toSorted((a, b) => a - b)).toEqual(upTo(lengths.fromStart.length));
      }),
      { seed: 504, numRuns: 40 },
    );
  });
});
