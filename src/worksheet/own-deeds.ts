import { isFormula, readFormula } from '../formula/index.ts';
import type { Change, Notebook, OwnPart, Row } from '../notebook/index.ts';
import { isProblem, nearest, problem, type Problem } from '../units/index.ts';
import { completionAt } from './complete.ts';
import { Engine } from './engine.ts';
import { kindNames } from './kinds.ts';
import { definitionsOf } from './own.ts';
import { nameFrom, refusedColumnName, refusedSheetName } from './own-names.ts';
import type {
  Completion,
  FormulaCheck,
  NewColumn,
  NewSheet,
  OwnParts,
  Received,
} from './own-view.ts';
import { isSharedText, readShared, sharedText } from './share.ts';
import { scopeOf } from './scope.ts';
import { tryFormula } from './try-formula.ts';

/** The user's own columns, sheets and formulas in one notebook. */
export class OwnDeeds implements OwnParts {
  readonly kinds = kindNames();
  private readonly notebook: Notebook;
  private readonly engineNow: () => Engine;

  constructor(notebook: Notebook, engineNow: () => Engine) {
    this.notebook = notebook;
    this.engineNow = engineNow;
  }

  nameFor(label: string): string {
    return nameFrom(label);
  }

  check(sheetId: string, column: string, formula: string, row: string): FormulaCheck {
    const sheet = this.engine.models.get(sheetId);
    const [band] = sheet?.bands ?? [];
    if (!sheet || !band) throw new Error(`There is no sheet ${sheetId}.`);
    return tryFormula(formula, { sheet, band, column, row }, this.engine, this.notebook);
  }

  complete(sheet: string, _column: string, formula: string, caret: number): Completion {
    return completionAt(this.engine, sheet, formula, caret);
  }

  addColumn(sheet: string, asked: NewColumn): Problem | undefined {
    const column = columnPart(asked);
    const id = String(column['id']);
    const { sheets } = this.engine.definitions;
    const refused = refusedColumnName(
      id,
      sheets.find((one) => one.id === sheet),
      sheets,
    );
    if (refused) return refused;
    const where = `${asked.label}, in ${sheet}`;
    return this.put(`add the column ${asked.label}`, [[`${sheet}.${id}`, column]], where);
  }

  removeColumn(sheet: string, column: string): void {
    const name = `${sheet}.${column}`;
    const part = this.document.own.get(name);
    const label = typeof part?.['label'] === 'string' ? part['label'] : column;
    const cells = this.notebook.rows(sheet).flatMap(({ id, cells }): readonly Change[] => {
      const before = cells.get(column);
      if (before === undefined) return [];
      return [{ edit: 'cell', sheet, row: id, column, before, after: undefined }];
    });
    this.notebook.do(`remove the column ${label}`, [
      ...cells,
      ...this.forget((other) => other === name),
      this.change([...this.document.own].filter(([other]) => other !== name)),
    ]);
  }

  addSheet(asked: NewSheet): Problem | undefined {
    const id = nameFrom(asked.title);
    const refused = refusedSheetName(id, this.engine.definitions.sheets);
    if (refused) return refused;
    return this.put(
      `add the sheet ${asked.title}`,
      [[id, sheetPart(id, asked, this.engine)]],
      asked.title,
    );
  }

  removeSheet(sheet: string): void {
    const rows = this.notebook.rows(sheet).map(copyOf);
    const inside = (name: string) => name === sheet || name.startsWith(`${sheet}.`);
    this.notebook.do(`remove the sheet ${sheet}`, [
      ...(rows.length === 0 ? [] : [{ edit: 'remove rows', sheet, at: 0, rows } as const]),
      ...this.forget(inside),
      this.change([...this.document.own].filter(([name]) => !inside(name))),
    ]);
  }

  share(sheet: string): string {
    return sharedText(sheet, this.document);
  }

  isShared(text: string): boolean {
    return isSharedText(text);
  }

  receive(text: string): Received | Problem {
    const shared = readShared(text);
    if (isProblem(shared)) return shared;
    const { parts, formulas } = shared;
    for (const [name] of parts) {
      if (!this.document.own.has(name)) continue;
      return problem(
        shared.where,
        `This notebook has its own “${name}” already.`,
        'Remove that one first, or rename the one in the file.',
      );
    }
    const label = `bring in ${shared.title}`;
    const wrong = this.put(label, parts, shared.where, formulas);
    if (wrong) return wrong;
    return {
      taken: [...parts.map(([name]) => name), ...formulas.map(([name]) => `formula of ${name}`)],
      sheet: shared.sheet,
    };
  }

  problems(): readonly Problem[] {
    return [...this.engine.definitions.problems.values()];
  }

