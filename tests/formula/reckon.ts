import { expect } from 'vitest';
import {
  EMPTY_SCOPE,
  Program,
  decode,
  encode,
  isFormula,
  readFormula,
  type FormulaProblem,
  type Reference,
  type Scope,
} from '../../src/formula/index.ts';
import {
  BLANK,
  Column,
  EnteredRows,
  FollowingRows,
  Graph,
  KNOWN,
  UNREAD,
  Words,
  type Rows,
} from '../../src/graph/index.ts';
import { fromSI, sentence, type Kind, type Problem, type Value } from '../../src/units/index.ts';

/** What stands in a cell of a test sheet: a value in SI, nothing, or something that can't be read. */
export type Cell = Value | typeof NOTHING | typeof ASKED;
export const NOTHING = null;
export const ASKED = Symbol('something that must be asked about');

/** What a formula came to: a value, what it waits for, or a message. */
export type Outcome = { value: Value } | { waits: string[] } | { message: string };

/** A test sheet: its columns by name, each with its kind and its cells. */
export type TestSheet = Readonly<Record<string, readonly [Kind, readonly Cell[]]>>;

/** The value of a formula that stands on no sheet, in the unit after `to`, else in SI; throws where it has none. */
export function reckon(text: string): Value {
  const read = readFormula(text, EMPTY_SCOPE);
  if (!isFormula(read)) throw new Error(`${text}: ${sentence(read)}`);
  const [outcome] = new Desk().work(text);
  if (!outcome || !('value' in outcome)) throw new Error(`${text}: ${JSON.stringify(outcome)}`);
  const { value } = outcome;
  return typeof value === 'number' && read.shownIn ? fromSI(value, read.shownIn) : value;
}

/** Why a formula is refused, and the characters under which; throws where it is not. */
export function refused(text: string, desk = new Desk()): FormulaProblem & { under: string } {
  const read = desk.read(text);
  if (isFormula(read)) throw new Error(`${text} is not refused.`);
  return { ...read, under: text.slice(read.span.start, read.span.end) };
}

/** Why a formula on no sheet has no value though it can be read. */
export function noValue(text: string): string {
  const [outcome] = new Desk().work(text);
  if (!outcome || !('message' in outcome)) throw new Error(`${text}: ${JSON.stringify(outcome)}`);
  return outcome.message;
}

/** A few sheets of entries with a graph of their own; formulas stand on the sheet `here`, and `job` has one row. */
export class Desk {
  private readonly words = new Words();
  private readonly here: string;
  private readonly rows = new Map<string, Rows>();
  private readonly columns = new Map<string, { kind: Kind; column: Column }>();
  private readonly graph = new Graph();

  /** `follows`: the sheet `here` holds those rows of another sheet where one of its flags is true. */
  constructor(
    sheets: Readonly<Record<string, TestSheet>> = {},
    here = 'here',
    follows?: { readonly sheet: string; readonly where: string },
  ) {
    this.here = here;
    for (const [sheet, columns] of Object.entries(sheets)) {
      const count = Object.values(columns)[0]?.[1].length ?? 0;
      const rows = this.rowsFor(sheet, count);
      for (const [name, [kind, cells]] of Object.entries(columns)) {
        const column = new Column(`${sheet}.${name}`, rows);
        column.computation = {
          inputs: [],
          run: (values, states, from, to) => {
            for (let row = from; row < to; row++) {
              const cell = cells[row] ?? NOTHING;
              const isValue = cell !== NOTHING && typeof cell !== 'symbol';
              values[row] = isValue ? encode(cell, this.words) : NaN;
              states[row] = isValue ? KNOWN : cell === NOTHING ? BLANK : UNREAD;
            }
          },
        };
        this.columns.set(`${sheet}.${name}`, { kind, column });
        this.graph.add(column);
      }
    }
    const parent = follows && this.rows.get(follows.sheet);
    if (parent) {
      const where = this.columns.get(`${follows.sheet}.${follows.where}`)?.column;
      this.rows.set(here, new FollowingRows(here, parent, where));
    } else this.rowsFor(here, 1);
  }

