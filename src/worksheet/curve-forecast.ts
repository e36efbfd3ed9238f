import { KNOWN } from '../graph/index.ts';
import type { CurveStretch } from './curve-view.ts';
import { shownUnit, shownWithUnit } from './shown.ts';
import type { Spot } from './working-steps.ts';

const HOUR = 3600;

/** The readings of the temperature log, each for the hours since a pour for which it holds; times in seconds from the first pour. */
export function forecastOf(
  { engine, notebook }: Spot,
  pour: number,
  reach: number,
): readonly CurveStretch[] {
  const band = engine.models.get('temperatures')?.bands[0];
  const reading = band?.columns.get('temperature');
  if (!band || !reading) return [];
  const unit = shownUnit(reading.definition, notebook.document);
  const stretches: CurveStretch[] = [];
  for (let row = 0; row < band.rows.count; row++) {
    const [from, temperature] = [known('from', row), known('temperature', row)];
    if (from === undefined || temperature === undefined) continue;
    const until = known('until', row);
    const start = Math.max(0, from - pour);
    const end = Math.min(reach, (until ?? Infinity) - pour);
    if (end <= start) continue;
    const rain = known('rain', row) === 1 ? ', rain' : '';
    const label = `${shownWithUnit(temperature, reading.kind, unit)}${rain}`;
    stretches.push({ from: start / HOUR, to: end / HOUR, label });
  }
  return stretches;

  function known(column: string, row: number): number | undefined {
    const result = band?.columns.get(column)?.result;
    return result?.states[row] === KNOWN ? result.values[row] : undefined;
  }
}
