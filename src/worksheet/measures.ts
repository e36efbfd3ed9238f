import { fromSI, parseUnit } from '../units/index.ts';
import type { ColumnModel } from './model.ts';
import { shownUnit, shownWithUnit, unitText } from './shown.ts';
import type { Spot } from './working-steps.ts';

/** Numbers as the columns of a sheet show them; a job input serves where the sheet has no such column. */
export class Measures {
  private readonly spot: Spot;

  private readonly sheet: string;

  constructor(spot: Spot, sheet: string = spot.sheet.definition.id) {
    this.spot = spot;
    this.sheet = sheet;
  }

  /** The unit of a column, as people write it. */
  unit(column: string): string {
    return unitText(this.symbol(column));
  }

  /** A number in the unit of a column. */
  in(column: string, value: number): number {
    const unit = parseUnit(this.symbol(column));
    return unit ? fromSI(value, unit) : value;
  }

  /** A number as the column shows it, with its unit. */
  text(column: string, value: number): string {
    const { kind, definition } = this.model(column);
    return shownWithUnit(value, kind, this.symbol(column), definition.percent);
  }

  private symbol(column: string): string {
    return shownUnit(this.model(column).definition, this.spot.notebook.document);
  }

  private model(column: string): ColumnModel {
    const { models } = this.spot.engine;
    const [model] = [this.sheet, 'job'].flatMap(
      (sheet) => models.get(sheet)?.bands[0]?.columns.get(column) ?? [],
    );
    if (!model) throw new Error(`There is no column ${column}.`);
    return model;
  }
}
