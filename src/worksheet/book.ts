import { isFormula, readFormula } from '../formula/index.ts';
import { EnteredRows } from '../graph/index.ts';
import type { Change, Notebook } from '../notebook/index.ts';
import type { Problem } from '../units/index.ts';
import { BookWork } from './book-work.ts';
import { typedText } from './cell.ts';
import { Clashes } from './clashes.ts';
import { capacityCurve } from './curve-capacity.ts';
import { strengthCurve } from './curve-strength.ts';
import type { CurveView } from './curve-view.ts';
import { Engine } from './engine.ts';
import { isUnknownUnit } from './asks.ts';
import { OwnDeeds } from './own-deeds.ts';
import { definitionsOf } from './own.ts';
import type { Pace } from './pace.ts';
import { RowDeeds } from './row-deeds.ts';
import { rowAt } from './row-ids.ts';
import { scopeOf } from './scope.ts';
import { LiveSheet } from './sheet-view.ts';
import { shownUnit } from './shown.ts';
import { typingChanges } from './typing.ts';
import type {
  Ask,
  BookChange,
  BookView,
  Entry,
  SheetView,
  Stop,
  StopChoice,
  CutList,
} from './view.ts';
import { CUT_FROM, cutLists } from './cut-lists.ts';
import { WhatIf } from './what-if.ts';
import { pointersOf } from './pointers.ts';
import { spotOf, workingOf } from './working.ts';
import type { Working } from './working-view.ts';

const NOTHING: ReadonlySet<string> = new Set();

/** As many rows are more than a page works out before it draws. */
const MANY_ROWS = 500;

/** A notebook whose sheets are worked out and stay so, whatever is typed. */
export class Book implements BookView {
  readonly notebook: Notebook;
  readonly rows: RowDeeds;
  readonly own: OwnDeeds;
  readonly whatIf: WhatIf;
  readonly clashes: Clashes;
  private engine: Engine;
  private live: readonly LiveSheet[];
  private readonly listeners = new Set<(change: BookChange) => void>();
  private readonly work: BookWork;
  private cut:
    | { readonly engine: Engine; readonly version: number; readonly lists: readonly CutList[] }
    | undefined;

  /** `pace` lets a page draw while a long job is worked out; until it is `worked`, cells are missing. */
  constructor(notebook: Notebook, pace?: Pace) {
    this.notebook = notebook;
    pace?.begin();
    this.engine = new Engine(definitionsOf(notebook.document.own), notebook, pace?.isOver);
    this.rows = new RowDeeds(notebook, () => this.engine, pace);
    this.own = new OwnDeeds(notebook, () => this.engine);
    this.whatIf = new WhatIf(notebook, this, openBook);
    this.clashes = new Clashes(
      notebook,
      () => this.engine,
      (sheet, row) => this.rowName(sheet, row),
    );
    this.live = this.showSheets();
    this.work = new BookWork(
      () => this.engine,
      notebook,
      pace,
      (change) => {
        this.tell(change);
      },
    );
    notebook.clashes.subscribe(() => {
      this.tell({ cells: NOTHING });
    });
    notebook.subscribe((changes) => {
      this.follow(changes);
    });
  }

  get name(): string {
    return this.notebook.document.name;
  }

  get sheets(): readonly SheetView[] {
    return this.live;
  }

  sheet(id: string): SheetView | undefined {
    return this.live.find((sheet) => sheet.id === id);
  }

  asks(): readonly Ask[] {
    return this.work.asks();
  }

  stops(choice?: StopChoice): readonly Stop[] {
    return this.work.stops(choice);
  }

  /** Waits until all is worked out, a slice at a time; hears how far that has come, from 0 to 1. */
  worked(heard?: (share: number) => void): Promise<void> {
    return this.work.worked(heard);
  }

  /** Works out all that a page left for later, before what stands here is given out. */
  finish(): void {
    this.notebook.finishBegun();
    this.work.finish();
  }

  working(sheet: string, row: string, column: string): Working | undefined {
    return workingOf({ sheet, row, column }, this.engine, this.notebook);
  }

  pointers(sheet: string, row: string, column: string): readonly string[] {
    const spot = spotOf({ sheet, row }, this.engine, this.notebook);
    return spot ? pointersOf(column, spot) : [];
  }

  capacityCurve(row: string): CurveView | undefined {
    return capacityCurve(row, this.engine, this.notebook);
  }

