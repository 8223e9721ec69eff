import * as z from "zod";

/** The most corners that one outline may have, and the most that a whole job may have: beyond that a file is a mistake or an attack. */
export const mostCorners = { outline: 5_000, job: 500_000 } as const;

/** An object that keeps fields it does not know, so that a newer version's extras survive an older one. */
export const kept = <Shape extends z.ZodRawShape>(shape: Shape): z.ZodObject<Shape> =>
  z.looseObject(shape) as unknown as z.ZodObject<Shape>;

const farthest = 100_000;

/** Any length or place: finite and within 100 km of the origin, beyond which metres lose their tenth of a millimetre in a drawing. [m] */
export const metres = z.number().min(-farthest).max(farthest);
/** A length that cannot be negative. [m] */
export const length = z.number().min(0).max(farthest);
/** A length that something must have. [m] */
export const extent = z.number().positive().max(farthest);
/** An angle, counter-clockwise from +x. [°] */
export const degrees = z.number().min(-3600).max(3600);
/** A share, 0 … 1. */
export const share = z.number().min(0).max(1);
/** Temperature. [°C] */
export const celsius = z.number().min(-60).max(150);
/** Active power. [W] */
export const watts = z.number().min(0).max(1_000_000);
export const seconds = z.number().min(0).max(1_000_000);

/** What a job is known by wherever it is kept: words of letters, figures and underscores, joined by single hyphens. */
export const identity = z
  .string()
  .max(60)
  .regex(/^\w+(-\w+)*$/, "letters, figures and underscores, joined by single hyphens");
export const id = z.string().min(1).max(200);
/** A line of text as a person types it. */
export const words = z.string().max(2_000);
/** A place in the plan. [m] */
export const point = z.tuple([metres, metres]);
/** A closed ring; the first point is not repeated. Its corners are judged apart, so that the sentence can name them. */
export const outline = z.array(point);
