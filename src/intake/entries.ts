/** The columns that the rows of one table fill, in one order for all of them. */
export class ColumnOrder {
  readonly names: string[] = [];
  private readonly places = new Map<string, number>();

  /** The place of a column; undefined where no row has filled it yet. */
  find(column: string): number | undefined {
    return this.places.get(column);
  }

  /** The place of a column, at the end where it has none yet. */
  placeOf(column: string): number {
    const known = this.places.get(column);
    if (known !== undefined) return known;
    const place = this.names.push(column) - 1;
    this.places.set(column, place);
    return place;
  }
}

/**
 * The entries of one row, by column. A map of its own for each of a hundred thousand rows would take most of the time
 * and memory that reading a file takes; here a row is a list of texts, and all rows share the order of the columns.
 */
export class Entries implements ReadonlyMap<string, string> {
  private readonly order: ColumnOrder;
  private readonly texts: (string | undefined)[];

  constructor(order: ColumnOrder) {
    this.order = order;
    this.texts = new Array<string | undefined>(order.names.length);
  }

  get size(): number {
    let size = 0;
    for (const text of this.texts) if (text !== undefined) size++;
    return size;
  }

  get(column: string): string | undefined {
    const place = this.order.find(column);
    return place === undefined ? undefined : this.texts[place];
  }

  has(column: string): boolean {
    return this.get(column) !== undefined;
  }

  set(column: string, text: string): void {
    this.put(this.order.placeOf(column), text);
  }

  /** Sets the entry of the column that has this place in the order. */
  put(place: number, text: string): void {
    while (this.texts.length < place) this.texts.push(undefined);
    this.texts[place] = text;
  }

  *entries(): MapIterator<[string, string]> {
    const { names } = this.order;
    for (const [place, text] of this.texts.entries())
      if (text !== undefined) yield [names[place] ?? '', text];
    return undefined;
  }

  *keys(): MapIterator<string> {
    for (const [column] of this) yield column;
    return undefined;
  }

  *values(): MapIterator<string> {
    for (const [, text] of this) yield text;
    return undefined;
  }

  forEach(tell: (text: string, column: string, map: ReadonlyMap<string, string>) => void): void {
    for (const [column, text] of this) tell(text, column, this);
  }

  [Symbol.iterator](): MapIterator<[string, string]> {
    return this.entries();
  }
}
