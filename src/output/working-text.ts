import { nearest, problem, type Problem } from '../units/index.ts';
import type { BookView, RuleCall, Working, WorkingStep } from '../worksheet/index.ts';
import { chaptersOf, restsOn } from './chapters.ts';
import { authority, cameBy } from './working-words.ts';

/**
 * The working of cells as lines of text: `cure` is every worked-out cell of a sheet,
 * `cure.rehang_after` those of one column; with the key of a row, of that row alone.
 */
export function workingText(book: BookView, name: string, key?: string): string | Problem {
  const [sheetId = '', column] = name.split('.');
  const sheet = book.sheet(sheetId);
  const ids = book.sheets.map(({ id }) => id);
  if (!sheet) return nowhere('sheet', sheetId, ids);
  const worked = sheet.columns.flatMap(({ id, formula }) => (formula === undefined ? [] : [id]));
  if (column !== undefined && !worked.includes(column)) {
    return nowhere(`worked-out column on ${sheetId}`, column, worked);
  }
  const keys = Array.from({ length: sheet.rowCount }, (_, row) => sheet.rowKey(row));
  if (key !== undefined && !keys.includes(key)) return nowhere(`row on ${sheetId}`, key, keys);
  return keys
    .flatMap((each, row) => (key === undefined || key === each ? [sheet.rowId(row)] : []))
    .flatMap((row) => {
      if (column !== undefined) return cellText(book.working(sheetId, row, column));
      return rowText(book, sheetId, row, worked);
    })
    .join('\n\n');
}

// Posts and holes go as an inspector follows them, and then whatever else they have.
function rowText(
  book: BookView,
  sheet: string,
  row: string,
  columns: readonly string[],
): readonly string[] {
  const chapters = chaptersOf(book, row, sheet);
  const told = chapters.flatMap(({ workings }) =>
    workings.flatMap(({ place }) => (place.sheet === sheet ? [place.column] : [])),
  );
  const rest = columns.filter((id) => !told.includes(id));
  const readings = restsOn(chapters).map((step) => `  ${stepLine(step)}`);
  return [
    ...(chapters.length === 0 ? [] : [['# Readings and inputs', ...readings].join('\n')]),
    ...chapters.flatMap(({ title, workings }) => [`# ${title}`, ...workings.map(cellText)]),
    ...(chapters.length === 0 ? [] : ['# And the rest']),
    ...rest.map((id) => cellText(book.working(sheet, row, id))),
  ];
}

function cellText(working: Working | undefined): string {
  if (!working) return '';
  const lines = [
    ...formulaLines(working),
    ...working.problems,
    ...working.waits.map(({ label }) => `waits for ${label}`),
    ...working.steps.map(stepLine),
    ...working.gathered.map((each) => {
      return `${each.text}: ${each.meaning}, ${String(each.rows)} rows, ${each.result}`;
    }),
    ...working.rules.flatMap(ruleLines),
    said('Source', authority(working.standing, working.source)),
    said('Read by', working.usedBy.map(({ label }) => label).join('; ')),
  ].filter((line) => line !== '');
  return [headLine(working), ...lines.map((line) => `  ${line}`)].join('\n');
}

function headLine({ title, value, note, isOverruled, typed, worked }: Working): string {
  const head = `${title}: ${value || note || 'blank'}`;
  return isOverruled ? `${head}, typed “${typed ?? ''}” over ${worked || 'nothing'}` : head;
}

function formulaLines({ formula = '', inNumbers }: Working): readonly string[] {
  return inNumbers === '' || inNumbers === formula
    ? [`= ${formula}`]
    : [`= ${formula}`, `= ${inNumbers}`];
}

function stepLine(step: WorkingStep): string {
  const { name, label, sheet, taken, si, isUsed } = step;
  const value = `${taken || 'no value'}${si === '' ? '' : ` (${si})`}`;
  const words = [sheet, ...cameBy(step)].filter((each) => each !== '').join('; ');
  return `${name}, ${label}: ${value}${isUsed ? '' : ', not needed here'}; ${words}`;
}

function ruleLines(rule: RuleCall): readonly string[] {
  const { text, result, problem: wrong, meaning, equation, onTheWay, isUsed } = rule;
  if (!isUsed) return [`${text}: not needed here`];
  const details = [
    meaning,
    equation,
    rule.given.map(({ name, value }) => `${name} ${value || 'no value'}`).join('; '),
    onTheWay.map(({ symbol, value }) => `${symbol} = ${value}`).join('; '),
    authority(rule.standing, rule.source),
    rule.caution,
  ].filter((line) => line !== '');
  return [`${text} gives ${result || wrong || 'no value'}`, ...details.map((line) => `  ${line}`)];
}

function said(title: string, words: string): string {
  return words === '' ? '' : `${title}: ${words}`;
}

function nowhere(what: string, name: string, known: readonly string[]): Problem {
  const meant = nearest(name, known);
  const fix =
    meant === undefined ? `Use one of these: ${known.join(', ')}.` : `Did you mean “${meant}”?`;
  return problem('', `There is no ${what} called “${name}”.`, fix);
}
