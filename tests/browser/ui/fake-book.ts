import type {
  Ask,
  BookChange,
  BookView,
  CellView,
  ColumnView,
  CurveView,
  Entry,
  OwnParts,
  RowParts,
  SheetView,
  Stop,
  StopChoice,
} from '../../../src/worksheet/index.ts';
import { TEXT } from '../../../src/units/index.ts';
import { chosenStops } from '../chosen-stops.ts';
import { fakeWorking } from '../fake-working.ts';

/** What a fake sheet is made of. */
export interface FakeSheet {
  readonly id: string;
  readonly title: string;
  readonly question: string;
  readonly growable?: boolean;
  readonly columns: readonly ColumnView[];
  readonly rowWord: string;
  readonly rows: readonly Readonly<Record<string, string>>[];
  readonly totals?: ReadonlyMap<string, string>;
}

/** A column of a fake sheet; what is not said is plain and typed by hand. */
export function fakeColumn(id: string, label: string, rest: Partial<ColumnView> = {}): ColumnView {
  return {
    id,
    label,
    called: label,
    hint: '',
    unit: '',
    kind: TEXT,
    entered: true,
    formula: undefined,
    help: '',
    source: '',
    standing: '',
    choices: [],
    show: 'always',
    group: '',
    ...rest,
  };
}

/**
 * A book without an engine, to show the elements something. A text `?8-May` is an ask, `!3 ft-ish`
 * is wrong, `~lean gap` waits; any other text is known. Typing is kept as it is.
 */
export class FakeBook implements BookView {
  name = 'North run, Alder Hollow';
  readonly sheets: readonly SheetView[];
  readonly typedIn: Entry[] = [];
  readonly answered: { readonly ask: Ask; readonly entry: string }[] = [];
  stopList: readonly Stop[] = [];
  readonly rows: RowParts = {
    put: (label, sheet, _before, rows, entries = []) => {
      const ids = rows.map(() => this.addRow(sheet));
      const typed = rows.flatMap((cells, at) =>
        [...cells].map(([column, text]) => ({ sheet, row: ids[at] ?? '', column, text })),
      );
      this.typeAll(label, [...entries, ...typed]);
      return ids;
    },
    putLong(label, sheet, rows, entries, done) {
      this.put(label, sheet, undefined, rows, entries);
      done();
    },
    finishLong: () => undefined,
    double: engineNeeded,
    move: engineNeeded,
    // Rows without an engine are numbered by their place.
    runOn: (sheet, _column, _rows, count) =>
      Array.from({ length: count }, (_, at) => String(this.rowsOf(sheet).length + 1 + at)),
    remove: (_label, sheet, rows) => {
      for (const row of rows) this.removeRow(sheet, row);
    },
  };
  readonly own: OwnParts = {
    kinds: ['text', 'length'],
    nameFor: (label) => label.toLowerCase(),
    check: engineNeeded,
    complete: engineNeeded,
    addColumn: engineNeeded,
    removeColumn: engineNeeded,
    addSheet: engineNeeded,
    removeSheet: engineNeeded,
    isShared: () => false,
    share: engineNeeded,
    receive: engineNeeded,
    problems: () => [],
  };

  private readonly held = new Map<string, { id: string; cells: Map<string, string> }[]>();
  private readonly listeners = new Set<(change: BookChange) => void>();
  private readonly past: { label: string; back: () => void; forth: () => void }[] = [];
  private readonly future: { label: string; back: () => void; forth: () => void }[] = [];
  private readonly fakes: readonly FakeSheet[];
  private added = 0;

  constructor(fakes: readonly FakeSheet[]) {
    this.fakes = fakes;
    for (const { id, rows } of fakes)
      this.held.set(
        id,
        rows.map((cells, place) => ({
          id: id === 'job' ? 'job' : `r${String(place + 1)}`,
          cells: new Map(Object.entries(cells)),
        })),
      );
    this.sheets = fakes.map((fake) => this.viewOf(fake));
  }

  get undoLabel(): string | undefined {
    return this.past.at(-1)?.label;
  }

  get redoLabel(): string | undefined {
    return this.future.at(-1)?.label;
  }

  sheet(id: string): SheetView | undefined {
    return this.sheets.find((sheet) => sheet.id === id);
  }

  asks(): readonly Ask[] {
    return this.fakes.flatMap((fake) =>
      this.rowsOf(fake.id).flatMap(({ id: row, cells }, place) =>
        [...cells].flatMap(([column, text]): Ask[] =>
          text.startsWith('?')
            ? [
                {
                  id: `${fake.id}/${row}/${column}`,
                  sheet: fake.id,
                  row,
                  rowName: `${fake.rowWord} ${String(place + 1)}`,
                  column,
                  columnLabel: fake.columns.find(({ id }) => id === column)?.label ?? column,
                  line: place + 2,
                  text: text.slice(1),
                  question: `Another program may have turned a fraction into the date ${text.slice(1)}. What did the tape say?`,
                  choices: [
                    { label: '5/8 in', entry: '5/8 in' },
                    { label: '8 5/8 in', entry: '8 5/8 in' },
                  ],
                },
              ]
            : [],
        ),
      ),
    );
  }

  stops(choice?: StopChoice): readonly Stop[] {
    return chosenStops(this.stopList, choice);
  }

  working(sheet: string, row: string, column: string) {
    return fakeWorking(this.sheet(sheet), row, column);
  }

