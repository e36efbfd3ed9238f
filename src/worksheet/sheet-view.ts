import { decode } from '../formula/index.ts';
import { BLANK, KNOWN, WRONG, type Rows } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import type { Value } from '../units/index.ts';
import { cellView, typedText } from './cell.ts';
import type { Engine } from './engine.ts';
import type { BandModel, ColumnModel, SheetModel } from './model.ts';
import { isOwn } from './own.ts';
import { rowAt, rowIdAt } from './row-ids.ts';
import { rowKeyAt, rowNameAt } from './row-names.ts';
import { isMetric, shownUnit, shownWithUnit } from './shown.ts';
import type { CellView, ColumnView, SheetView } from './view.ts';

/** A row of one of the bands. */
type Line = readonly [BandModel, number];

/** The inputs that name the yards, and what heads call them until they do. */
const YARDS = [
  ['first_yard', 'first yard'],
  ['second_yard', 'second yard'],
] as const;

/** A sheet of the engine, as screens and pages read it. */
export class LiveSheet implements SheetView {
  readonly id: string;
  readonly title: string;
  readonly question: string;
  readonly editions: string;
  readonly follow: SheetView['follow'];
  readonly growable: boolean;
  readonly own: boolean;
  private readonly sheet: SheetModel;
  private readonly engine: Engine;
  private readonly notebook: Notebook;
  private known:
    | {
        readonly revision: number;
        readonly state: string;
        readonly columns: readonly ColumnView[];
      }
    | undefined;

  private listed: { readonly revision: number; readonly lines: readonly Line[] } | undefined;

  constructor(sheet: SheetModel, engine: Engine, notebook: Notebook) {
    this.sheet = sheet;
    this.engine = engine;
    this.notebook = notebook;
    this.id = sheet.definition.id;
    this.title = sheet.definition.title;
    this.question = sheet.definition.question;
    this.editions = sheet.definition.editions ?? '';
    this.follow = sheet.definition.follow ?? [];
    this.growable = sheet.definition.rows.from === 'entered';
    this.own = engine.definitions.own.has(this.id);
  }

  get columns(): readonly ColumnView[] {
    const { known } = this;
    const { revision } = this.engine;
    // Screens ask for the columns at every cell they draw.
    if (known?.revision === revision) return known.columns;
    const state = this.stateOfColumns();
    const columns = known?.state === state ? known.columns : this.viewColumns();
    this.known = { revision, state, columns };
    return columns;
  }

  // A formula or column of the user's own makes a new sheet; the rest of a column changes with these.
  private stateOfColumns(): string {
    const offers = this.sheet.definition.columns.flatMap(({ suggestFrom }) =>
      suggestFrom === undefined ? [] : this.offering(suggestFrom),
    );
    const versions = offers.map(({ model }) => model?.result.version ?? 0);
    const yards = YARDS.map(([input]) => this.notebook.document.inputs.get(input));
    return `${String(isMetric(this.notebook.document))} ${versions.join()} ${yards.join()}`;
  }

  /** Words of a head with the yards called as the job calls them. */
  private named(words: string): string {
    return YARDS.reduce((text, [input, usual]) => {
      const name = this.notebook.document.inputs.get(input)?.trim() ?? '';
      return name === '' ? text : text.replace(usual, () => name);
    }, words);
  }

  private viewColumns(): readonly ColumnView[] {
    const band = this.sheet.bands[0];
    return this.sheet.definition.columns.map((definition): ColumnView => {
      const name = `${this.id}.${definition.id}`;
      const own = this.notebook.document.formulas.get(name);
      const model = band?.columns.get(definition.id);
      return {
        id: definition.id,
        label: this.named(definition.label),
        called: definition.called ?? definition.label,
        hint: this.named(definition.hint ?? ''),
        unit: shownUnit(definition, this.notebook.document),
        kind: model?.kind ?? { type: 'text' },
        entered: definition.entry === true,
        formula: own ?? definition.formula,
        help: definition.help ?? '',
        source: own === undefined ? (definition.source ?? '') : 'your own formula',
        standing: own === undefined ? (definition.standing ?? '') : 'yours',
        choices: this.offered(definition.choices ?? definition.suggest, definition.suggestFrom),
        own: isOwn(name, this.engine.definitions)
          ? 'column'
          : own === undefined
            ? undefined
            : 'formula',
        builtIn: own === undefined ? undefined : definition.formula,
        show: definition.show === 'when worked' ? 'when filled' : (definition.show ?? 'always'),
        group: definition.group ?? '',
      };
    });
  }

  get rowCount(): number {
    if (this.sheet.definition.rows.from === 'lines') return this.lines().length;
    return this.sheet.bands[0]?.rows.count ?? 0;
  }

