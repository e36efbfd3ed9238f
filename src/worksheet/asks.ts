import { BLANK, KNOWN, UNREAD, type Column } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import { isDoubt, type Choice } from '../units/index.ts';
import { askOf, typedText } from './cell.ts';
import type { Engine } from './engine.ts';
import { readCell } from './entries.ts';
import type { BandModel, ColumnModel, SheetModel } from './model.ts';
import { places } from './places.ts';
import { reasonsFor } from './reasons.ts';
import { rowIdAt } from './row-ids.ts';
import { rowKeyAt, rowNameAt } from './row-names.ts';
import { shownUnit } from './shown.ts';
import { filled } from './stops.ts';
import type { Ask } from './view.ts';

/** Everything the notebook will not guess, in the order of the sheets and their rows. */
export function* asksIn(engine: Engine, notebook: Notebook): Generator<undefined, readonly Ask[]> {
  const asks: Ask[] = [];
  for (const sheet of engine.models.values()) {
    const [band] = sheet.bands;
    if (!band) continue;
    const desk = new AskDesk(sheet, band, engine, notebook);
    asks.push(...desk.missingColumns());
    yield;
    asks.push(...desk.unreadEntries());
    yield;
    asks.push(...desk.keys());
    yield;
    asks.push(...desk.together());
    yield;
  }
  return asks;
}

const WAITING = ['remedy', 'lean_angle'];

// How many waiting rows are looked at before a missing column counts as not needed.
const LOOKED_AT = 100;

class AskDesk {
  private readonly sheet: SheetModel;
  private readonly band: BandModel;
  private readonly engine: Engine;
  private readonly notebook: Notebook;

  constructor(sheet: SheetModel, band: BandModel, engine: Engine, notebook: Notebook) {
    this.sheet = sheet;
    this.band = band;
    this.engine = engine;
    this.notebook = notebook;
  }

  /** Entries that can't be read. Numbers of one column whose unit nobody knows are one ask. */
  unreadEntries(): readonly Ask[] {
    const asks: Ask[] = [];
    for (const model of this.band.columns.values()) {
      const { entry } = model;
      if (!entry) continue;
      let hasAskedUnit = false;
      for (const row of places(entry.states, UNREAD, this.band.rows.count)) {
        const typed = this.typed(model, row) ?? '';
        const isUnit = isUnknownUnit(typed, model, this.unit(model));
        if (isUnit && hasAskedUnit) continue;
        hasAskedUnit ||= isUnit;
        asks.push(isUnit ? this.unitAsk(model, typed) : this.entryAsk(model, row, typed));
      }
    }
    return asks;
  }

  /** Columns that a brought-in file lacks and a remedy waits for. */
  missingColumns(): readonly Ask[] {
    if (this.notebook.document.files.length === 0) return [];
    return [...this.band.columns.values()].flatMap((model) => {
      const { definition, entry } = model;
      const missing = definition.askWhenMissing;
      if (!missing || !entry || this.hasEntries(model) || !this.isWaitedFor(definition.id))
        return [];
      return [this.ask(model, undefined, '', missing.question, missing.choices)];
    });
  }

  /** Doubled and missing row keys. */
  keys(): readonly Ask[] {
    const { rows } = this.sheet.definition;
    const model = rows.from === 'entered' ? this.band.columns.get(rows.key) : undefined;
    if (!model) return [];
    const called = model.definition.label.toLowerCase();
    if (this.lacksKeys(model)) {
      return [
        this.ask(
          model,
          undefined,
          '',
          `The file gives no ${called} numbers. Type in which ${called} each row is.`,
          [],
        ),
      ];
    }
    if (areKnownAsDistinct(model.result)) return [];
    const rowsByKey = new Map<string, number[]>();
    for (let row = 0; row < this.band.rows.count; row++) {
      const key = this.key(row).trim();
      const same = rowsByKey.get(key);
      if (same) same.push(row);
      else rowsByKey.set(key, [row]);
    }
    if (rowsByKey.size === this.band.rows.count && !rowsByKey.has('')) {
      knowAsDistinct(model.result);
      return [];
    }
    return [...rowsByKey].flatMap(([key, same]) => {
      if (key !== '' && same.length === 1) return [];
      return same.map((row) =>
        this.ask(
          model,
          row,
          key,
          key === ''
            ? `This row has no ${called}. Which is it?`
            : `${String(same.length)} rows are called “${key}”. Which ${called} is this one?`,
          [],
        ),
      );
    });
  }

  /** Whether rows came from a file and not one of them says which it is. */
  private lacksKeys({ entry, formula }: ColumnModel): boolean {
    const { count } = this.band.rows;
    // The hours of a log follow from its days and times.
    if (formula || count < 2 || this.notebook.document.files.length === 0) return false;
    return entry !== undefined && entry.states.subarray(0, count).every((state) => state === BLANK);
  }

  /** Readings that can each be read and together raise a question. */
  together(): readonly Ask[] {
    return this.engine.asks
      .filter(({ sheet }) => sheet === this.sheet)
      .flatMap(({ definition, when }) => {
        const model = this.band.columns.get(definition.column);
        if (!model) return [];
        return [...places(when.column.values, 1, this.band.rows.count)].map((row) => {
          const question = filled(
            definition.question,
            this.sheet,
            this.band,
            row,
            this.engine,
            this.notebook,
          );
          return this.ask(model, row, this.typed(model, row) ?? '', question, definition.choices);
        });
      });
  }

