import { Program, isFormula, readFormula, type Formula, type Scope } from '../formula/index.ts';
import {
  Column,
  Graph,
  GroupedRows,
  LoopError,
  Words,
  type Rows,
  type Slice,
} from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import { FLAG, problem, readDirection, type Kind, type Problem } from '../units/index.ts';
import type { AskDefinition, StopDefinition } from './definition.ts';
import { BadFormula, Entries, EntryOverFormula, GroupKeys } from './entries.ts';
import {
  buildModels,
  type BandModel,
  type ColumnModel,
  type HiddenColumn,
  type SheetModel,
  type StopModel,
} from './model.ts';
import { isOwn, type Definitions } from './own.ts';
import { rowIdAt } from './row-ids.ts';
import { scopeOf } from './scope.ts';
import { shownUnit, startingText } from './shown.ts';
import { loopNames, loopWords } from './loop.ts';

/** Something that readings raise together, at work. */
export interface AskModel {
  readonly definition: AskDefinition;
  readonly sheet: SheetModel;
  readonly when: HiddenColumn;
}

/** Where a graph column belongs, so that a reason can be told in people's words. */
export interface Owner {
  readonly sheet: SheetModel;
  readonly band: BandModel;
  readonly model: ColumnModel | undefined;
  readonly hidden: HiddenColumn | undefined;
}

/** All sheets of a notebook wired into one graph. */
export class Engine {
  readonly graph = new Graph();
  readonly words = new Words();
  readonly models: ReadonlyMap<string, SheetModel>;
  readonly owners = new Map<Column, Owner>();
  readonly stops: StopModel[] = [];
  readonly asks: AskModel[] = [];
  /** Totals by `sheet.column`. */
  readonly totals = new Map<string, HiddenColumn>();
  /** Formulas of the user's own that can't be used, by `sheet.column`. */
  readonly badFormulas = new Map<string, Problem>();
  readonly definitions: Definitions;
  /** Another number after every change. */
  revision = 0;
  private readonly notebook: Notebook;

  /** Works all of it out, or what of it comes before time is over; `settle` goes on from there. */
  constructor(definitions: Definitions, notebook: Notebook, isOver?: () => boolean) {
    this.notebook = notebook;
    this.definitions = definitions;
    this.models = buildModels(
      definitions.sheets,
      (sheet) => notebook.rows(sheet).length,
      this.words,
    );
    for (const sheet of this.models.values()) {
      for (const band of sheet.bands) this.wireBand(sheet, band);
      this.wireRules(sheet);
    }
    this.settle(isOver);
  }

  /**
   * Works out all that is stale, or what of it comes before time is over; a loop through a formula
   * of the user's own puts that formula aside.
   */
  settle(isOver?: () => boolean): Slice {
    this.revision += 1;
    for (;;) {
      try {
        return this.graph.work(isOver);
      } catch (error) {
        if (!(error instanceof LoopError) || !this.breakLoop(error)) throw error;
      }
    }
  }

  /** Another number whenever a cell of these columns, named by sheet, may have changed. */
  versionOf(columns: Readonly<Record<string, readonly string[]>>): number {
    return Object.entries(columns).reduce((sum, [sheet, names]) => {
      const bands = this.models.get(sheet)?.bands ?? [];
      const found = bands.flatMap((band) => names.flatMap((name) => band.columns.get(name) ?? []));
      return found.reduce((all, { result }) => all + result.version, sum);
    }, 0);
  }

  /** How far the work has come, from 0 to 1. */
  get share(): number {
    return this.graph.share;
  }

  private breakLoop({ loop }: LoopError): boolean {
    const names = loopNames(loop);
    const own = names.find((name) => this.isYours(name) && !this.badFormulas.has(name));
    if (own === undefined) return false;
    this.badFormulas.set(
      own,
      problem(
        own,
        loopWords(names),
        'Change one of these formulas so that none leads back to itself.',
      ),
    );
    const columns = this.columnsNamed(own).map(({ result, suggestion }) => suggestion ?? result);
    for (const column of [...columns, ...this.hiddenNamed(own)]) {
      column.computation = new BadFormula();
      this.graph.add(column);
    }
    return true;
  }

