import { allParts, type Part } from '../formula/index.ts';
import { firstNames, type Problem, type Value } from '../units/index.ts';
import type { Engine } from './engine.ts';
import { isReading, readCell } from './entries.ts';
import type { ColumnModel } from './model.ts';
import type { Stop } from './view.ts';

/** Cells that one job input keeps from having a value. */
interface Cause {
  readonly input: ColumnModel;
  readonly problem: Problem;
  readonly source: string;
  readonly stops: Stop[];
}

/** Stops of cells whose rule refuses one job input, gathered so that each is said once, where it can be put right. */
export class SharedCauses {
  private readonly engine: Engine;
  private readonly causes = new Map<string, Cause>();
  /** The input to blame, by column and problem: it is the same on every row. */
  private readonly blamed = new Map<string, ColumnModel | undefined>();

  constructor(engine: Engine) {
    this.engine = engine;
  }

  /** Keeps the stop of a cell where an input is to blame for it; false where none is. */
  takes(stop: Stop, problem: Problem, model: ColumnModel, row: number): boolean {
    const said = `${problem.found} ${problem.fix}`;
    const key = `${model.sheet}.${model.definition.id} ${problem.where} ${said}`;
    if (!this.blamed.has(key)) this.blamed.set(key, blame(problem, model, row, this.engine));
    const input = this.blamed.get(key);
    if (!input) return false;
    const at = `${input.definition.id} ${said}`;
    const cause = this.causes.get(at) ?? { input, problem, source: stop.source, stops: [] };
    cause.stops.push(stop);
    this.causes.set(at, cause);
    return true;
  }

  /** Each input with the rows it stops; a single cell says it itself. */
  said(titleOf: (sheet: string) => string): readonly Stop[] {
    return [...this.causes.values()].flatMap(({ input, problem, source, stops }) => {
      if (stops.length === 1) return stops;
      const { id, label } = input.definition;
      const message = `${label}: ${problem.found} ${problem.fix} It stops ${rowsIn(stops, titleOf)}.`;
      return [{ sheet: 'job', row: 'job', rowName: '', rule: id, level: 'stop', message, source }];
    });
  }
}

// `Posts 1, 2, 3 and 10 more; Bracing 2`.
function rowsIn(stops: readonly Stop[], titleOf: (sheet: string) => string): string {
  const sheets = new Map<string, Map<string, string>>();
  for (const { sheet, row = '', rowName } of stops) {
    const rows = sheets.get(sheet) ?? new Map<string, string>();
    sheets.set(sheet, rows.set(row, rowName.replace(/^\D+ (?=\S)/u, '')));
  }
  const words = [...sheets].map(
    ([sheet, rows]) => `${titleOf(sheet)} ${firstNames([...rows.values()])}`,
  );
  return words.join('; ');
}

/** The job input whose value a rule refused: its problem quotes it first. */
function blame(
  { found }: Problem,
  model: ColumnModel,
  row: number,
  engine: Engine,
): ColumnModel | undefined {
  const quoted = /“([^”]*)”/.exec(found)?.[1];
  const refused = model.program && allParts(model.program.parts(row)).find((part) => part.problem);
  if (quoted === undefined || refused?.expression.form !== 'rule') return undefined;
  for (const argument of refused.parts) {
    const input = isQuoted(argument, quoted) ? inputBehind(argument, engine) : undefined;
    if (input) return input;
  }
  return undefined;
}

function isQuoted({ expression, value }: Part, quoted: string): boolean {
  if (typeof value !== 'number') return value === quoted;
  const read = readCell(quoted, expression.kind, '');
  // Problems quote five digits.
  return isReading(read) && typeof read.value === 'number' && isNear(read.value, value);
}

function inputBehind(part: Part, engine: Engine): ColumnModel | undefined {
  const { expression, value } = part;
  if (expression.form === 'column') {
    const [column] = expression.reference.columns;
    const model = column && engine.owners.get(column)?.model;
    return model?.sheet === 'job' && model.entry ? model : undefined;
  }
  const inside = part.parts.find((each) => each.used && isSame(each.value, value));
  return inside && inputBehind(inside, engine);
}

function isSame(a: Value | undefined, b: Value | undefined): boolean {
  return a === b && a !== undefined;
}

function isNear(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-4 * Math.max(Math.abs(a), Math.abs(b));
}
