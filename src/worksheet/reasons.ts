import type { Program, Reason, Trace } from '../formula/index.ts';
import { KNOWN, UNREAD, WRONG, type Column } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import { sentence, type Problem } from '../units/index.ts';
import type { Engine } from './engine.ts';
import { rowIdAt } from './row-ids.ts';
import { rowNameAt } from './row-names.ts';

/** Why a cell has no value. */
export interface Reasons {
  /** The entries it waits for, by `sheet/row/column`, with what people call them. */
  readonly waits: ReadonlyMap<string, string>;
  /** What is wrong, and the column where it went wrong. */
  readonly problems: readonly {
    readonly problem: Problem;
    readonly column: Column;
    readonly row: number;
  }[];
}

// Enough to act on; a total over 100,000 rows may wait for as many.
const MOST = 24;

/** Follows a cell back to the entries and rules that keep it from having a value. */
export function reasonsFor(
  column: Column,
  row: number,
  engine: Engine,
  notebook: Notebook,
): Reasons {
  const waits = new Map<string, string>();
  const problems: { problem: Problem; column: Column; row: number }[] = [];
  const seen = new Set<string>();

  function follow(at: Column, atRow: number): void {
    // A total over a long sheet asks for each of its rows.
    if (waits.size + problems.length >= MOST) return;
    const owner = engine.owners.get(at);
    const key = `${at.name}/${at.rows.name}/${String(atRow)}`;
    if (!owner || seen.has(key)) return;
    seen.add(key);
    const { model, hidden, sheet, band } = owner;
    const trace: Trace = {
      lacks: follow,
      wrong: (problem) => problems.push({ problem, column: at, row: atRow }),
    };
    if (hidden) {
      explain(hidden.program, at, atRow, trace);
      return;
    }
    if (!model) return;
    const id = model.definition.id;
    const rowId = rowIdAt(sheet, band, atRow, notebook, engine.models) ?? '';
    const isEntry =
      at === model.entry || (at === model.result && model.entry?.states[atRow] === UNREAD);
    const before = waits.size + problems.length;
    if (!isEntry) {
      const bad = engine.badFormulas.get(`${model.sheet}.${id}`);
      if (bad) trace.wrong(bad);
      else explain(model.program, at, atRow, trace);
    }
    // Where a formula names nothing that could change it, typing here is the way on.
    if (isEntry || (model.entry !== undefined && waits.size + problems.length === before)) {
      const called = rowNameAt(sheet, band, atRow, notebook, engine);
      const label = model.definition.called ?? model.definition.label;
      waits.set(`${model.sheet}/${rowId}/${id}`, called === '' ? label : `${label}, ${called}`);
    }
  }

  if (column.states[row] !== KNOWN) follow(column, row);
  return { waits, problems };
}

/** What the single values of the job had to tell, at one version of what they follow from. */
const told = new WeakMap<
  Program,
  { readonly version: number; readonly reasons: readonly Reason[] }
>();

/** Asks a formula why it has no value. Many cells wait for the same single value, which is asked once. */
function explain(program: Program | undefined, column: Column, row: number, trace: Trace): void {
  if (!program) return;
  // Where a row of an aggregate is wrong, that one has to be found.
  const most = column.states[row] === WRONG ? Infinity : MOST;
  if (column.rows.count !== 1) {
    for (const tell of program.reasons(row, most)) tell(trace);
    return;
  }
  const { version } = program;
  let known = told.get(program);
  if (known?.version !== version)
    told.set(program, (known = { version, reasons: program.reasons(0, most).slice(0, MOST) }));
  for (const tell of known.reasons) tell(trace);
}

/** The reasons as one line for a cell of the given row: what it waits for, or what is wrong and what to do. */
export function reasonText({ waits, problems }: Reasons, sheetAndRow: string): string {
  const [first] = problems;
  if (first) return sentence({ ...first.problem, where: '' });
  const names = [...waits].map(([key, name]) => {
    // Its own row goes without saying.
    return key.startsWith(`${sheetAndRow}/`) ? (name.split(',')[0] ?? name) : name;
  });
  if (names.length === 0) return '';
  const shown = [...new Set(names)].map((name) => name.slice(0, 1).toLowerCase() + name.slice(1));
  const more = shown.length - 3;
  return `waits for ${shown.slice(0, 3).join('; ')}${more > 0 ? ` and ${String(more)} more` : ''}`;
}
