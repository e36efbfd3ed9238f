import type { NotebookDocument } from '../notebook/index.ts';
import {
  LENGTH,
  numberText,
  parseUnit,
  usualUnit,
  writeDate,
  writeQuantity,
  type Kind,
  type Unit,
  type Value,
} from '../units/index.ts';
import type { ColumnDefinition } from './definition.ts';

/** The unit a column is shown and typed in, by the units of the job; blank where it has none. */
export function shownUnit(
  { unit, metric, id }: ColumnDefinition,
  document: NotebookDocument,
): string {
  return (id !== 'units' && isMetric(document) ? (metric ?? unit) : unit) ?? '';
}

/** What a job input has before anybody typed one, as a person would type it. */
export function startingText(
  { start, startMetric, id }: ColumnDefinition,
  document: NotebookDocument,
): string | undefined {
  return id !== 'units' && isMetric(document) ? (startMetric ?? start) : start;
}

/** Whether the job is worked in metric units. */
export function isMetric(document: NotebookDocument): boolean {
  return document.inputs.get('units')?.trim().toLowerCase() === 'metric';
}

/** A value as people read it, in a unit but without it. */
export function shownText(
  value: Value,
  kind: Kind,
  unit: string,
  percent = false,
  digits = 4,
): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  if (typeof value === 'number') {
    if (kind.type === 'date') return writeDate(value);
    if (kind.type !== 'quantity') return String(value);
    // A slope is read off a tape: inches in each foot.
    if (unit === 'in/ft') return writeQuantity(value * 12 * 0.0254, unitOf('in', kind));
    if (percent) return shareText(value, digits);
    // A hundredth of an hour is half a minute.
    if (unit === 'h') return numberText(Math.round(value / 36) / 100, 12);
    return writeQuantity(value, unitOf(unit, kind));
  }
  const of = kind.type === 'list' ? kind.of : kind;
  return value.map((item) => shownText(item, of, unit)).join(', ');
}

// What is over the line never reads as on it: more digits from there on, and words where they end.
function shareText(share: number, digits: number): string {
  const text = numberText(share * 100, share < 0.995 ? digits : Math.max(4, digits));
  return share > 1 + 1e-9 && text === '100' ? 'over 100%' : `${text}%`;
}

/** The same with its unit, for messages. */
export function shownWithUnit(value: Value, kind: Kind, unit: string, percent = false): string {
  return inUnit(shownText(value, kind, unit, percent), unit);
}

/** A value's text with its unit behind it, where it has both. */
export function inUnit(text: string, unit: string): string {
  if (unit === '' || text === '' || text.endsWith('%')) return text;
  return `${text} ${unitText(unit)}`;
}

/** A unit as people write it: `ft³`, `°F`, `lbf·ft`. */
export function unitText(unit: string): string {
  return unit
    .replace('degF', '°F')
    .replace('degC', '°C')
    .replaceAll('^2', '²')
    .replaceAll('^3', '³')
    .replaceAll('*', '·');
}

function unitOf(symbol: string, kind: Kind): Unit {
  const unit = parseUnit(symbol);
  if (unit) return unit;
  return usualUnit(kind.type === 'quantity' ? kind.dimension : LENGTH);
}
