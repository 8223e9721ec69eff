/** An element of an SVG file as plain data, with those attributes alone that say how it is drawn. */
export interface SvgElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: (SvgElement | string)[];
}

/** An SVG file as plain data: nothing of it is run, fetched or expanded. */
export interface SvgFile {
  readonly root: SvgElement;
  readonly byId: ReadonlyMap<string, SvgElement>;
  /** Text of all style sheets in the file. */
  readonly styles: string;
  readonly elements: number;
  /** The file declares entities or uses some that are not those of XML. */
  readonly entities: boolean;
  /** Elements that were passed over, by name. */
  readonly passed: ReadonlyMap<string, number>;
}