  /** Whether a formula is the user's: an override, one of their own columns, or part of their sheet. */
  private isYours(name: string): boolean {
    if (this.notebook.document.formulas.has(name)) return true;
    return isOwn(name.replace(/: .*$/, ''), this.definitions);
  }

  private hiddenNamed(name: string): readonly Column[] {
    return [...this.owners].flatMap(([column, { hidden }]) =>
      hidden && column.name === name ? [column] : [],
    );
  }

  private columnsNamed(name: string): readonly ColumnModel[] {
    const [sheet = '', column = ''] = name.split('.');
    return this.models.get(sheet)?.bands.flatMap(({ columns }) => columns.get(column) ?? []) ?? [];
  }

  private wireBand(sheet: SheetModel, band: BandModel): void {
    const scope = scopeOf(sheet, band, this.models);
    const { rows } = sheet.definition;
    if (rows.from === 'following' && rows.where !== undefined) {
      const parent = this.models.get(rows.sheet);
      const where = band.rows.deciders[0];
      const parentBand = parent?.bands[0];
      if (parent && parentBand && where) {
        this.wireHidden(
          parent,
          parentBand,
          { column: where, program: undefined },
          rows.where,
          FLAG,
          scopeOf(parent, parentBand, this.models),
        );
      }
    }
    for (const model of band.columns.values()) this.wireColumn(sheet, band, model, scope);
    if (band.when) {
      this.wireHidden(sheet, band, band.when, band.line?.when ?? 'true', FLAG, scope);
    }
  }

  private wireColumn(sheet: SheetModel, band: BandModel, model: ColumnModel, scope: Scope): void {
    const { definition, kind, result, entry, suggestion } = model;
    const owner: Owner = { sheet, band, model, hidden: undefined };
    const formula = this.formulaText(band, definition.id, `${model.sheet}.${definition.id}`);
    const keys = band.rows instanceof GroupedRows ? Object.keys(band.line?.by ?? {}) : [];
    const exceptWhere = definition.askWhenMissing?.exceptWhere;
    if (entry && exceptWhere !== undefined) {
      const except = this.hidden(`${entry.name}: not as agreed`, band.rows);
      this.wireHidden(sheet, band, except, exceptWhere, FLAG, scope);
      model.except = except.column;
    }
    if (entry) entry.computation = this.entries(sheet, band, definition.id, kind, model);
    if (formula !== undefined)
      this.setFormula(model, formula, band.rows, scope, suggestion ?? result);
    if (entry && suggestion) result.computation = new EntryOverFormula(entry, suggestion);
    const key = keys.indexOf(definition.id);
    if (key >= 0 && band.rows instanceof GroupedRows)
      result.computation = new GroupKeys(band.rows, key);
    for (const column of new Set([entry, suggestion, result])) {
      if (!column) continue;
      this.owners.set(column, owner);
      this.graph.add(column);
    }
  }

  private setFormula(
    model: ColumnModel,
    text: string,
    rows: Rows,
    scope: Scope,
    column: Column,
  ): void {
    const name = `${model.sheet}.${model.definition.id}`;
    const read = readFormula(text, scope, model.kind);
    if (isFormula(read)) {
      model.formula = read;
      model.program = new Program(read.expression, rows, this.words);
      column.computation = model.program;
      return;
    }
    if (!this.isYours(name)) {
      throw new Error(`${name}: ${read.where}: ${read.found} ${read.fix}`);
    }
    this.badFormulas.set(name, read);
    column.computation = new BadFormula();
  }

