import type { Change, Clash, Notebook } from '../notebook/index.ts';
import type { Engine } from './engine.ts';
import type { ClashParts, ClashView } from './view.ts';

/** Entries that two windows wrote in one place, as a person sees and settles them. */
export class Clashes implements ClashParts {
  private readonly notebook: Notebook;
  private readonly engine: () => Engine;
  private readonly rowName: (sheet: string, row: string) => string;

  constructor(
    notebook: Notebook,
    engine: () => Engine,
    rowName: (sheet: string, row: string) => string,
  ) {
    this.notebook = notebook;
    this.engine = engine;
    this.rowName = rowName;
  }

  all(): readonly ClashView[] {
    return this.notebook.clashes.all().map((clash) => ({
      ...this.placeOf(clash),
      standing: clash.standing ?? '',
      other: clash.other ?? '',
      rowIsGone: clash.rowIsGone,
      keep: () => {
        this.settle(clash, false);
      },
      takeOther: () => {
        this.settle(clash, true);
      },
    }));
  }

  private placeOf({ place }: Clash): Pick<ClashView, 'where' | 'place'> {
    switch (place.edit) {
      case 'name':
        return { where: 'Name of the job', place: undefined };
      case 'input':
        return { where: this.labelOf('job', place.name), place: { sheet: 'job', row: 'job', column: place.name } }; // prettier-ignore
      case 'cell': {
        const row = this.rowName(place.sheet, place.row);
        const label = this.labelOf(place.sheet, place.column);
        return { where: row === '' ? label : `${label}, ${row}`, place };
      }
      default: {
        const [sheet = '', column = ''] = place.name.split('.');
        const what = place.edit === 'formula' ? 'Formula' : 'Blanks';
        return { where: `${what} of ${this.labelOf(sheet, column)}`, place: { sheet, column } };
      }
    }
  }

  private labelOf(sheet: string, column: string): string {
    const model = this.engine().models.get(sheet)?.bands[0]?.columns.get(column);
    return model?.definition.label ?? column;
  }

  private settle({ place, standing, other, rowIsGone }: Clash, isOther: boolean): void {
    const label = isOther ? 'take the other entry' : 'keep the entry';
    const after = isOther ? other : standing;
    const write = { ...place, before: standing, after } as Change;
    if (!rowIsGone || !isOther || place.edit !== 'cell') {
      this.notebook.do(label, [write]);
      return;
    }
    // The row comes back with what was written in it while it was removed.
    const { sheet, row } = place;
    const at = this.notebook.rows(sheet).length;
    const isBack = this.notebook.row(sheet, row) !== undefined;
    const added: Change = { edit: 'add rows', sheet, at, rows: [{ id: row, cells: new Map() }] };
    this.notebook.do(label, isBack ? [write] : [added, write]);
  }
}
