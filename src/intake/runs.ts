import type { HeaderMapping, IntakeRow } from './intake.ts';
import { foldedText } from './words.ts';

/** Under this header a row keeps the run that a line above it names. */
export const RUN = 'run';

/** What to say of the runs of a file; undefined where it holds one. */
export function runsNote(
  rows: readonly IntakeRow[],
  mapping: readonly HeaderMapping[],
): string | undefined {
  const header =
    mapping.find((one) => one.column === null && RUN_HEADER.test(foldedText(one.header)))?.header ??
    RUN;
  const names = new Set<string>();
  for (const { kept } of rows) names.add(kept.get(header) ?? '');
  names.delete('');
  if (names.size > 1) {
    const shown = [...names].slice(0, MOST_NAMED).map((name) => `“${name}”`);
    if (names.size > MOST_NAMED) shown.push('…');
    return `The file holds ${String(names.size)} runs (${shown.join(', ')}); each post keeps the name of its run beside it.`;
  }
  const lines = beginsAgain(rows);
  if (lines.length === 0) return undefined;
  return `Posts and stations begin again at line ${lines.slice(0, MOST_NAMED).join(', ')}: the file seems to hold ${String(lines.length + 1)} runs. Posts with one number are asked about.`;
}

const MOST_NAMED = 6;
const RUN_HEADER =
  /^(?:fence )?(?:run|section|stretch|side|lauf|zaunzug|abschnitt|tramo|lado)(?: (?:no|number|name|id|nr))?$/;

/** The lines at which the first post and its station come again. */
function beginsAgain(rows: readonly IntakeRow[]): readonly number[] {
  const post = rows[0]?.cells.get('post');
  const station = rows[0]?.cells.get('station');
  if (post === undefined || station === undefined) return [];
  const again = rows.filter(
    ({ cells }, at) => at > 0 && cells.get('post') === post && cells.get('station') === station,
  );
  return again.map(({ line }) => line);
}