  private formulaText(band: BandModel, id: string, name: string): string | undefined {
    const own = this.notebook.document.formulas.get(name);
    const definition = band.columns.get(id)?.definition;
    return own ?? band.line?.formulas[id] ?? definition?.formula;
  }

  private entries(
    sheet: SheetModel,
    band: BandModel,
    id: string,
    kind: Kind,
    model: ColumnModel,
  ): Entries {
    const { notebook } = this;
    const { document } = notebook;
    const sheetId = sheet.definition.id;
    const textAt = (row: number): string | undefined => {
      if (sheetId === 'job') {
        return document.inputs.get(id) ?? startingText(model.definition, document);
      }
      const rowId = rowIdAt(sheet, band, row, notebook, this.models);
      const typed = rowId === undefined ? undefined : notebook.row(sheetId, rowId)?.cells.get(id);
      if (typed !== undefined || model.except?.values[row] === 1) return typed;
      return document.assumed.get(`${sheetId}.${id}`);
    };
    const unit = (): string => shownUnit(model.definition, document);
    const named = (row: number): string | undefined => {
      const text = textAt(row);
      return text === undefined ? undefined : readDirection(text);
    };
    const text = model.definition.direction === true ? named : textAt;
    return new Entries(text, kind, unit, this.words, model.except);
  }

  private wireRules(sheet: SheetModel): void {
    const { definition } = sheet;
    const [band] = sheet.bands;
    const job = this.models.get('job');
    const jobBand = job?.bands[0];
    if (!band || !job || !jobBand) return;
    const scope = scopeOf(sheet, band, this.models);
    const jobScope = scopeOf(job, jobBand, this.models);
    for (const stop of definition.stops ?? []) {
      this.stops.push(this.wireStop(stop, sheet, band, scope, false));
    }
    for (const stop of definition.sheetStops ?? []) {
      this.stops.push({ ...this.wireStop(stop, job, jobBand, jobScope, true), sheet });
    }
    for (const ask of definition.asks ?? []) {
      const when = this.hidden(`${definition.id}: ask ${ask.column}`, band.rows);
      this.wireHidden(sheet, band, when, ask.when, FLAG, scope);
      this.asks.push({ definition: ask, sheet, when });
    }
    for (const { id, total } of definition.columns) {
      if (total === undefined) continue;
      const hidden = this.hidden(`${definition.id}.${id}: total`, jobBand.rows);
      this.wireHidden(
        job,
        jobBand,
        hidden,
        `${total}(${definition.id}.${id})`,
        undefined,
        jobScope,
      );
      this.totals.set(`${definition.id}.${id}`, hidden);
    }
  }

  private wireStop(
    stop: StopDefinition,
    sheet: SheetModel,
    band: BandModel,
    scope: Scope,
    isOfSheet: boolean,
  ): StopModel {
    const when = this.hidden(`${sheet.definition.id}: ${stop.rule}`, band.rows);
    this.wireHidden(sheet, band, when, stop.when, FLAG, scope);
    return { definition: stop, sheet, band, when, isOfSheet };
  }

  private hidden(name: string, rows: Rows): HiddenColumn {
    return { column: new Column(name, rows), program: undefined };
  }

  private wireHidden(
    sheet: SheetModel,
    band: BandModel,
    hidden: HiddenColumn,
    text: string,
    kind: Kind | undefined,
    scope: Scope,
  ): void {
    const read: Formula | Problem = readFormula(text, scope, kind);
    if ('expression' in read) {
      hidden.program = new Program(read.expression, hidden.column.rows, this.words);
      hidden.column.computation = hidden.program;
    } else {
      const { name } = hidden.column;
      if (!this.isYours(name)) throw new Error(`${name}: ${read.where}: ${read.found} ${read.fix}`);
      this.badFormulas.set(name, read);
      hidden.column.computation = new BadFormula();
    }
    this.owners.set(hidden.column, { sheet, band, model: undefined, hidden });
    this.graph.add(hidden.column);
  }
}
