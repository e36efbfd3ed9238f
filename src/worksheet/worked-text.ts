import { allParts, decode, partSpan, partText, type Formula, type Part } from '../formula/index.ts';
import { KNOWN } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import {
  ANGLE,
  AREA,
  DENSITY,
  FORCE,
  FORCE_PER_LENGTH,
  LENGTH,
  MASS,
  MOMENT,
  PRESSURE,
  PRESSURE_PER_DEPTH,
  SPEED,
  TEMPERATURE,
  VOLUME,
  numberText,
  sameDimension,
  siUnit,
  usualUnit,
  type Dimension,
  type Kind,
  type Value,
} from '../units/index.ts';
import type { Engine } from './engine.ts';
import type { ColumnModel } from './model.ts';
import { inUnit, isMetric, shownText, shownUnit, shownWithUnit } from './shown.ts';

/** Writes what the parts of a column's formula come to, each in the unit its reader expects. */
export class WorkedText {
  private readonly formula: Formula;
  private readonly column: ColumnModel;
  private readonly engine: Engine;
  private readonly notebook: Notebook;

  constructor(formula: Formula, column: ColumnModel, engine: Engine, notebook: Notebook) {
    this.formula = formula;
    this.column = column;
    this.engine = engine;
    this.notebook = notebook;
  }

  /** A part as the formula writes it. */
  written(part: Part): string {
    return partText(this.formula.text, part.expression);
  }

  /** A part's value with its unit: that of its column or its rule, else one that its names are shown in, else the usual one; blank where it has none. */
  value(part: Part): string {
    const { expression, value } = part;
    if (value === undefined) return this.wholeColumn(part);
    const { kind } = expression;
    if (expression === this.formula.expression) return this.inUnitOf(this.column, value, 2);
    if (expression.form === 'constant' && typeof value === 'number') return this.written(part);
    if (expression.form === 'rule') {
      return shownWithUnit(value, kind, this.usual(kind, expression.rule.unit));
    }
    const model = allParts(part)
      .map((each) => this.columnOf(each))
      .find((found) => found && isShownAlike(found.kind, kind));
    return model
      ? this.inUnitOf(model, value, 4)
      : shownWithUnit(value, kind, this.usual(kind, undefined));
  }

  /** The whole formula, its names replaced by their values. */
  inNumbers(whole: Part): string {
    const values = this.values(whole).sort((a, b) => b.start - a.start);
    return values.reduce(
      (text, { start, end, value }) => text.slice(0, start) + value + text.slice(end),
      this.formula.text,
    );
  }

  /** The formula as it went on this row: of its branches only the ones taken, with its names or with their values. */
  asTaken(whole: Part, inNumbers: boolean): string {
    // Brackets round a branch may be left with a single name or value.
    return this.withTaken(whole, inNumbers).replace(
      /(?<!\w)\(((?:\d+ (?=\d))?[^\s()-][^\s()]*(?: [^\s()]+)?)\)/gu,
      '$1',
    );
  }

  private withTaken(part: Part, inNumbers: boolean): string {
    const { expression, parts } = part;
    const kept = keptOf(part);
    if (kept) {
      const text = this.withTaken(kept, inNumbers);
      const isTerm =
        expression.form === 'general' &&
        expression !== this.formula.expression &&
        SUMS.has(kept.expression.form);
      return isTerm ? `(${text})` : text;
    }
    const [own] = inNumbers ? this.values(part) : [];
    const span = partSpan(this.formula.text, expression);
    if (own && own.start === span.start && own.end === span.end) return own.value;
    let text = '';
    let { start: at } = span;
    for (const each of [...parts].sort((a, b) => a.expression.start - b.expression.start)) {
      const { start, end } = partSpan(this.formula.text, each.expression);
      if (start < at || end > span.end) continue;
      text += this.formula.text.slice(at, start) + this.withTaken(each, inNumbers);
      at = end;
    }
    return text + this.formula.text.slice(at, span.end);
  }

  private values(part: Part): { start: number; end: number; value: string }[] {
    const { expression, value } = part;
    const isName = expression.form === 'column' || expression.form === 'neighbor';
    const isGathered = expression.form === 'aggregate' && expression.sheet !== '';
    if ((isName || isGathered) && value !== undefined) {
      return [
        { ...partSpan(this.formula.text, expression), value: asWritten(value, this.value(part)) },
      ];
    }
    return part.parts.flatMap((each) => this.values(each));
  }

