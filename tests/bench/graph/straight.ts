import { compileFunction } from 'node:vm';
import { encode, type Expression } from '../../../src/formula/index.ts';
import { placeIn, type Column, type Rows, type Words } from '../../../src/graph/index.ts';
import type { WorkedColumn } from './columns.ts';

/** What a straight loop cannot be written for. */
export class NotStraight extends Error {}

/** How the value of a column in a row is written, by its number among the columns read. */
type Read = (column: number, row: string) => string;

/** One formula as plain statements that leave its value in `result`, with all they need from outside. */
interface Straight {
  /** What stands before the first row. */
  readonly before: string;
  readonly body: string;
  readonly result: string;
  readonly columns: readonly Column[];
  /** Places of the rows followed, by column. */
  readonly places: ReadonlyMap<number, Int32Array>;
  readonly rules: readonly unknown[];
}

/**
 * The loop that a person would write by hand for one column: its formula as plain statements over
 * typed arrays, unknown as NaN, no state, no reason why. On the line is within it, as a lean that
 * is just the tolerance has to be. A trade function is called where a row differs from the one above,
 * as the graph does.
 * Written by a program, so that every column of the sheets has one and stays in step with it.
 */
export function straightLoop(worked: WorkedColumn, words: Words): () => Float64Array {
  const { column } = worked;
  const straight = written(worked, words, (at, row) => `c${String(at)}[${row}]`, true);
  const run = compileFunction(
    `${straight.before}for (let i = 0; i < count; i++) {\n${straight.body}out[i] = ${straight.result};\n}`,
    ['out', 'count', ...READERS, ...namesOf(straight)],
  ) as (...given: unknown[]) => void;
  const out = new Float64Array(column.rows.count);
  const [reading, still] = [readers(words), outside(straight)];
  return () => {
    const values = straight.columns.map((each) => each.values);
    run(out, out.length, ...reading, ...values, ...still);
    return out;
  };
}

/** The same for one cell, whose inputs are objects with a `value`. */
export function straightCell(
  worked: WorkedColumn,
  words: Words,
  cells: (column: Column) => readonly { readonly value: number }[],
): (row: number) => number {
  const straight = written(worked, words, (at, row) => `c${String(at)}[${row}].value`, false);
  const factory = compileFunction(
    `return (i) => {\n${straight.body}return ${straight.result};\n};`,
    ['count', ...READERS, ...namesOf(straight)],
  ) as (...given: unknown[]) => (row: number) => number;
  const { count } = worked.column.rows;
  return factory(count, ...readers(words), ...straight.columns.map(cells), ...outside(straight));
}

function namesOf({ columns, places, rules }: Straight): readonly string[] {
  return [
    ...columns.map((_, at) => `c${String(at)}`),
    ...[...places.keys()].map((at) => `p${String(at)}`),
    ...rules.map((_, at) => `f${String(at)}`),
  ];
}

function outside({ places, rules }: Straight): readonly unknown[] {
  return [...places.values(), ...rules];
}

const READERS = ['text', 'list', 'numberOf'];

function readers(words: Words): readonly unknown[] {
  return [(code: number) => words.text(code), (code: number) => words.list(code), numberOf];
}

function numberOf(answer: unknown): number {
  return typeof answer === 'number' ? answer : NaN;
}

function written(worked: WorkedColumn, words: Words, read: Read, isLoop: boolean): Straight {
  const writer = new Writer(worked.column.rows, words, read, isLoop);
  const result = writer.write(worked.expression);
  const { before, lines, columns, places, rules } = writer;
  return { before, body: lines, result, columns, places, rules };
}

class Writer implements Omit<Straight, 'body' | 'result'> {
  before = '';
  lines = '';
  readonly columns: Column[] = [];
  readonly places = new Map<number, Int32Array>();
  readonly rules: unknown[] = [];
  private readonly rows: Rows;
  private readonly words: Words;
  private readonly read: Read;
  /** Whether the rows are gone through in turn, so that one may take over from the one above. */
  private readonly isLoop: boolean;
  private names = 0;

  constructor(rows: Rows, words: Words, read: Read, isLoop: boolean) {
    this.rows = rows;
    this.words = words;
    this.read = read;
    this.isLoop = isLoop;
  }

  /** Adds the statements of an expression and gives the name of its value. */
  write(expression: Expression): string {
    switch (expression.form) {
      case 'constant':
        return `(${String(encode(expression.value, this.words))})`;
      case 'row number':
        return '(i + 1)';
      case 'column':
        return this.let(this.column(expression));
      case 'neighbor': {
        const at = this.numberOf(only(expression.reference.columns));
        const row = `i + ${String(expression.step)}`;
        return this.let(`${row} >= 0 && ${row} < count ? ${this.read(at, row)} : NaN`);
      }
      case 'negative':
        return this.let(`-${this.write(expression.of)}`);
      case 'not':
        return this.let(`1 - ${this.write(expression.of)}`);
      case 'choice':
        return this.choice(
          this.write(expression.when),
          () => this.write(expression.then),
          () => this.write(expression.otherwise),
        );
      case 'comparison':
        return this.comparison(expression);
      case 'list':
        return `[${expression.items.map((item) => this.write(item)).join()}]`;
      case 'rule':
        return this.rule(expression);
      case 'general':
        return this.general(expression);
      case 'aggregate':
        return this.few(expression);
      default:
        return this.pair(
          expression.form,
          this.write(expression.left),
          this.write(expression.right),
        );
    }
  }

  private let(value: string): string {
    const name = this.fresh();
    this.lines += `const ${name} = ${value};\n`;
    return name;
  }

  private fresh(): string {
    this.names += 1;
    return `t${String(this.names)}`;
  }

