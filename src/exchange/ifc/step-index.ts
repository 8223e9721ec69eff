/** Index of each instance name. Names run densely in most files, which a table serves; the few beyond it lie in a map. */
export class InstanceIndex {
  /** Index + 1; 0: none. */
  private table = new Uint32Array(4096);
  private readonly beyond = new Map<number, number>();

  /** @param largest - Names from here on go into the map, so that one wild name cannot ask for a wild table. */
  constructor(private readonly largest: number) {}

  get(id: number): number | undefined {
    if (id >= this.largest) return this.beyond.get(id);
    const found = id < this.table.length ? this.table[id]! : 0;
    return found === 0 ? undefined : found - 1;
  }

  set(id: number, index: number): void {
    if (id >= this.largest) {
      this.beyond.set(id, index);
      return;
    }
    if (id >= this.table.length) {
      const next = new Uint32Array(Math.max(id + 1, this.table.length * 2));
      next.set(this.table);
      this.table = next;
    }
    this.table[id] = index + 1;
  }
}