  capacityCurve(): undefined {
    return undefined;
  }

  strengthCurve(): CurveView {
    return {
      heading: 'Strength since the pour',
      x: { label: 'Since the pour', unit: 'h' },
      y: { label: 'Strength', unit: 'psi' },
      lines: [],
      marks: [],
      levels: [],
      stretches: [],
      waits: 'The strength can’t be drawn yet.',
      notes: [],
    };
  }

  subscribe(listener: (change: BookChange) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  type(sheet: string, row: string, column: string, text: string): void {
    this.typeAll(`${column} ${text}`, [{ sheet, row, column, text }]);
  }

  typeAll(label: string, entries: readonly Entry[]): void {
    this.typedIn.push(...entries);
    const before = entries.map((entry) => ({ ...entry, text: this.cellText(entry) }));
    this.step(
      label,
      () => this.put(entries),
      () => this.put(before),
    );
  }

  answer(ask: Ask, entry: string): void {
    this.answered.push({ ask, entry });
    if (ask.row !== undefined) this.type(ask.sheet, ask.row, ask.column, entry);
  }

  addRow(sheet: string): string {
    this.added += 1;
    const row = { id: `new${String(this.added)}`, cells: new Map<string, string>() };
    this.step(
      'add a row',
      () => this.held.set(sheet, [...this.rowsOf(sheet), row]),
      () =>
        this.held.set(
          sheet,
          this.rowsOf(sheet).filter(({ id }) => id !== row.id),
        ),
    );
    return row.id;
  }

  removeRow(sheet: string, row: string): void {
    const before = this.rowsOf(sheet);
    const after = before.filter(({ id }) => id !== row);
    this.step(
      'remove a row',
      () => this.held.set(sheet, after),
      () => this.held.set(sheet, before),
    );
  }

  rename(name: string): void {
    this.name = name;
    this.tell(new Set());
  }

  setFormula(): undefined {
    return undefined;
  }

  undo(): void {
    const step = this.past.pop();
    if (!step) return;
    step.back();
    this.future.push(step);
    this.tell(new Set());
  }

  redo(): void {
    const step = this.future.pop();
    if (!step) return;
    step.forth();
    this.past.push(step);
    this.tell(new Set());
  }

  /** What stands in a cell, for tests. */
  cellText({ sheet, row, column }: Omit<Entry, 'text'>): string {
    return (
      this.rowsOf(sheet)
        .find(({ id }) => id === row)
        ?.cells.get(column) ?? ''
    );
  }

  private step(label: string, forth: () => void, back: () => void): void {
    forth();
    this.past.push({ label, forth, back });
    this.future.length = 0;
    this.tell(new Set());
  }

  private put(entries: readonly Entry[]): void {
    for (const { sheet, row, column, text } of entries)
      this.rowsOf(sheet)
        .find(({ id }) => id === row)
        ?.cells.set(column, text);
  }

  private tell(cells: ReadonlySet<string>): void {
    const last = this.typedIn.at(-1);
    const all = last ? new Set([...cells, `${last.sheet}/${last.row}/remedy`]) : cells;
    for (const listener of this.listeners) listener({ cells: all });
  }

  private rowsOf(sheet: string): { id: string; cells: Map<string, string> }[] {
    return this.held.get(sheet) ?? [];
  }

  private viewOf(fake: FakeSheet): SheetView {
    const rowsOf = () => this.rowsOf(fake.id);
    return {
      id: fake.id,
      title: fake.title,
      question: fake.question,
      editions: '',
      follow: [],
      columns: fake.columns,
      growable: fake.growable ?? false,
      get rowCount() {
        return rowsOf().length;
      },
      rowId: (place) => rowsOf()[place]?.id ?? '',
      rowKey: (place) => rowsOf()[place]?.cells.get(fake.columns[0]?.id ?? '') ?? '',
      rowName: (place) =>
        fake.id === 'job'
          ? 'job'
          : `${fake.rowWord} ${rowsOf()[place]?.cells.get(fake.columns[0]?.id ?? '') ?? ''}`,
      cell: (place, column) =>
        cellOf(
          rowsOf()[place]?.cells.get(column) ?? '',
          fake.columns.find(({ id }) => id === column),
        ),
      totals: () => fake.totals ?? new Map(),
    };
  }
}

function engineNeeded(): never {
  throw new Error('This needs a book with an engine.');
}

function cellOf(text: string, column: ColumnView | undefined): CellView {
  const blank: CellView = {
    state: 'blank',
    text: '',
    value: undefined,
    typed: undefined,
    suggested: undefined,
    note: '',
    choices: [],
  };
  const rest = text.slice(1);
  if (text === '') return blank;
  if (text.startsWith('?'))
    return { ...blank, state: 'ask', text: rest, typed: rest, note: `“${rest}” may be a date.` };
  if (text.startsWith('!'))
    return {
      ...blank,
      state: 'wrong',
      text: rest,
      typed: rest,
      note: `“${rest}” is not a length I can read. Write it like 36 in, 3 ft or 3' 0".`,
    };
  if (text.startsWith('~')) return { ...blank, state: 'waiting', note: `waits for ${rest}` };
  if (text.startsWith('=')) return { ...blank, state: 'known', text: rest };
  const [own = '', suggested] = text.split('|');
  return {
    ...blank,
    state: 'known',
    text: own,
    typed: column?.entered ? own : undefined,
    suggested,
  };
}
