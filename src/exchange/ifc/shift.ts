import type { Outline, Point } from "#engine";
import type { SurveyRecords } from "../survey.ts";
import { tidy } from "../tidy.ts";

/** Coordinates within this of the origin are left as they are: a campus, not a country's grid. [m] */
const nearEnough = 1000;

/** Records with whole metres taken off x and y where the model lies far from its origin; the shift is recorded. */
export function nearOrigin(survey: SurveyRecords): SurveyRecords {
  const points = [
    ...survey.rooms.flatMap((room) => room.outline),
    ...survey.drawings.flatMap(({ lines }) =>
      Array.from({ length: lines.length / 2 }, (_, i): Point => [lines[2 * i]!, lines[2 * i + 1]!]),
    ),
    ...survey.looseLuminaires.map(({ luminaire }) => luminaire.at),
  ];
  if (points.every((p) => Math.abs(p[0]) <= nearEnough && Math.abs(p[1]) <= nearEnough)) return survey;
  const least = (axis: 0 | 1): number =>
    Math.floor(points.reduce((low, p) => Math.min(low, p[axis]), Infinity));
  const shift: Point = [least(0), least(1)];
  const point = (p: Point): Point => [tidy(p[0] - shift[0]), tidy(p[1] - shift[1])];
  const ring = (outline: Outline): Outline => outline.map(point);
  return {
    ...survey,
    rooms: survey.rooms.map((room) => ({
      ...room,
      outline: ring(room.outline),
      holes: room.holes.map(ring),
    })),
    floorPieces: survey.floorPieces.map((piece) => ({
      ...piece,
      footprint: ring(piece.footprint),
      from: point(piece.from),
      to: point(piece.to),
    })),
    openings: survey.openings.map((opening) => ({
      ...opening,
      from: point(opening.from),
      to: point(opening.to),
    })),
    obstacles: survey.obstacles.map((obstacle) => ({ ...obstacle, footprint: ring(obstacle.footprint) })),
    dwellPlaces: survey.dwellPlaces.map((place) => ({ ...place, at: point(place.at) })),
    interference: survey.interference.map((source) => ({ ...source, at: point(source.at) })),
    luminaires: survey.luminaires.map((each) => ({ ...each, at: point(each.at) })),
    looseLuminaires: survey.looseLuminaires.map(({ storey, luminaire }) => ({
      storey,
      luminaire: { ...luminaire, at: point(luminaire.at) },
    })),
    ...(survey.detectors && {
      detectors: survey.detectors.map((each) => ({ ...each, at: point(each.at) })),
    }),
    drawings: survey.drawings.map((drawing) => ({
      ...drawing,
      lines: drawing.lines.map((value, i) => tidy(value - shift[(i & 1) as 0 | 1])),
    })),
    shift,
  };
}
