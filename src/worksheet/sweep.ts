import { Program, isFormula, readFormula, type Reference, type Scope } from '../formula/index.ts';
import { Column, type Rows } from '../graph/index.ts';
import type { Kind } from '../units/index.ts';
import { reasonText, reasonsFor, type Reasons } from './reasons.ts';
import { rowIdAt } from './row-ids.ts';
import { scopeOf } from './scope.ts';
import type { Spot } from './working-steps.ts';

/** A quantity that is tried over many values: its name in formulas and its values in SI. */
export interface Tried {
  readonly name: string;
  readonly kind: Kind;
  readonly values: readonly number[];
}

/**
 * One row of a sheet with some quantities tried over many values. Formulas read the row, its job and
 * the quantities tried, and are worked by the rules that the cells are worked by.
 */
export class Sweep {
  private readonly spot: Spot;
  private readonly rows: Rows;
  private readonly scope: Scope;

  /** Each of the quantities has as many values as the first. */
  constructor(spot: Spot, tried: readonly Tried[]) {
    this.spot = spot;
    this.rows = repeated(spot, tried[0]?.values.length ?? 1);
    this.scope = scopeWith(
      spot,
      new Map(tried.map((each) => [each.name, this.reference(each)] as const)),
    );
  }

  /** What a formula comes to for each of the values tried; NaN where it has no value. */
  run(formula: string): readonly number[] {
    const { count } = this.rows;
    const [values, states] = [new Float64Array(count), new Uint8Array(count)];
    this.program(formula).run(values, states, 0, count);
    return [...values];
  }

  /** Why a formula has no value for the last of the values tried; blank where it has one. */
  whyNot(formula: string): string {
    const { sheet, band, row, engine, notebook } = this.spot;
    const waits = new Map<string, string>();
    const problems: Reasons['problems'][number][] = [];
    this.program(formula).explain(this.rows.count - 1, {
      lacks: (column, at) => {
        const reasons = reasonsFor(column, at, engine, notebook);
        for (const [key, name] of reasons.waits) waits.set(key, name);
        problems.push(...reasons.problems);
      },
      wrong: (problem) => problems.push({ problem, column: new Column('', this.rows), row: 0 }),
    });
    const id = rowIdAt(sheet, band, row, notebook, engine.models) ?? '';
    return reasonText({ waits, problems }, `${sheet.definition.id}/${id}`);
  }

  private program(formula: string): Program {
    const read = readFormula(formula, this.scope);
    if (!isFormula(read)) throw new Error(`${formula}: ${read.where}: ${read.found} ${read.fix}`);
    return new Program(read.expression, this.rows, this.spot.engine.words);
  }

  private reference({ name, kind, values }: Tried): Reference {
    const column = new Column(name, this.rows);
    column.fit();
    column.values.set(values);
    const { id: sheet } = this.spot.sheet.definition;
    return { sheet, name, label: name, kind, reach: 'row', columns: [column] };
  }
}

/** What a formula comes to on a row; undefined where it has no value. */
export function valueAt(spot: Spot, formula: string): number | undefined {
  const [value] = new Sweep(spot, []).run(formula);
  return value === undefined || Number.isNaN(value) ? undefined : value;
}

/** Rows that all follow the same one. */
function repeated({ sheet, band, row }: Spot, count: number): Rows {
  return {
    name: `${sheet.definition.id}, one row tried`,
    count,
    parent: band.rows,
    parentPlaces: new Int32Array(count).fill(row),
    version: 0,
    placeOf: () => -1,
    deciders: [],
    refresh: () => false,
  };
}

function scopeWith({ sheet, band, engine }: Spot, tried: ReadonlyMap<string, Reference>): Scope {
  const own = scopeOf(sheet, band, engine.models);
  return {
    ...own,
    bare: (name) => tried.get(name) ?? followed(own.bare(name)),
    member: (other, name, inside) => followed(own.member(other, name, inside)),
  };
}

// What stands on the row itself is reached as from a row that follows it.
function followed(reference: Reference | undefined): Reference | undefined {
  return reference?.reach === 'row' ? { ...reference, reach: 'follow' } : reference;
}