  get rowsVersion(): number {
    // Which lines stand on a list is found again with every change.
    if (this.sheet.definition.rows.from === 'lines') return this.engine.revision;
    return this.sheet.bands[0]?.rows.version ?? 0;
  }

  rowId(index: number): string {
    const [band, row] = this.at(index);
    return rowIdAt(this.sheet, band, row, this.notebook, this.engine.models) ?? '';
  }

  placeOf(id: string): number {
    const { from } = this.sheet.definition.rows;
    const [band] = this.sheet.bands;
    if (band && (from === 'entered' || from === 'following'))
      return rowAt(this.sheet, band, id, this.notebook, this.engine.models);
    // A list of lines is short.
    for (let at = 0; at < this.rowCount; at++) if (this.rowId(at) === id) return at;
    return -1;
  }

  rowKey(index: number): string {
    const [band, row] = this.at(index);
    return rowKeyAt(this.sheet, band, row, this.notebook, this.engine);
  }

  rowName(index: number): string {
    const [band, row] = this.at(index);
    return rowNameAt(this.sheet, band, row, this.notebook, this.engine);
  }

  cell(index: number, column: string): CellView {
    const [band, row] = this.at(index);
    const model = band.columns.get(column);
    if (!model) throw new Error(`Sheet ${this.id} has no column ${column}.`);
    return cellView(this.sheet, band, model, row, this.engine, this.notebook);
  }

  value(index: number, column: string): Value | undefined {
    const [band, row] = this.at(index);
    const model = band.columns.get(column);
    if (model?.result.states[row] !== KNOWN) return undefined;
    return decode(model.result.values[row] ?? NaN, model.kind, this.engine.words);
  }

  isFilled(column: string, rows: number): boolean {
    const { sheet, engine, notebook } = this;
    for (let index = 0; index < Math.min(rows, this.rowCount); index++) {
      const [band, row] = this.at(index);
      const model = band.columns.get(column);
      if (!model) return false;
      if (model.entry && model.entry.states[row] !== BLANK) {
        const id = rowIdAt(sheet, band, row, notebook, engine.models) ?? '';
        if (typedText(model, id, notebook) !== undefined) return true;
      }
      // Most that is worked out as well has something in every row: it is filled once somebody typed.
      const isTyped = model.suggestion && model.definition.show !== 'when worked';
      const state = isTyped ? undefined : model.result.states[row];
      if (state === KNOWN || state === WRONG) return true;
    }
    return false;
  }

  totals(): ReadonlyMap<string, string> {
    const totals = new Map<string, string>();
    for (const definition of this.sheet.definition.columns) {
      const hidden = this.engine.totals.get(`${this.id}.${definition.id}`);
      const model = this.sheet.bands[0]?.columns.get(definition.id);
      if (!hidden || !model || hidden.column.states[0] !== KNOWN || this.rowCount === 0) continue;
      const value = decode(hidden.column.values[0] ?? NaN, model.kind, this.engine.words);
      totals.set(
        definition.id,
        shownWithUnit(value, model.kind, shownUnit(definition, this.notebook.document)),
      );
    }
    return totals;
  }

  // A line whose condition is false is not on the list; one that is not decided yet is, and says what it waits for.
  private lines(): readonly Line[] {
    const { revision } = this.engine;
    // They are asked for again with every cell.
    if (this.listed?.revision !== revision) this.listed = { revision, lines: this.linesNow() };
    return this.listed.lines;
  }

  private linesNow(): readonly Line[] {
    return this.sheet.bands.flatMap((band) =>
      Array.from({ length: band.rows.count }, (_, row) => [band, row] as const).filter(
        ([, row]) => band.when?.column.values[row] !== 0,
      ),
    );
  }

  private at(index: number): Line {
    const [first] = this.sheet.bands;
    const found =
      this.sheet.definition.rows.from === 'lines'
        ? this.lines()[index]
        : first && index < first.rows.count
          ? ([first, index] as const)
          : undefined;
    if (!found) throw new Error(`Sheet ${this.id} has no row ${String(index)}.`);
    return found;
  }

  private offered(
    choices: readonly string[] | undefined,
    from: string | undefined,
  ): readonly string[] {
    if (from === undefined) return choices ?? [];
    return this.offering(from).flatMap(({ model, rows }) =>
      Array.from({ length: rows.count }, (_, row) =>
        model?.result.states[row] === KNOWN
          ? this.engine.words.text(model.result.values[row] ?? NaN)
          : '',
      ).filter((text) => text !== ''),
    );
  }

  /** The column, written sheet.column, in each band of its sheet. */
  private offering(
    name: string,
  ): readonly { readonly model: ColumnModel | undefined; readonly rows: Rows }[] {
    const [sheet = '', column = ''] = name.split('.');
    const { bands = [] } = this.engine.models.get(sheet) ?? {};
    return bands.map(({ rows, columns }) => ({ model: columns.get(column), rows }));
  }
}