  /** Reads a formula that stands here. */
  read(text: string, wanted?: Kind) {
    return readFormula(text, this.scope, wanted);
  }

  /** What a formula comes to in each row here; throws where it is refused. */
  work(text: string): readonly Outcome[] {
    const read = this.read(text);
    if (!isFormula(read)) throw new Error(`${text}: ${sentence(read)}`);
    const rows = this.rowsFor(this.here, 1);
    const result = new Column('result', rows);
    const program = new Program(read.expression, rows, this.words);
    result.computation = program;
    this.graph.add(result);
    this.graph.settle();
    return Array.from({ length: rows.count }, (_, row): Outcome => {
      const value = result.values[row]!;
      if (Number.isNaN(value) !== (result.states[row] !== KNOWN))
        throw new Error('value and state differ');
      if (result.states[row] === KNOWN) {
        if (!Number.isFinite(value)) throw new Error(`${text} came to ${value}`);
        return { value: decode(value, read.kind, this.words) };
      }
      const waits = new Set<string>();
      const problems: Problem[] = [];
      program.explain(row, {
        lacks: (column, at) =>
          waits.add(column.rows.count === 1 ? column.name : `${column.name} ${at + 1}`),
        wrong: (problem) => problems.push(problem),
      });
      const [first] = problems;
      return first ? { message: sentence(first) } : { waits: [...waits].sort() };
    });
  }

  /** What a formula comes to in the only row here: a value, the names it waits for, or its message. */
  only(text: string): Value | readonly string[] {
    const [outcome] = this.work(text);
    if (!outcome) throw new Error(`${text}: no row`);
    return 'value' in outcome
      ? outcome.value
      : 'waits' in outcome
        ? outcome.waits
        : [outcome.message];
  }

  private rowsFor(sheet: string, count: number): Rows {
    const known = this.rows.get(sheet);
    if (known) return known;
    const rows = new EnteredRows(sheet, count);
    this.rows.set(sheet, rows);
    return rows;
  }

  private get scope(): Scope {
    const { here, columns, rows } = this;
    const reference = (
      sheet: string,
      name: string,
      reach: Reference['reach'],
    ): Reference | undefined => {
      const found = columns.get(`${sheet}.${name}`);
      return (
        found && { sheet, name, label: name, kind: found.kind, reach, columns: [found.column] }
      );
    };
    const jobReach = here === 'job' ? 'row' : 'whole';
    return {
      sheet: here,
      bare: (name) => reference(here, name, 'row') ?? reference('job', name, jobReach),
      member: (sheet, name, insideAggregate) => {
        if (sheet === 'job') return reference('job', name, jobReach);
        if (sheet === here) return reference(sheet, name, insideAggregate ? 'whole' : 'row');
        const follows = rows.get(here)?.parent === rows.get(sheet);
        return reference(sheet, name, follows ? 'follow' : 'whole');
      },
      names: () => [...columns.keys()].map((name) => name.replace(/^(job|here)\./, '')),
      sheets: () => [...rows.keys()],
    };
  }
}

/** A formula, its value in the unit after `to`, the tolerance, and where the value comes from. */
export type Check = readonly [
  formula: string,
  printed: number,
  tolerance: number | 'exact',
  source: string,
];

/** Expects a formula to come to the printed value; `exact` allows floating-point noise only. */
export function expectReckoned(
  formula: string,
  printed: number,
  tolerance: number | 'exact',
): void {
  const allowed = tolerance === 'exact' ? 1e-12 * Math.max(1, Math.abs(printed)) : tolerance;
  const value = Number(reckon(formula));
  expect(Math.abs(value - printed), `${value} for ${printed}`).toBeLessThanOrEqual(allowed);
}