  /** Gives one of the user's own columns another formula. */
  setFormula(name: string, formula: string | undefined): Problem | undefined {
    const part = this.document.own.get(name);
    if (!part) return undefined;
    const { formula: before, ...rest } = part;
    if (before === formula) return undefined;
    const changed: OwnPart =
      formula === undefined ? { ...rest, entry: true } : { ...rest, formula };
    return this.put(`formula of ${name}`, [[name, changed]], name);
  }

  private get engine(): Engine {
    return this.engineNow();
  }

  private get document() {
    return this.notebook.document;
  }

  /** Puts parts to work where all of them can be; else says what is wrong and changes nothing. */
  private put(
    label: string,
    parts: readonly (readonly [string, OwnPart])[],
    where: string,
    formulas: readonly (readonly [string, string])[] = [],
  ): Problem | undefined {
    const own = new Map(this.document.own);
    for (const [name, part] of parts) own.set(name, part);
    const definitions = definitionsOf(own);
    for (const [name] of parts) {
      const refused = definitions.problems.get(name);
      if (refused) return refused;
    }
    const trial = new Engine(definitions, this.notebook);
    const before = this.engine.badFormulas;
    const bad = [...trial.badFormulas].find(([name]) => !before.has(name));
    if (bad) return { ...bad[1], where: `${where}, formula of ${bad[0]}` };
    const wrong = firstWrong(formulas, trial);
    if (wrong) return { ...wrong, where: `${where}, ${wrong.where}` };
    this.notebook.do(label, [
      ...(parts.length === 0 ? [] : [this.change([...own])]),
      ...formulas.map(([name, after]): Change => {
        return { edit: 'formula', name, before: this.document.formulas.get(name), after };
      }),
    ]);
    return undefined;
  }

  private change(after: readonly (readonly [string, OwnPart])[]): Change {
    return { edit: 'own', before: [...this.document.own], after };
  }

  /** Takes formulas and agreements of columns away that are about to go. */
  private forget(goes: (name: string) => boolean): readonly Change[] {
    const { formulas, assumed } = this.document;
    return [
      ...[...formulas]
        .filter(([name]) => goes(name))
        .map(([name, before]): Change => {
          return { edit: 'formula', name, before, after: undefined };
        }),
      ...[...assumed]
        .filter(([name]) => goes(name))
        .map(([name, before]): Change => {
          return { edit: 'assumed', name, before, after: undefined };
        }),
    ];
  }
}

function columnPart(asked: NewColumn): OwnPart {
  const { label, kind, choices, unit = '', entry, formula = '', help = '', total, after } = asked;
  return {
    id: asked.id === undefined || asked.id === '' ? nameFrom(label) : asked.id,
    label: label.trim(),
    kind,
    ...(kind === 'choice' && { choices }),
    ...(unit !== '' && { unit }),
    ...(entry && { entry }),
    ...(formula !== '' && { formula }),
    ...(help !== '' && { help }),
    ...(total === true && { total: 'sum' }),
    ...(after !== undefined && { after }),
  };
}

function sheetPart(id: string, asked: NewSheet, engine: Engine): OwnPart {
  const { title, question, follows, where, called } = asked;
  const followed = engine.models.get(follows)?.definition;
  const rows = followed?.rows;
  const key = rows && 'key' in rows ? rows.key : undefined;
  const keyColumn = followed?.columns.find((column) => column.id === key);
  const base = { format: 1, id, title: title.trim(), question: question.trim() };
  if (!keyColumn || key === undefined)
    return {
      ...base,
      rows: { from: 'entered', key: 'name', called },
      columns: [{ id: 'name', label: 'Name', kind: 'text', entry: true }],
    };
  return {
    ...base,
    rows: { from: 'following', sheet: follows, ...(where !== '' && { where }), key, called },
    columns: [
      {
        id: key,
        label: keyColumn.label,
        kind: keyColumn.kind,
        ...(keyColumn.choices && { choices: keyColumn.choices }),
        formula: `${follows}.${key}`,
      },
    ],
  };
}

function firstWrong(
  formulas: readonly (readonly [string, string])[],
  engine: Engine,
): Problem | undefined {
  for (const [name, text] of formulas) {
    const [sheetId = '', column = ''] = name.split('.');
    const sheet = engine.models.get(sheetId);
    const [band] = sheet?.bands ?? [];
    const model = band?.columns.get(column);
    if (!sheet || !band || !model) {
      const names = [...engine.models.values()].flatMap(({ definition: { id, columns } }) =>
        columns.map((each) => `${id}.${each.id}`),
      );
      const meant = nearest(name, names);
      return problem(
        `formula of ${name}`,
        `There is no column “${name}”.`,
        meant === undefined ? 'Bring in the sheet it stands on first.' : `Did you mean “${meant}”?`,
      );
    }
    const read = readFormula(text, scopeOf(sheet, band, engine.models), model.kind);
    if (!isFormula(read)) return { ...read, where: `formula of ${name}, ${read.where}` };
  }
  return undefined;
}

function copyOf(row: Row): Row {
  return { ...row, cells: new Map(row.cells) };
}
