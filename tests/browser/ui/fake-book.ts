import type {
  Ask,
  BookChange,
  BookView,
  CellView,
  ColumnView,
  Entry,
  SheetView,
  Stop,
} from '../../../src/worksheet/view.ts';
import { DURATION, LENGTH, TEXT, choiceOf, quantity } from '../../../src/units/index.ts';

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

  private readonly rows = new Map<string, { id: string; cells: Map<string, string> }[]>();
  private readonly listeners = new Set<(change: BookChange) => void>();
  private readonly past: { label: string; back: () => void; forth: () => void }[] = [];
  private readonly future: { label: string; back: () => void; forth: () => void }[] = [];
  private readonly fakes: readonly FakeSheet[];
  private added = 0;

  constructor(fakes: readonly FakeSheet[]) {
    this.fakes = fakes;
    for (const { id, rows } of fakes)
      this.rows.set(
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

  stops(): readonly Stop[] {
    return this.stopList;
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
      () => this.rows.set(sheet, [...this.rowsOf(sheet), row]),
      () =>
        this.rows.set(
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
      () => this.rows.set(sheet, after),
      () => this.rows.set(sheet, before),
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
    return this.rows.get(sheet) ?? [];
  }

  private viewOf(fake: FakeSheet): SheetView {
    const rowsOf = () => this.rowsOf(fake.id);
    return {
      id: fake.id,
      title: fake.title,
      question: fake.question,
      columns: fake.columns,
      growable: fake.growable ?? false,
      get rowCount() {
        return rowsOf().length;
      },
      rowId: (place) => rowsOf()[place]?.id ?? '',
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

/** The columns and rows of a run that leans by a tree, with one reading to be asked about. */
export function treeRun(): FakeBook {
  const length = { kind: quantity(LENGTH), unit: 'in' };
  const worked = { entered: false, formula: 'atan(lean_gap / level_length)' };
  const book = new FakeBook([
    {
      id: 'job',
      title: 'Job',
      question: 'What holds for the whole fence?',
      rowWord: 'job',
      columns: [
        fakeColumn('units', 'Units', {
          kind: choiceOf(['inch', 'metric']),
          choices: ['inch', 'metric'],
          group: 'The fence',
        }),
        fakeColumn('fence_height', 'Fence height', {
          kind: quantity(LENGTH),
          unit: 'ft',
          group: 'The fence',
          help: 'Top of the pickets above the ground.',
          source: 'common practice',
          standing: 'common practice',
        }),
        fakeColumn('ground_gap', 'Gap under the fence', {
          ...length,
          group: 'The fence',
          standing: 'common practice',
        }),
        fakeColumn('post_spacing', 'Post spacing', {
          kind: quantity(LENGTH),
          unit: 'ft',
          group: 'The fence',
          standing: 'common practice',
        }),
        fakeColumn('post_size', 'Post size', { group: 'The fence' }),
        fakeColumn('soil', 'Soil', {
          kind: choiceOf(['sand', 'clay', 'gravel']),
          choices: ['sand', 'clay', 'gravel'],
          group: 'The ground',
          standing: 'code',
          source: 'IBC Table 1806.2',
        }),
        fakeColumn('frost_depth', 'Frost depth', { ...length, group: 'The ground' }),
        fakeColumn('depth_rule', 'Depth rule', {
          kind: choiceOf(['greatest', 'local minimum', 'by height']),
          choices: ['greatest', 'local minimum', 'by height'],
          group: 'The ground',
        }),
        fakeColumn('hole_width', 'Hole width', {
          ...length,
          group: 'The holes',
          standing: 'standard',
          source: 'ASTM F567',
        }),
        fakeColumn('crown_height', 'Crown height', {
          ...length,
          group: 'The holes',
          standing: 'common practice',
        }),
        fakeColumn('mix', 'Mix', { group: 'The holes' }),
        fakeColumn('rehang_strength', 'Strength to rehang', { group: 'The holes' }),
      ],
      rows: [
        {
          units: 'inch',
          fence_height: '6',
          ground_gap: '2',
          post_spacing: '8',
          post_size: '4x4',
          hole_width: '12',
          crown_height: '2 1/4',
          depth_rule: 'greatest',
          mix: '80 lb',
        },
      ],
    },
    {
      id: 'posts',
      title: 'Posts',
      question: 'How far is each post out, and what does it need?',
      rowWord: 'post',
      growable: true,
      columns: [
        fakeColumn('post', 'Post'),
        fakeColumn('station', 'Station', {
          kind: quantity(LENGTH),
          unit: 'ft',
          hint: 'from post 1',
        }),
        fakeColumn('lean_gap', 'Lean gap', {
          ...length,
          hint: 'level held plumb',
          help: 'Gap between the level and the post, at the end that is away.',
        }),
        fakeColumn('level_length', 'Over', length),
        fakeColumn('lean_toward', 'Toward'),
        fakeColumn('probe_depth', 'Probe', { ...length, hint: 'at grade' }),
        fakeColumn('rock_test', 'Rock test', {
          kind: choiceOf(['firm', 'loose', 'moves at grade', 'moves in collar', 'snapped']),
          choices: ['firm', 'loose', 'moves at grade', 'moves in collar', 'snapped'],
        }),
        fakeColumn('collar', 'Collar', { show: 'when filled' }),
        fakeColumn('lean_angle', 'Lean', {
          ...worked,
          kind: quantity(LENGTH),
          unit: 'deg',
          help: 'How far the post is from plumb.',
          source: 'Geometry of the level and the tape',
          standing: 'arithmetic',
        }),
        fakeColumn('top_offset', 'Out at top', { ...worked, ...length, entered: false }),
        fakeColumn('cause', 'Likely cause', { ...worked, kind: TEXT }),
        fakeColumn('remedy', 'Remedy', {
          kind: choiceOf(['leave', 're-plumb', 'mend', 'replace']),
          choices: ['leave', 're-plumb', 'mend', 'replace'],
          formula: 'probe_depth >= probe_replace ? "replace" : "leave"',
        }),
        fakeColumn('note', 'Note', { show: 'when filled' }),
        fakeColumn('bow', 'Bow', { ...length, show: 'more' }),
      ],
      rows: [
        ['1', '0', '0', '48', '', '1/16', 'firm', '0.00', '0', '', '=leave'],
        ['2', '8', '3/8', '48', 'S', '1/8', 'firm', '0.45', '9/16', 'footing turning', '=re-plumb'],
        [
          '3',
          '16',
          '1 7/8',
          '48',
          'S',
          '1/8',
          'moves at grade',
          '2.24',
          '2 13/16',
          'tree, 14 in trunk',
          '=replace',
        ],
        [
          '4',
          '24',
          '2 1/4',
          '48',
          'S',
          '1/4',
          'moves at grade',
          '2.68',
          '3 3/8',
          'tree, 14 in trunk',
          'replace|mend',
        ],
        [
          '5',
          '32',
          '5/8',
          '48',
          'S',
          '1/8',
          'firm',
          '0.75',
          '15/16',
          'footing turning',
          '=re-plumb',
        ],
        [
          '6',
          '40',
          '?8-May',
          '48',
          'S',
          '1/16',
          'firm',
          '~lean gap',
          '~lean gap',
          '~lean gap',
          '~lean gap',
        ],
        ['7', '48', '0', '48', '', '0', 'firm', '0.00', '0', '', '=leave'],
      ].map((cells) =>
        Object.fromEntries(
          [
            'post',
            'station',
            'lean_gap',
            'level_length',
            'lean_toward',
            'probe_depth',
            'rock_test',
            'lean_angle',
            'top_offset',
            'cause',
            'remedy',
          ].map((id, place) => [id, cells[place] ?? '']),
        ),
      ),
    },
    {
      id: 'holes',
      title: 'Holes',
      question: 'How deep, how wide, how much concrete?',
      rowWord: 'post',
      columns: [
        fakeColumn('post', 'Post', { entered: false }),
        fakeColumn('frost', 'Frost', { ...length, ...worked, hint: '+ 6 in', kind: length.kind }),
        fakeColumn('by_height', 'By height', { ...length, ...worked }),
        fakeColumn('local', 'Local least', length),
        fakeColumn('governing_rule', 'Governs', { ...worked }),
        fakeColumn('depth', 'Hole', { ...length, ...worked, hint: 'with gravel' }),
        fakeColumn('concrete', 'Concrete', { kind: quantity(LENGTH), ...worked, unit: 'ft³' }),
        fakeColumn('bags', 'Bags', { kind: quantity(LENGTH), ...worked, hint: '80 lb' }),
      ],
      rows: [
        {
          post: '3',
          frost: '~frost depth',
          by_height: '30',
          local: '30',
          governing_rule: 'by height',
          depth: '36',
          concrete: '1.80',
          bags: '4',
        },
        {
          post: '4',
          frost: '~frost depth',
          by_height: '30',
          local: '30',
          governing_rule: 'by height',
          depth: '18',
          concrete: '1.06',
          bags: '2',
        },
      ],
      totals: new Map([
        ['concrete', '2.86 ft³'],
        ['bags', '6'],
      ]),
    },
    {
      id: 'cure',
      title: 'Cure',
      question: 'When may the panels go back up?',
      rowWord: 'reading',
      growable: true,
      columns: [fakeColumn('hours', 'Hours', { kind: quantity(DURATION), unit: 'h' })],
      rows: [],
    },
  ]);
  book.stopList = [
    {
      sheet: 'holes',
      row: 'r2',
      rowName: 'Hole 4',
      rule: 'short_hole',
      level: 'stop',
      message:
        'Rock at 18 in; 30 in wanted. An 18 in wide hole this deep holds 39% of what was wanted; equal strength would need 46 in of width.',
      source: 'IBC 1807.3.2.1',
    },
    {
      sheet: 'holes',
      row: undefined,
      rowName: '',
      rule: 'unchecked',
      level: 'caution',
      message: 'Frost and wind are not checked: their inputs are blank. Ask the local office.',
      source: 'common practice',
    },
  ];
  return book;
}

/** A long list of posts, for scrolling. */
export function longRun(count: number): FakeBook {
  return new FakeBook([
    {
      id: 'posts',
      title: 'Posts',
      question: 'How far is each post out?',
      rowWord: 'post',
      columns: [
        fakeColumn('post', 'Post'),
        fakeColumn('lean_gap', 'Lean gap', { kind: quantity(LENGTH), unit: 'in' }),
        ...Array.from({ length: 10 }, (_, place) =>
          fakeColumn(`reading_${String(place)}`, `Reading ${String(place + 1)}`),
        ),
      ],
      rows: Array.from({ length: count }, (_, place) => ({
        post: String(place + 1),
        lean_gap: '3/8',
        reading_0: 'firm',
      })),
    },
  ]);
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