  private unitAsk(model: ColumnModel, typed: string): Ask {
    const { choices } = askOf(typed, model, this.unit(model));
    return this.ask(
      model,
      undefined,
      typed.replace(/\s*\?$/, ''),
      `${model.definition.called ?? model.definition.label} has numbers without a unit, such as ${typed.replace(/\s*\?$/, '')}. Which unit?`,
      choices.map(({ entry }) => {
        const unit = entry.replace(/^[^A-Za-z]*/, '');
        return { label: unit, entry: unit };
      }),
    );
  }

  private entryAsk(model: ColumnModel, row: number, typed: string): Ask {
    const { note, choices } = askOf(typed, model, this.unit(model));
    return this.ask(model, row, typed, note, this.repeated(model, row, typed) ?? choices);
  }

  /** What a ditto mark stands for: the nearest entry above it that is none; undefined where the entry is no ditto mark. */
  private repeated(model: ColumnModel, row: number, typed: string): readonly Choice[] | undefined {
    if (!this.isDitto(model, typed)) return undefined;
    for (let above = row - 1; above >= 0; above--) {
      const entry = this.typed(model, above) ?? '';
      if (this.isDitto(model, entry)) continue;
      return entry === '' ? [] : [{ label: `yes, ${entry}`, entry }];
    }
    return [];
  }

  private isDitto(model: ColumnModel, typed: string): boolean {
    const read = readCell(typed, model.kind, this.unit(model));
    return isDoubt(read) && read.doubt === 'ditto';
  }

  private ask(
    model: ColumnModel,
    row: number | undefined,
    text: string,
    question: string,
    choices: readonly Choice[],
  ): Ask {
    const { sheet, band, engine, notebook } = this;
    const id = sheet.definition.id;
    const rowId =
      row === undefined ? undefined : rowIdAt(sheet, band, row, notebook, engine.models);
    const from = rowId === undefined ? undefined : notebook.row(id, rowId);
    return {
      id: `${id}/${rowId ?? ''}/${model.definition.id}`,
      sheet: id,
      row: rowId,
      rowName: row === undefined ? '' : rowNameAt(sheet, band, row, notebook, engine),
      column: model.definition.id,
      columnLabel: model.definition.called ?? model.definition.label,
      line: from?.from?.line,
      text: asWritten(text, from?.assumed?.get(model.definition.id)),
      question,
      choices,
    };
  }

  private isWaitedFor(column: string): boolean {
    const id = this.sheet.definition.id;
    const end = `/${column}`;
    const except = this.band.columns.get(column)?.except;
    let looked = 0;
    for (const waiting of WAITING) {
      const model = this.band.columns.get(waiting);
      for (let row = 0; model && row < this.band.rows.count && looked < LOOKED_AT; row++) {
        if (model.result.states[row] === KNOWN || except?.values[row] === 1) continue;
        looked += 1;
        const waits = [...reasonsFor(model.result, row, this.engine, this.notebook).waits.keys()];
        // Where something else is missing as well that no answer could fill, this one would not help.
        const isNext = waits.some((key) => key.startsWith(`${id}/`) && key.endsWith(end));
        if (isNext && waits.every((key) => this.isAskable(key, waiting))) return true;
      }
    }
    return false;
  }

  private isAskable(key: string, waiting: string): boolean {
    const [sheet, , column = ''] = key.split('/');
    const model = sheet === this.sheet.definition.id ? this.band.columns.get(column) : undefined;
    const missing = model?.definition.askWhenMissing;
    return missing !== undefined && (missing.waiting ?? WAITING).includes(waiting);
  }

  // What a row has by another reading of its own, the file still lacks for the others.
  private hasEntries({ entry, except }: ColumnModel): boolean {
    for (let row = 0; row < this.band.rows.count; row++) {
      if (entry?.states[row] !== BLANK && except?.values[row] !== 1) return true;
    }
    return false;
  }

  private typed(model: ColumnModel, row: number): string | undefined {
    const rowId = rowIdAt(this.sheet, this.band, row, this.notebook, this.engine.models) ?? '';
    return typedText(model, rowId, this.notebook);
  }

  private key(row: number): string {
    return rowKeyAt(this.sheet, this.band, row, this.notebook, this.engine);
  }

  private unit({ definition }: ColumnModel): string {
    return shownUnit(definition, this.notebook.document);
  }
}

// Keys seldom change, and comparing numbers is a hundred times as quick as writing each key out.
const distinctKeys = new WeakMap<Column, Float64Array>();

function knowAsDistinct(keys: Column): void {
  const { values, states } = keys;
  const { count } = keys.rows;
  if (states.subarray(0, count).every((state) => state === KNOWN))
    distinctKeys.set(keys, values.slice(0, count));
}

// A key that is not known is not a number, and so is never the same.
function areKnownAsDistinct(keys: Column): boolean {
  const { values, rows } = keys;
  const known = distinctKeys.get(keys);
  if (known?.length !== rows.count) return false;
  for (let row = 0; row < known.length; row++) if (known[row] !== values[row]) return false;
  return true;
}

// The unit that the file did not write is no part of what stood there.
function asWritten(text: string, assumed: string | undefined): string {
  return assumed !== undefined && /\btaken as\b/.test(assumed)
    ? text.replace(/ (?:in|mm|cm|ft|m)$/, '')
    : text;
}

/** Whether an entry is a number whose unit nobody knows: written `63.5 ?`. */
export function isUnknownUnit(typed: string, { kind }: ColumnModel, unit: string): boolean {
  const read = readCell(typed, kind, unit);
  return isDoubt(read) && read.doubt === 'unit';
}
