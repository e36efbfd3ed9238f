import type {
  Ask,
  BookChange,
  BookView,
  CellView,
  ColumnView,
  CurveView,
  SheetView,
  Stop,
} from '../../../src/worksheet/index.ts';
import { LENGTH, PLAIN, TEXT, quantity, type Kind, type Value } from '../../../src/units/index.ts';
import { chosenStops } from '../chosen-stops.ts';
import { fakeWorking } from '../fake-working.ts';

/** A cell for a test: its text, and whatever else differs from a plain known cell. */
export type FakeCell = string | Partial<CellView>;

/** What a fake sheet holds: rows by id, cells by column. */
export type FakeRows = Readonly<Record<string, Readonly<Record<string, FakeCell>>>>;

/** A book made of literal cells; `change` alters one and tells who listens. */
export interface FakeBook extends BookView {
  change(sheet: string, row: string, column: string, cell: FakeCell): void;
  readonly listeners: ReadonlySet<(change: BookChange) => void>;
}

interface Parts {
  readonly name?: string;
  readonly stops?: readonly Stop[];
  readonly asks?: readonly Ask[];
  readonly columns?: Readonly<Record<string, Partial<ColumnView>>>;
}

const INCH = 0.0254;

const NOTHING_DRAWN: CurveView = {
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

/** A known length shown in inches. */
export function inches(text: string, value: number): FakeCell {
  return { text, value: value * INCH };
}

/** A known plain number. */
export function count(value: number): FakeCell {
  return { text: String(value), value };
}

/** A cell that waits, and what for. */
export function waiting(note: string): FakeCell {
  return { state: 'waiting', text: '', value: undefined, note };
}

/** A book with the sheets given, in that order; only `job` has row names of its own. */
export function fakeBook(sheets: Readonly<Record<string, FakeRows>>, parts: Parts = {}): FakeBook {
  const rows = new Map(
    Object.entries(sheets).map(([id, held]) => [
      id,
      new Map(Object.entries(held).map(([row, cells]) => [row, new Map(Object.entries(cells))])),
    ]),
  );
  const listeners = new Set<(change: BookChange) => void>();
  const views = [...rows].map(([id, held]) => fakeSheet(id, held, parts));
  const unused = (): never => {
    throw new Error('pictures and pages only read');
  };
  return {
    name: parts.name ?? 'North run, Alder Hollow',
    sheets: views,
    sheet: (id) => views.find((view) => view.id === id),
    asks: () => parts.asks ?? [],
    stops: (choice) => chosenStops(parts.stops ?? [], choice),
    working: (sheet, row, column) =>
      fakeWorking(
        views.find((view) => view.id === sheet),
        row,
        column,
      ),
    capacityCurve: () => undefined,
    strengthCurve: () => NOTHING_DRAWN,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    listeners,
    change: (sheet, row, column, cell) => {
      rows.get(sheet)?.get(row)?.set(column, cell);
      for (const listener of listeners) listener({ cells: new Set([`${sheet}/${row}/${column}`]) });
    },
    type: unused,
    typeAll: unused,
    answer: unused,
    rows: {
      put: unused,
      putLong: unused,
      finishLong: unused,
      double: unused,
      move: unused,
      remove: unused,
      runOn: unused,
    },
    get own() {
      return unused();
    },
    addRow: unused,
    removeRow: unused,
    rename: unused,
    setFormula: unused,
    undo: unused,
    redo: unused,
    undoLabel: undefined,
    redoLabel: undefined,
  };
}

function fakeSheet(
  id: string,
  held: Map<string, Map<string, FakeCell>>,
  { columns = {} }: Parts,
): SheetView {
  const ids = [...held.keys()];
  const names = [...new Set([...held.values()].flatMap((cells) => [...cells.keys()]))];
  const cellAt = (row: number, column: string): CellView =>
    fakeCell(held.get(ids[row] ?? '')?.get(column));
  return {
    id,
    title: id.charAt(0).toUpperCase() + id.slice(1),
    question: QUESTIONS[id] ?? '',
    editions: '',
    follow: [],
    columns: names.map((name) => ({
      id: name,
      label: name.replaceAll('_', ' '),
      called: name.replaceAll('_', ' '),
      hint: '',
      unit: unitOf(name, held),
      kind: kindOf(name, held),
      entered: true,
      formula: undefined,
      help: '',
      source: '',
      standing: '',
      choices: [],
      show: 'always',
      group: '',
      ...columns[`${id}.${name}`],
    })),
    rowCount: ids.length,
    growable: false,
    rowId: (row) => ids[row] ?? '',
    rowKey: (row) => wordsAt(row),
    rowName: (row) =>
      id === 'posts' || id === 'holes' ? `post ${wordsAt(row)}` : (ids[row] ?? ''),
    cell: cellAt,
    totals: () => new Map(),
  };

  function wordsAt(row: number): string {
    return cellAt(row, 'post').text;
  }
}

const QUESTIONS: Readonly<Record<string, string>> = {
  posts: 'How far is each post out, and what does it need?',
  holes: 'How deep, how wide, how much concrete?',
  job: 'What holds for the whole job?',
};

function fakeCell(cell: FakeCell | undefined): CellView {
  const plain: CellView = {
    state: cell === undefined || cell === '' ? 'blank' : 'known',
    text: '',
    value: undefined,
    typed: undefined,
    suggested: undefined,
    note: '',
    choices: [],
  };
  if (cell === undefined) return plain;
  if (typeof cell === 'string') return { ...plain, text: cell, value: cell };
  return { ...plain, ...cell };
}

function firstValue(name: string, held: Map<string, Map<string, FakeCell>>): Value | undefined {
  for (const cells of held.values()) {
    const cell = cells.get(name);
    if (typeof cell === 'object' && cell.value !== undefined) return cell.value;
  }
  return undefined;
}

const COUNTS = ['by_job', 'by_hole', 'quantity', 'rails_per_bay', 'bags', 'lean_angle'];

function kindOf(name: string, held: Map<string, Map<string, FakeCell>>): Kind {
  if (COUNTS.includes(name)) return PLAIN;
  return typeof firstValue(name, held) === 'number' ? quantity(LENGTH) : TEXT;
}

function unitOf(name: string, held: Map<string, Map<string, FakeCell>>): string {
  if (name === 'station' || name === 'length') return 'ft';
  if (name === 'weight') return 'lb';
  if (name === 'concrete') return 'ft^3';
  if (name === 'lean_angle') return 'deg';
  return kindOf(name, held).type === 'quantity' && !COUNTS.includes(name) ? 'in' : '';
}