  strengthCurve(row: string | undefined): CurveView {
    return strengthCurve(row, this.engine, this.notebook);
  }

  cuts(): readonly CutList[] {
    const { engine } = this;
    const version = engine.versionOf(CUT_FROM);
    // A long run is planned again only where one of its lengths changed, and not with every key.
    if (this.cut?.engine !== engine || this.cut.version !== version)
      this.cut = { engine, version, lists: cutLists(this) };
    return this.cut.lists;
  }

  subscribe(listener: (change: BookChange) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  type(sheet: string, row: string, column: string, text: string, seen?: string): void {
    this.notebook.finishBegun();
    const label = this.labelFor(sheet, row, column);
    const isGone = this.sheet(sheet)?.growable === true && !this.notebook.row(sheet, row);
    if (seen !== undefined && isGone) {
      // Another window removed the row while this was typed.
      this.notebook.do(label, [{ edit: 'cell', sheet, row, column, before: seen, after: text }]);
      return;
    }
    const changes = typingChanges([{ sheet, row, column, text }], this.engine, this.notebook);
    this.notebook.do(label, seen === undefined ? changes : typedOver(changes, seen));
  }

  typeAll(label: string, entries: readonly Entry[]): void {
    this.notebook.finishBegun();
    this.notebook.do(label, typingChanges(entries, this.engine, this.notebook));
  }

  answer(ask: Ask, entry: string): void {
    if (ask.row !== undefined) {
      this.type(ask.sheet, ask.row, ask.column, entry);
      return;
    }
    const label = `answer for ${ask.columnLabel.toLowerCase()}`;
    const unread = this.unknownUnits(ask, entry);
    if (unread.length > 0) {
      this.typeAll(label, unread);
      return;
    }
    const name = `${ask.sheet}.${ask.column}`;
    const before = this.notebook.document.assumed.get(name);
    this.notebook.do(label, [{ edit: 'assumed', name, before, after: entry }]);
  }

  addRow(sheet: string): string {
    const [id = ''] = this.rows.put('add row', sheet, undefined, [new Map()]);
    return id;
  }

  removeRow(sheet: string, row: string): void {
    this.rows.remove(`remove ${this.rowName(sheet, row) || 'row'}`, sheet, [row]);
  }

  rename(name: string): void {
    const before = this.name;
    if (name !== before) this.notebook.do('rename', [{ edit: 'name', before, after: name }]);
  }

  setFormula(sheetId: string, column: string, formula: string | undefined): Problem | undefined {
    const sheet = this.engine.models.get(sheetId);
    const [band] = sheet?.bands ?? [];
    const model = band?.columns.get(column);
    if (!sheet || !band || !model) throw new Error(`Sheet ${sheetId} has no column ${column}.`);
    const name = `${sheetId}.${column}`;
    if (formula !== undefined) {
      const read = readFormula(formula, scopeOf(sheet, band, this.engine.models), model.kind);
      if (!isFormula(read)) return read;
    }
    if (this.notebook.document.own.has(name)) return this.own.setFormula(name, formula);
    const before = this.notebook.document.formulas.get(name);
    if (before === formula) return undefined;
    const label = formula === undefined ? `put the formula of ${name} back` : `formula of ${name}`;
    this.notebook.do(label, [{ edit: 'formula', name, before, after: formula }]);
    const bad = this.engine.badFormulas.get(name);
    if (bad && formula !== undefined) this.notebook.undo();
    return bad;
  }

  undo(): void {
    this.notebook.undo();
  }

  redo(): void {
    this.notebook.redo();
  }

  get undoLabel(): string | undefined {
    return this.notebook.undoLabel;
  }

  get redoLabel(): string | undefined {
    return this.notebook.redoLabel;
  }

  private showSheets(): readonly LiveSheet[] {
    return [...this.engine.models.values()].map(
      (sheet) => new LiveSheet(sheet, this.engine, this.notebook),
    );
  }

  private follow(changes: readonly Change[]): void {
    if (changes.some(({ edit }) => edit === 'formula' || edit === 'own')) {
      this.engine = new Engine(definitionsOf(this.notebook.document.own), this.notebook);
      this.live = this.showSheets();
      this.work.restart(true);
      this.tell({ cells: NOTHING });
      return;
    }
    for (const change of changes) this.touch(change);
    this.work.follow(
      changes,
      changes.every((change) => this.leavesPlaces(change)),
    );
  }

  // Rows that came or went have to be in their place before anything is drawn, unless a long file came in below them all.
  private leavesPlaces(change: Change): boolean {
    if (change.edit === 'remove rows') return false;
    if (change.edit !== 'add rows' || change.rows.length === 0) return true;
    const isBelow = change.at + change.rows.length === this.notebook.rows(change.sheet).length;
    return isBelow && change.rows.length > MANY_ROWS;
  }

  private tell(change: BookChange): void {
    for (const listener of this.listeners) listener(change);
  }

  private touch(change: Change): void {
    const { graph, models } = this.engine;
    switch (change.edit) {
      case 'input':
        this.touchInput(change.name);
        return;
      case 'assumed': {
        const [sheet = '', column = ''] = change.name.split('.');
        const entry = models.get(sheet)?.bands[0]?.columns.get(column)?.entry;
        if (entry) graph.touchAll(entry);
        return;
      }
      case 'cell':
        this.touchCell(change.sheet, change.row, change.column);
        return;
      case 'add rows':
      case 'remove rows': {
        const rows = models.get(change.sheet)?.bands[0]?.rows;
        const count = change.rows.length;
        if (rows instanceof EnteredRows) {
          const [removed, added] = change.edit === 'add rows' ? [0, count] : [count, 0];
          graph.splice(rows, change.at, removed, added);
        } else {
          for (const { id, cells } of change.rows) {
            for (const column of cells.keys()) this.touchCell(change.sheet, id, column);
          }
        }
        return;
      }
      default:
    }
  }

  private touchInput(name: string): void {
    const columns = this.engine.models.get('job')?.bands[0]?.columns;
    // The units of the job decide what many inputs start as.
    const touched = name === 'units' ? [...(columns?.keys() ?? [])] : [name];
    for (const id of touched) {
      const entry = columns?.get(id)?.entry;
      if (entry) this.engine.graph.touch(entry, 0);
    }
  }

  private touchCell(sheetId: string, rowId: string, column: string): void {
    const sheet = this.engine.models.get(sheetId);
    const [band] = sheet?.bands ?? [];
    const entry = band?.columns.get(column)?.entry;
    if (!sheet || !band || !entry) return;
    const row = rowAt(sheet, band, rowId, this.notebook, this.engine.models);
    if (row >= 0) this.engine.graph.touch(entry, row);
  }

  private unknownUnits(ask: Ask, unit: string): readonly Entry[] {
    const sheet = this.engine.models.get(ask.sheet);
    const model = sheet?.bands[0]?.columns.get(ask.column);
    if (!sheet || !model) return [];
    const shown = shownUnit(model.definition, this.notebook.document);
    return this.notebook.rows(ask.sheet).flatMap(({ id }) => {
      const typed = typedText(model, id, this.notebook) ?? '';
      if (!isUnknownUnit(typed, model, shown)) return [];
      return [
        {
          sheet: ask.sheet,
          row: id,
          column: ask.column,
          text: typed.replace(/\s*\?$/, ` ${unit}`),
        },
      ];
    });
  }

  private labelFor(sheet: string, row: string, column: string): string {
    const label =
      this.engine.models.get(sheet)?.bands[0]?.columns.get(column)?.definition.label ?? column;
    const name = this.rowName(sheet, row);
    return name === '' ? label.toLowerCase() : `${label.toLowerCase()}, ${name}`;
  }

  private rowName(sheetId: string, rowId: string): string {
    const live = this.sheet(sheetId);
    const sheet = this.engine.models.get(sheetId);
    const [band] = sheet?.bands ?? [];
    if (!live || !sheet || !band) return '';
    const row = rowAt(sheet, band, rowId, this.notebook, this.engine.models);
    return row < 0 ? '' : live.rowName(row);
  }
}

/** The changes as somebody meant them who saw something else standing there. */
function typedOver(changes: readonly Change[], seen: string): readonly Change[] {
  return changes.map((change) => {
    if (change.edit !== 'cell' && change.edit !== 'input') return change;
    if ((change.before ?? '') === seen) return change;
    return { ...change, before: seen === '' ? undefined : seen };
  });
}

/** Works out a notebook's sheets. */
export function openBook(notebook: Notebook, pace?: Pace): Book {
  return new Book(notebook, pace);
}
