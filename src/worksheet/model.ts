import {
  Column,
  EnteredRows,
  FollowingRows,
  GroupedRows,
  type Before,
  type Rows,
  type Words,
} from '../graph/index.ts';
import type { Formula, Program } from '../formula/index.ts';
import type { Kind } from '../units/index.ts';
import type {
  ColumnDefinition,
  LineDefinition,
  SheetDefinition,
  StopDefinition,
} from './definition.ts';
import { kindNamed } from './kinds.ts';

/** A sheet at work: its rows in bands, each band with its columns. Most sheets have one band. */
export interface SheetModel {
  readonly definition: SheetDefinition;
  readonly bands: readonly BandModel[];
}

/** Rows that share their formulas. */
export interface BandModel {
  readonly rows: Rows;
  readonly line: LineDefinition | undefined;
  readonly columns: ReadonlyMap<string, ColumnModel>;
  /** Whether the band is there at all; absent means always. */
  readonly when: HiddenColumn | undefined;
}

/** One column of one band. */
export interface ColumnModel {
  readonly sheet: string;
  readonly definition: ColumnDefinition;
  readonly kind: Kind;
  /** What others read: entry over formula. */
  readonly result: Column;
  /** What a person typed, where one may. */
  readonly entry: Column | undefined;
  /** What the formula says, where there is one and an entry may stand over it. */
  readonly suggestion: Column | undefined;
  formula: Formula | undefined;
  program: Program | undefined;
  /** True in rows whose blank is not taken as agreed for the column. */
  except: Column | undefined;
}

/** A formula that stands in no column: a rule's condition, a total. */
export interface HiddenColumn {
  readonly column: Column;
  program: Program | undefined;
}

/** A rule at work. */
export interface StopModel {
  readonly definition: StopDefinition;
  readonly sheet: SheetModel;
  readonly band: BandModel;
  readonly when: HiddenColumn;
  readonly isOfSheet: boolean;
}

/** Makes the rows and columns of every sheet; their formulas come later, once every name has its column. */
export function buildModels(
  definitions: readonly SheetDefinition[],
  enteredCount: (sheet: string) => number,
  words: Words,
): ReadonlyMap<string, SheetModel> {
  const models = new Map<string, SheetModel>();
  for (const definition of definitions) {
    models.set(definition.id, {
      definition,
      bands: bandsOf(definition, models, enteredCount, words),
    });
  }
  return models;
}

function bandsOf(
  definition: SheetDefinition,
  models: ReadonlyMap<string, SheetModel>,
  enteredCount: (sheet: string) => number,
  words: Words,
): readonly BandModel[] {
  const { rows, id } = definition;
  if (rows.from === 'lines') {
    return (definition.lines ?? []).map((line) => {
      const set =
        line.each === undefined
          ? new EnteredRows(`${id}.${line.id}`, 1)
          : grouped(line, id, models, words);
      return band(definition, set, line);
    });
  }
  if (rows.from === 'following') {
    const parent = models.get(rows.sheet)?.bands[0];
    if (!parent) throw new Error(`Sheet ${id} follows ${rows.sheet}, which must come before it.`);
    const where =
      rows.where === undefined ? undefined : new Column(`${id}: which rows`, parent.rows);
    return [band(definition, new FollowingRows(id, parent.rows, where), undefined)];
  }
  const count = rows.from === 'single' ? 1 : enteredCount(id);
  return [band(definition, new EnteredRows(id, count), undefined)];
}

function grouped(
  line: LineDefinition,
  id: string,
  models: ReadonlyMap<string, SheetModel>,
  words: Words,
): GroupedRows {
  const source = models.get(line.each ?? '')?.bands[0];
  const by = Object.values(line.by ?? {}).map((name) => {
    const column = source?.columns.get(name);
    if (!column) throw new Error(`Line ${line.id} of ${id} is made by ${name}, which is nowhere.`);
    return column;
  });
  return new GroupedRows(
    `${id}.${line.id}`,
    by.map(({ result }) => result),
    by.map(({ kind }) => (isWord(kind) ? largerName(words) : undefined)),
    by.map(({ kind }) => (kind.type === 'list' ? (code) => words.list(code) : undefined)),
  );
}

// By the number a name begins with, as in 6x6 before 4x4, and never by the order of typing.
function largerName(words: Words): Before {
  return (a, b) => {
    const [x, y] = [words.text(a), words.text(b)];
    const difference = (parseFloat(y) || 0) - (parseFloat(x) || 0);
    if (difference !== 0) return difference;
    return x < y ? -1 : 1;
  };
}

function isWord({ type }: Kind): boolean {
  return type === 'text' || type === 'choice';
}

function band(
  definition: SheetDefinition,
  rows: Rows,
  line: LineDefinition | undefined,
): BandModel {
  const columns = new Map(
    definition.columns.map((column): [string, ColumnModel] => [
      column.id,
      columnModel(definition.id, column, rows),
    ]),
  );
  const when =
    line?.when === undefined
      ? undefined
      : { column: new Column(`${rows.name}: whether`, rows), program: undefined };
  return { rows, line, columns, when };
}

function columnModel(sheet: string, definition: ColumnDefinition, rows: Rows): ColumnModel {
  const kind = kindNamed(definition.kind, definition.choices);
  if (!kind) throw new Error(`Column ${sheet}.${definition.id} has no kind “${definition.kind}”.`);
  const name = `${sheet}.${definition.id}`;
  const isOverride = definition.entry === true && definition.formula !== undefined;
  const result = new Column(name, rows);
  return {
    sheet,
    definition,
    kind,
    result,
    entry: isOverride
      ? new Column(`${name} as typed`, rows)
      : definition.entry
        ? result
        : undefined,
    suggestion: isOverride ? new Column(`${name} by formula`, rows) : undefined,
    formula: undefined,
    program: undefined,
    except: undefined,
  };
}
