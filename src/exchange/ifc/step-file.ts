/** A STEP physical file (ISO 10303-21) whose framing, quotes, comments, brackets and instance names were all checked. */
export interface StepFile {
  readonly bytes: Uint8Array;
  /** Schema as FILE_SCHEMA names it, in capitals. */
  readonly schema: string;
  /** Instance name (the number after #) of each record, in file order. */
  readonly ids: Uint32Array;
  /** Index of each record's type in `types`. */
  readonly typeOf: Uint16Array;
  readonly types: readonly string[];
  /** Byte offset of the # that each record begins with. */
  readonly starts: Uint32Array;
  /** Byte offsets of each record's parameter list: first byte after "(", and the byte of ")". */
  readonly from: Uint32Array;
  readonly to: Uint32Array;
  readonly indexOf: { get(id: number): number | undefined };
  /** References of record i: `references[firstReference[i]] … references[firstReference[i + 1] - 1]`, as instance names. */
  readonly references: Uint32Array;
  readonly firstReference: Uint32Array;
}
