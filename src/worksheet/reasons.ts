import type { Trace } from '../formula/index.ts';
import { KNOWN, UNREAD, type Column } from '../graph/index.ts';
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
    const owner = engine.owners.get(at);
    const key = `${at.name}/${at.rows.name}/${String(atRow)}`;
    if (!owner || seen.has(key) || waits.size + problems.length >= MOST) return;
    seen.add(key);
    const { model, hidden, sheet, band } = owner;
    const trace: Trace = {
      lacks: follow,
      wrong: (problem) => problems.push({ problem, column: at, row: atRow }),
    };
    if (hidden) {
      hidden.program?.explain(atRow, trace);
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
      else model.program?.explain(atRow, trace);
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
