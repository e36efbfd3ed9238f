import { all, create } from 'mathjs/number';
import { encode, type Expression } from '../../../src/formula/index.ts';
import { placeIn, type Column, type Rows, type Words } from '../../../src/graph/index.ts';
import type { WorkedColumn } from './columns.ts';
import { NotStraight } from './straight.ts';

const math = create(all ?? {});

/**
 * The formulas of a column evaluated cell by cell by mathjs, compiled once. Its scope is a Map, which
 * it takes as it is and answers a third faster than a plain object; what the whole job shares is put there once.
 */
export function mathjsCells(worked: WorkedColumn, words: Words): () => Float64Array {
  const writer = new Writer(worked.column.rows, words);
  const code = math.parse(writer.write(worked.expression)).compile();
  const { count } = worked.column.rows;
  const out = new Float64Array(count);
  return () => {
    const scope = new Map<string, unknown>(FUNCTIONS);
    const inputs = [...writer.inputs.values()].flatMap(({ name, values, place }) => {
      if (place) return [{ name, values: values(), place }];
      scope.set(name, values()[0] ?? NaN);
      return [];
    });
    for (let i = 0; i < count; i++) {
      for (const { name, values, place } of inputs) scope.set(name, values[place(i)] ?? NaN);
      out[i] = Number(code.evaluate(scope));
    }
    return out;
  };
}

function given(x: number, otherwise: number): number {
  return Number.isNaN(x) ? otherwise : x;
}

function onlyIf(x: number, when: boolean | number): number {
  return Number(when) === 1 ? x : NaN;
}

function upToStep(x: number, step: number): number {
  return Math.ceil(x / step - 1e-9) * step;
}

const FUNCTIONS = Object.entries({ given, only_if: onlyIf, up_to_step: upToStep });

interface Taken {
  readonly name: string;
  readonly values: () => Float64Array;
  /** Where a row's value stands; undefined where all rows share the first. */
  readonly place: ((row: number) => number) | undefined;
}

const SIGNS = {
  sum: '+',
  difference: '-',
  product: '*',
  quotient: '/',
  power: '^',
  both: 'and',
  either: 'or',
} as const;

class Writer {
  readonly inputs = new Map<string, Taken>();
  private readonly rows: Rows;
  private readonly words: Words;

  constructor(rows: Rows, words: Words) {
    this.rows = rows;
    this.words = words;
  }

  /** The expression in mathjs' own words, with a name for each column it reads. */
  write(expression: Expression): string {
    switch (expression.form) {
      case 'constant':
        return `(${String(encode(expression.value, this.words))})`;
      case 'column': {
        const { reach, columns } = expression.reference;
        const column = only(columns);
        if (reach === 'row') return this.take(column, 'here', (row) => row);
        if (reach === 'whole') return this.take(column, 'job', undefined);
        return this.take(column, 'followed', (row) => placeIn(column.rows, this.rows, row));
      }
      case 'neighbor': {
        const { step, reference } = expression;
        const column = only(reference.columns);
        const { count } = this.rows;
        return this.take(column, step < 0 ? 'above' : 'below', (row) =>
          row + step < count ? row + step : -1,
        );
      }
      case 'negative':
        return `(-${this.write(expression.of)})`;
      case 'not':
        return `(not ${this.write(expression.of)})`;
      case 'choice': {
        const { when, then, otherwise } = expression;
        return `(${this.write(when)} ? ${this.write(then)} : ${this.write(otherwise)})`;
      }
      case 'comparison':
        return `(${this.write(expression.left)} ${expression.sign} ${this.write(expression.right)})`;
      case 'general':
      case 'aggregate':
        if (expression.form === 'aggregate' && expression.sheet !== '') break;
        return `${expression.name}(${expression.arguments.map((each) => this.write(each)).join(', ')})`;
      case 'row number':
      case 'list':
      case 'rule':
        break;
      default: {
        const sign = SIGNS[expression.form];
        return `(${this.write(expression.left)} ${sign} ${this.write(expression.right)})`;
      }
    }
    throw new NotStraight(expression.form);
  }

  private take(column: Column, how: string, place: Taken['place']): string {
    const key = `${column.name} ${how}`;
    const known = this.inputs.get(key);
    if (known) return known.name;
    const name = `x${String(this.inputs.size)}`;
    this.inputs.set(key, { name, values: () => column.values, place });
    return name;
  }
}

function only(columns: readonly Column[]): Column {
  const [column, ...others] = columns;
  if (!column || others.length > 0) throw new NotStraight('several bands');
  return column;
}
