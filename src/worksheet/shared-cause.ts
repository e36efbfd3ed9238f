import { allParts, type Part } from '../formula/index.ts';
import { firstNames, type Problem, type Value } from '../units/index.ts';
import type { Engine } from './engine.ts';
import { isReading, readCell } from './entries.ts';
import type { ColumnModel } from './model.ts';
import { isSameList, type StopGroup } from './stop-board.ts';
import type { Stop } from './view.ts';

/** A cell without a value, and the job input to blame for it. */
export interface Blamed {
  readonly stop: Stop;
  readonly problem: Problem;
  readonly input: ColumnModel;
}

/** Finds the job input whose value the rule of a column refused. */
export class Blame {
  private readonly model: ColumnModel;
  private readonly engine: Engine;
  /** By what is wrong: it is the same on every row. */
  private readonly known = new Map<string, ColumnModel | undefined>();

  constructor(model: ColumnModel, engine: Engine) {
    this.model = model;
    this.engine = engine;
  }

  /** The input to blame for a cell; undefined where none is. */
  on(problem: Problem, row: number): ColumnModel | undefined {
    const key = `${problem.where} ${saidOf(problem)}`;
    if (!this.known.has(key))
      this.known.set(key, refusedInput(problem, this.model, row, this.engine));
    return this.known.get(key);
  }
}

const known = new WeakMap<
  Engine,
  { readonly blamed: readonly (readonly Blamed[])[]; readonly groups: readonly StopGroup[] }
>();

/**
 * Stops of cells whose rule refuses one job input, each input said once, where it can be put right; a single cell says it
 * itself. They are gathered anew only where other cells are blamed: on a long run there are thousands.
 */
export function sharedCauses(
  blamed: readonly (readonly Blamed[])[],
  engine: Engine,
): readonly StopGroup[] {
  const before = known.get(engine);
  if (before && isSameList(before.blamed, blamed)) return before.groups;
  const causes = new Map<string, Blamed & { readonly stops: Stop[] }>();
  for (const cell of blamed.flat()) {
    const at = `${cell.input.definition.id} ${saidOf(cell.problem)}`;
    const cause = causes.get(at) ?? { ...cell, stops: [] };
    cause.stops.push(cell.stop);
    causes.set(at, cause);
  }
  const titleOf = (sheet: string) => engine.models.get(sheet)?.definition.title ?? sheet;
  const groups = Array.from(causes.values(), ({ input, problem, stop, stops }): StopGroup => {
    if (stops.length === 1) return { sheet: stop.sheet, level: 'stop', stops };
    const { id, label } = input.definition;
    const message = `${label}: ${saidOf(problem)} It stops ${rowsIn(stops, titleOf)}.`;
    const { level, source } = stop;
    const said = { sheet: 'job', row: 'job', rowName: '', rule: id, level, message, source };
    return { sheet: 'job', level, stops: [said] };
  });
  known.set(engine, { blamed, groups });
  return groups;
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

function saidOf({ found, fix }: Problem): string {
  return `${found} ${fix}`;
}

/** The job input whose value a rule refused: its problem quotes it first. */
function refusedInput(
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
