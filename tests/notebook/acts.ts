import fc from 'fast-check';
import type { Change, Notebook, NotebookDocument, Row } from '../../src/notebook/index.ts';

/** A document with a little of everything. */
export function someDocument(): NotebookDocument {
  return {
    format: 2,
    name: 'Oak Street',
    inputs: new Map([['fence_height', '6 ft']]),
    sheets: new Map([
      ['posts', [row('r1', { post: '1', lean_gap: '3/8"' }), row('r2', { post: '2' })]],
      ['bags', [row('r3', { mix: '80 lb' })]],
    ]),
    formulas: new Map([['posts.remedy', '"replace"']]),
    assumed: new Map([['posts.probe_depth', '0 in']]),
    own: new Map([['posts.cap', { id: 'cap', label: 'Cap', kind: 'text', entry: true }]]),
    files: [
      {
        name: 'site.csv',
        bytes: 'UG9zdA==',
        linesRead: 3,
        passedOver: [{ line: 1, text: 'Post', why: 'it names the columns' }],
      },
    ],
  };
}

export function row(id: string, cells: Record<string, string>): Row {
  return { id, cells: new Map(Object.entries(cells)) };
}

/** What a person may do, as numbers that are turned into acts that fit the notebook as it then is. */
export const acts: fc.Arbitrary<Act[]> = fc.array(
  fc.oneof(
    { weight: 8, arbitrary: fc.record({ do: fc.constant('act' as const), steps: steps() }) },
    { weight: 3, arbitrary: fc.constantFrom({ do: 'undo' as const }, { do: 'redo' as const }) },
  ),
  { maxLength: 30 },
);

export type Act =
  { readonly do: 'act'; readonly steps: readonly Step[] } | { readonly do: 'undo' | 'redo' };

interface Step {
  readonly edit:
    'name' | 'input' | 'formula' | 'assumed' | 'own' | 'cell' | 'add' | 'remove' | 'file';
  readonly sheet: string;
  readonly at: number;
  readonly key: string;
  readonly text: string | undefined;
}

function steps(): fc.Arbitrary<Step[]> {
  return fc.array(
    fc.record({
      edit: fc.constantFrom(
        'name',
        'input',
        'formula',
        'assumed',
        'own',
        'cell',
        'add',
        'remove',
        'file',
      ),
      sheet: fc.constantFrom('posts', 'bags', 'labor'),
      at: fc.nat(6),
      key: fc.constantFrom('a', 'b', '__proto__', 'constructor'),
      text: fc.option(fc.string({ maxLength: 4 }), { nil: undefined }),
    }),
    { minLength: 1, maxLength: 4 },
  );
}

/** Does one act; changes are made one by one, as each must fit the document after those before it. */
export function perform(act: Act, notebook: Notebook): void {
  if (act.do === 'act') {
    for (const [place, step] of act.steps.entries())
      notebook.do(`act ${place}`, changesFor(step, notebook));
  } else if (act.do === 'undo') notebook.undo();
  else notebook.redo();
}

function changesFor({ edit, sheet, at, key, text }: Step, notebook: Notebook): readonly Change[] {
  const { document } = notebook;
  const rows = notebook.rows(sheet);
  const place = rows.length === 0 ? 0 : at % rows.length;
  switch (edit) {
    case 'name':
      return [{ edit, before: document.name, after: text ?? '' }];
    case 'input':
      return [{ edit, name: key, before: document.inputs.get(key), after: text }];
    case 'formula':
      return [{ edit, name: key, before: document.formulas.get(key), after: text }];
    case 'assumed':
      return [{ edit, name: key, before: document.assumed.get(key), after: text }];
    case 'own': {
      const before = [...document.own];
      const rest = before.filter(([name]) => name !== key);
      const after = text === undefined ? rest : [...rest, [key, { label: text }] as const];
      return [{ edit, before, after }];
    }
    case 'cell': {
      const found = rows[place];
      if (!found) return [];
      const before = found.cells.get(key);
      return [{ edit, sheet, row: found.id, column: key, before, after: text }];
    }
    case 'add': {
      const ids = notebook.freshIds(1 + (at % 3));
      const added = ids.map((id) => row(id, { post: text ?? '' }));
      const first = added[0]!;
      // A cell typed in the same act as its row must go and come with it.
      return [
        { edit: 'add rows', sheet, at: Math.min(at, rows.length), rows: added },
        {
          edit: 'cell',
          sheet,
          row: first.id,
          column: key,
          before: first.cells.get(key),
          after: 'x',
        },
      ];
    }
    case 'remove': {
      const gone = rows.slice(place, place + 1 + (at % 2));
      const copies = gone.map((each) => ({ ...each, cells: new Map(each.cells) }));
      return gone.length === 0 ? [] : [{ edit: 'remove rows', sheet, at: place, rows: copies }];
    }
    case 'file':
      return [
        {
          edit: 'add file',
          file: { name: key, bytes: '', linesRead: at, passedOver: [] },
        },
      ];
    default:
      return [];
  }
}
