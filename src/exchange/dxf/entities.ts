import { say } from "#engine";
import { product } from "../plan/page/matrix.ts";
import { curveReaders, type StrokeReader, type Strokes } from "./curves.ts";
import { type Entity, entityOf, finite, numbersOf, radians } from "./entity.ts";
import { hatchStrokes } from "./hatch.ts";
import { allPlaces, type InsertItem, type Item, isPlace, type TextItem } from "./item.ts";
import { bundleStrokes, lightPolyline, type OpenPolyline, openPolyline } from "./polylines.ts";
import { type DxfRecord, numberOf, textOf } from "./record.ts";
import { because, type Tally, whyUnread } from "./tally.ts";
import { lineText } from "./text-codes.ts";
import { severalLines, singleLine } from "./texts.ts";

/** Takes the records of one block or of the drawing, and hands on what they put in. */
export interface EntityReader {
  record(record: DxfRecord): void;
  /** What was begun and not ended is handed on. */
  end(): void;
}

const strokeReaders: Readonly<Record<string, StrokeReader>> = {
  ...curveReaders,
  LWPOLYLINE: lightPolyline,
  MLINE: bundleStrokes,
  HATCH: hatchStrokes,
};

/** Parts of an entity that was begun by another record; alone they mean nothing. */
const followers = new Set(["VERTEX", "SEQEND", "ATTRIB"]);

/**
 * A reader of entities.
 *
 * @param sink - Gets each item in turn. @param tally - Counts what was read and what not.
 */
export function entityReader(sink: (item: Item) => void, tally: Tally): EntityReader {
  let polyline: { readonly head: Entity; readonly open: OpenPolyline } | undefined;
  let insert: { readonly item: InsertItem; readonly attributes: Record<string, string> } | undefined;
  const strokes = (type: string, found: Strokes, layer: string): void => {
    if ("text" in found) {
      tally.leftOut(type, found);
      return;
    }
    const sound = found.filter(({ points }) => allPlaces(points));
    if (sound.length < found.length || found.length === 0) tally.leftOut(type, because.noPlace);
    if (sound.length === 0) return;
    // A solid hatch is drawn as an outline too; no line of it belongs to a wall.
    for (const stroke of sound) sink({ kind: "stroke", stroke, layer, hatch: type === "HATCH" });
    tally.read(type);
  };
  const texts = (type: string, items: readonly TextItem[]): void => {
    const sound = items.filter(({ x, y, height }) => isPlace(x) && isPlace(y) && isPlace(height));
    if (items.length === 0) tally.leftOut(type, say`it has no letters or no height`);
    else if (sound.length === 0) tally.leftOut(type, because.noPlace);
    else tally.read(type);
    for (const item of sound) sink(item);
  };
  const end = (): void => {
    if (polyline) strokes("POLYLINE", polyline.open.done(), polyline.head.layer);
    if (insert) sink({ ...insert.item, attributes: insert.attributes });
    polyline = undefined;
    insert = undefined;
  };
  const begin = (record: DxfRecord, entity: Entity): void => {
    const { type } = record;
    const read = strokeReaders[type];
    if (read) strokes(type, read(record, entity), entity.layer);
    else if (type === "POLYLINE") polyline = { head: entity, open: openPolyline(record, entity) };
    else if (type === "TEXT") texts(type, singleLine(record, { entity, verticalCode: 73 }));
    else if (type === "MTEXT") texts(type, severalLines(record, entity));
    else if (type === "INSERT") {
      const item = insertOf(record, entity);
      if (!item) tally.leftOut(type, because.noPlace);
      else {
        insert = { item, attributes: {} };
        tally.read(type);
      }
    } else tally.leftOut(type, whyUnread(type));
  };
  const follow = (record: DxfRecord): void => {
    if (record.type === "VERTEX") polyline?.open.add(record);
    else if (record.type === "SEQEND") end();
    else {
      const entity = entityOf(record);
      if (entity.onPaper) return;
      const tag = lineText(textOf(record, 2));
      if (insert && tag !== "") insert.attributes[tag] = lineText(textOf(record, 1));
      if ((finite(numberOf(record, 70, 0), 0) & 1) === 1 || entity.hidden) return;
      const layer = entity.layer === "0" && insert ? insert.item.layer : entity.layer;
      const items = singleLine(record, { entity: { ...entity, layer }, verticalCode: 74 });
      if (items.length > 0) texts("ATTRIB", items);
    }
  };
  return {
    record: (record) => {
      if (followers.has(record.type)) {
        follow(record);
        return;
      }
      end();
      const entity = entityOf(record);
      if (entity.onPaper) tally.leftOut(record.type, because.paper);
      else if (entity.hidden) tally.leftOut(record.type, because.hidden);
      else begin(record, entity);
    },
    end,
  };
}

const insertOf = (record: DxfRecord, entity: Entity): InsertItem | undefined => {
  const block = lineText(textOf(record, 2));
  const [x, y, scaleX, scaleY, turn] = numbersOf(record, [10, 20, 41, 42, 50]);
  const [columns, rows, columnStep, rowStep] = numbersOf(record, [70, 71, 44, 45]);
  const scale = [finite(scaleX, 1), finite(scaleY, 1)] as const;
  if (!isPlace(x) || !isPlace(y) || scale[0] === 0 || scale[1] === 0) return undefined;
  const angle = radians(finite(turn, 0));
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return {
    kind: "insert",
    block,
    placing: product(entity.plane, [cos, sin, -sin, cos, x, y]),
    scale,
    columns: Math.max(1, finite(columns, 1)),
    rows: Math.max(1, finite(rows, 1)),
    spacing: [finite(columnStep, 0), finite(rowStep, 0)],
    attributes: {},
    layer: entity.layer,
  };
};