  // A log has a dozen readings; of a long sheet the first show what was taken.
  private wholeColumn({ expression, rows }: Part): string {
    if (expression.form !== 'column' || rows === undefined) return '';
    const shown: string[] = [];
    for (const column of expression.reference.columns) {
      const model = this.engine.owners.get(column)?.model;
      for (let row = 0; model && row < column.rows.count && shown.length < MOST_SHOWN; row++) {
        if (column.states[row] !== KNOWN) continue;
        const value = decode(column.values[row] ?? NaN, model.kind, this.engine.words);
        shown.push(this.inUnitOf(model, value, 4));
      }
    }
    return `${shown.join(', ')}${rows > shown.length ? `, of ${String(rows)} rows` : ''}`;
  }

  // A share that was worked out is an estimate, as its cell has it.
  private inUnitOf({ definition, kind }: ColumnModel, value: Value, digits: number): string {
    const unit = shownUnit(definition, this.notebook.document);
    const isKnownUnit = unit !== '' || definition.percent === true;
    const shown = isKnownUnit ? unit : this.usual(kind, undefined);
    return inUnit(shownText(value, kind, shown, definition.percent, digits), shown);
  }

  private columnOf({ expression }: Part): ColumnModel | undefined {
    if (expression.form !== 'column' && expression.form !== 'neighbor') return undefined;
    const [column] = expression.reference.columns;
    return column && this.engine.owners.get(column)?.model;
  }

  private usual(kind: Kind, wanted: string | undefined): string {
    const of = kind.type === 'list' ? kind.of : kind;
    if (of.type !== 'quantity') return '';
    if (!isMetric(this.notebook.document)) return wanted ?? usualUnit(of.dimension).symbol;
    const metric = METRIC.find(([known]) => sameDimension(known, of.dimension))?.[1];
    return metric ?? usualUnit(of.dimension).symbol;
  }
}

const SUMS: ReadonlySet<string> = new Set(['sum', 'difference', 'product', 'quotient']);

// What stands for a choice, a `given` or an `only_if` on a row where it is settled.
function keptOf({ expression, parts, value }: Part): Part | undefined {
  if (value === undefined) return undefined;
  const [first, second, third] = parts;
  if (expression.form === 'choice') return [second, third].find((part) => part?.used);
  if (expression.form !== 'general') return undefined;
  if (expression.name === 'only_if') return first;
  return expression.name === 'given' ? [second, first].find((part) => part?.used) : undefined;
}

/** A quantity in SI with its unit; blank for whatever has no unit, or is shown in this one already. */
export function siText(value: Value | undefined, kind: Kind, shownIn: string): string {
  if (kind.type !== 'quantity' || typeof value !== 'number') return '';
  const { symbol } = siUnit(kind.dimension);
  if (symbol === '' || symbol === 'USD' || symbol === shownIn) return '';
  return `${numberText(value, 6)} ${symbol}`;
}

const MOST_SHOWN = 12;

const METRIC: readonly (readonly [Dimension, string])[] = [
  [LENGTH, 'mm'],
  [AREA, 'm^2'],
  [VOLUME, 'm^3'],
  [MASS, 'kg'],
  [FORCE, 'N'],
  [PRESSURE, 'kPa'],
  [PRESSURE_PER_DEPTH, 'kPa/m'],
  [FORCE_PER_LENGTH, 'N/m'],
  [DENSITY, 'kg/m^3'],
  [MOMENT, 'N*m'],
  [SPEED, 'm/s'],
  [ANGLE, 'deg'],
  [TEMPERATURE, 'degC'],
];

function isShownAlike(a: Kind, b: Kind): boolean {
  if (a.type === 'list' && b.type === 'list') return isShownAlike(a.of, b.of);
  return a.type === 'quantity' && b.type === 'quantity' && sameDimension(a.dimension, b.dimension);
}

function asWritten(value: Value, shown: string): string {
  if (typeof value === 'string') return `"${value}"`;
  if (typeof value === 'object') return `[${shown}]`;
  return shown.startsWith('-') ? `(${shown})` : shown;
}