  private numberOf(column: Column): number {
    const known = this.columns.indexOf(column);
    return known >= 0 ? known : this.columns.push(column) - 1;
  }

  private column({ reference }: Expression & { form: 'column' }): string {
    const column = only(reference.columns);
    const at = this.numberOf(column);
    if (reference.reach === 'row') return this.read(at, 'i');
    if (reference.reach === 'whole') return this.read(at, '0');
    this.places.set(
      at,
      Int32Array.from({ length: this.rows.count }, (_, row) =>
        placeIn(column.rows, this.rows, row),
      ),
    );
    return this.read(at, `p${String(at)}[i]`);
  }

  // Only the branch taken is worked out.
  private choice(when: string, then: () => string, otherwise: () => string): string {
    const name = this.fresh();
    this.lines += `let ${name} = NaN;\nif (${when} === 1) {\n`;
    const yes = then();
    this.lines += `${name} = ${yes};\n} else if (${when} === 0) {\n`;
    const no = otherwise();
    this.lines += `${name} = ${no};\n}\n`;
    return name;
  }

  private comparison({ sign, left, right }: Expression & { form: 'comparison' }): string {
    const [a, b] = [this.write(left), this.write(right)];
    const isSize = left.kind.type === 'quantity' || left.kind.type === 'date';
    const near = `Math.abs(${a} - ${b}) <= 1e-9 * Math.max(Math.abs(${a}), Math.abs(${b}))`;
    const equal = isSize ? near : `${a} === ${b}`;
    const ordered = sign.endsWith('=')
      ? `${a} ${sign} ${b} || ${near}`
      : `${a} ${sign} ${b} && !(${near})`;
    const test = sign === '==' ? equal : sign === '!=' ? `!(${equal})` : ordered;
    return this.let(`${a} !== ${a} || ${b} !== ${b} ? NaN : ${test} ? 1 : 0`);
  }

  private rule({ rule, arguments: given }: Expression & { form: 'rule' }): string {
    const at = this.rules.push(rule.apply) - 1;
    const keys: string[] = [];
    const known: string[] = [];
    const values = given.map((each) => {
      if (each.form === 'list') {
        const items = each.items.map((item) => this.write(item));
        keys.push(...items);
        return `[${items.join()}]`;
      }
      const value = this.write(each);
      keys.push(value);
      known.push(`${value} === ${value}`);
      if (each.kind.type === 'text' || each.kind.type === 'choice') return `text(${value})`;
      return each.kind.type === 'list' ? `list(${value})` : value;
    });
    const isKnown = known.length === 0 ? 'true' : known.join(' && ');
    const call = `${isKnown} ? numberOf(f${String(at)}(${values.join()})) : NaN`;
    if (!this.isLoop) return this.let(call);
    // The answer of the row above stands where the arguments do.
    const answer = this.fresh();
    const kept = keys.map(() => this.fresh());
    this.before += `let ${[answer, ...kept].map((name) => `${name} = NaN`).join()};\n`;
    const isOther = keys.map((key, place) => `${key} !== ${kept[place] ?? ''}`).join(' || ');
    const keep = keys.map((key, place) => `${kept[place] ?? ''} = ${key};`).join(' ');
    this.lines += `if (${isOther || 'true'}) {\n${keep}\n${answer} = ${call};\n}\n`;
    return answer;
  }

  private general({ name, arguments: given }: Expression & { form: 'general' }): string {
    const [first, second] = given;
    if (!first) throw new NotStraight(name);
    if (name === 'given' && second) {
      const x = this.write(first);
      const known = this.let(`${x} === ${x} ? 1 : 0`);
      return this.choice(
        known,
        () => x,
        () => this.write(second),
      );
    }
    if (name === 'only_if' && second) {
      return this.choice(
        this.write(second),
        () => this.write(first),
        () => 'NaN',
      );
    }
    const values = given.map((each) => this.write(each));
    const [x = '', y = ''] = values;
    if (name === 'ceil') return this.let(`Math.ceil(${x} - 1e-9)`);
    if (name === 'floor') return this.let(`Math.floor(${x} + 1e-9)`);
    if (name === 'up_to_step') return this.let(`Math.ceil(${x} / ${y} - 1e-9) * ${y}`);
    if (name === 'round') throw new NotStraight(name);
    return this.let(`Math.${name}(${values.join()})`);
  }

  private few({ name, sheet, arguments: given }: Expression & { form: 'aggregate' }): string {
    if (sheet !== '' || (name !== 'min' && name !== 'max')) throw new NotStraight(name);
    const items = given.flatMap((each) => (each.form === 'list' ? each.items : [each]));
    if (items.some(({ kind }) => kind.type === 'list')) throw new NotStraight(name);
    return this.let(`Math.${name}(${items.map((item) => this.write(item)).join()})`);
  }

  private pair(form: PairForm, a: string, b: string): string {
    switch (form) {
      case 'sum':
        return this.let(`${a} + ${b}`);
      case 'difference':
        return this.let(`${a} - ${b}`);
      case 'product':
        return this.let(`${a} * ${b}`);
      case 'quotient':
        return this.let(`${b} === 0 ? NaN : ${a} / ${b}`);
      case 'power':
        return this.let(`${a} ** ${b}`);
      case 'both':
        return this.let(`${a} === 0 || ${b} === 0 ? 0 : ${a} * ${b}`);
      case 'either':
        return this.let(`${a} === 1 || ${b} === 1 ? 1 : ${a} + ${b}`);
    }
  }
}

type PairForm = 'sum' | 'difference' | 'product' | 'quotient' | 'power' | 'both' | 'either';

function only(columns: readonly Column[]): Column {
  const [column, ...others] = columns;
  if (!column || others.length > 0) throw new NotStraight('several bands');
  return column;
}
