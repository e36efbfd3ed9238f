import { html, nothing, type TemplateResult } from 'lit';
import type { BookView, RuleCall, SheetView, Working, WorkingStep } from '../../worksheet/index.ts';
import { authority, cameBy } from '../../output/index.ts';
import { figures } from '../working-detail.ts';

/** The working of a sheet's computed columns: each formula once, with a line for every row given; a single row is told in words. */
export function columnWorkings(
  book: BookView,
  sheet: SheetView,
  rows: readonly number[],
): TemplateResult | typeof nothing {
  const groups = sheet.columns.flatMap(({ id }) => formulaGroups(book, sheet, rows, id));
  const [waiting, worked] = [groups.filter(waits), groups.filter((lines) => !waits(lines))];
  if (groups.length === 0) return nothing;
  return html`<h2>${sheet.title}: how it was worked out</h2>
    ${
      rows.length === 1
        ? html`<div class="single">
            ${worked.map(([line]) => (line ? renderSingle(sheet, line.working) : nothing))}
          </div>`
        : html`<p class="question">
              Names as they stand in the formulas, then what each was in that row. In brackets: not
              needed there.
            </p>
            <div class="blocks">${worked.map((lines) => renderBlock(sheet, lines))}</div>`
    }
    ${
      waiting.length === 0
        ? nothing
        : renderWaiting(
            book,
            waiting.flatMap(([line]) => (line ? [line.working] : [])),
          )
    }`;
}

// More columns than this need the width of the page.
const MOST_IN_COLUMN = 3;

/** One row of a block: what the row is called, and its working. */
interface Line {
  readonly rowName: string;
  readonly working: Working;
}

// Lines of a list have formulas of their own; rows that share one are told together.
function formulaGroups(
  book: BookView,
  sheet: SheetView,
  rows: readonly number[],
  column: string,
): readonly (readonly Line[])[] {
  const groups = new Map<string, Line[]>();
  for (const row of rows) {
    const working = book.working(sheet.id, sheet.rowId(row), column);
    if (working?.formula === undefined || working.state === 'blank') continue;
    const line = { rowName: sheet.rowName(row), working };
    const group = groups.get(working.formula);
    if (group) group.push(line);
    else groups.set(working.formula, [line]);
  }
  return [...groups.values()];
}

/** Whether none of the lines has a value. */
export function waits(lines: readonly Line[]): boolean {
  return lines.every(({ working }) => working.worked === '' && !working.isOverruled);
}

/** What could not be worked out yet, and what it waits for: nothing can be checked yet, so it is enough to say why. */
export function renderWaiting(book: BookView, workings: readonly Working[]): TemplateResult {
  return html`<h3>Not worked out yet</h3>
    <ul class="names">
      ${workings.map(
        (working) =>
          html`<li>
            ${labelOf(book.sheet(working.place.sheet), working)}
            <code>${working.place.column}</code>:
            <span class="waits">${reason(working)}</span>
          </li>`,
      )}
    </ul>`;
}

function renderBlock(sheet: SheetView, lines: readonly Line[]): TemplateResult | typeof nothing {
  const [first] = lines;
  if (!first) return nothing;
  const { working } = first;
  const isWide = working.steps.filter((step) => !isShared(step, sheet)).length > MOST_IN_COLUMN;
  return html`<section class=${isWide ? 'worked wide' : 'worked'}>
    <h3>${labelOf(sheet, working)} <code>${working.place.column}</code></h3>
    <p class="formula">${working.formula}</p>
    <p class="said">${ruleWords(working)}</p>
    ${renderRules(working.rules, lines.length === 1)}
    ${renderNames(working.steps.filter((step) => isShared(step, sheet)))}
    ${renderTable(lines, sheet)}
  </section>`;
}

function renderSingle(sheet: SheetView, working: Working): TemplateResult {
  return html`<section class="worked">
    <h3>
      ${labelOf(sheet, working)} <code>${working.place.column}</code>
      <span class="outcome">${renderOutcome(working)}</span>
    </h3>
    <p class="formula">${working.formula}</p>
    ${renderNumbers(working)}
    <p class="said">${ruleWords(working)}</p>
    ${renderRules(working.rules, true)} ${renderNames(working.steps)}
  </section>`;
}

/** How a working’s column is called on its sheet. */
export function labelOf(sheet: SheetView | undefined, { place }: Working): string {
  const column = sheet?.columns.find(({ id }) => id === place.column);
  return column === undefined ? '' : [column.label, column.hint].filter(Boolean).join(', ');
}

function renderNumbers({ inNumbers, formula }: Working): TemplateResult | typeof nothing {
  if (inNumbers === '' || inNumbers === formula) return nothing;
  return html`<p class="formula numbers">${inNumbers}</p>`;
}

// An entry that stands over a formula has its own authority; the rule keeps the column's.
function ruleWords({ help, standing, source, isOverruled }: Working): string {
  return [isOverruled ? '' : authority(standing, source), help]
    .filter((words) => words !== '')
    .join('. ');
}

/** What a rule came to on its way. */
export function wayWords(onTheWay: RuleCall['onTheWay']): string {
  return `${onTheWay.map(({ symbol, value }) => `${symbol} = ${value}`).join('; ')}.`;
}

/** Rules with their equation and source. */
export function renderRules(
  rules: readonly RuleCall[],
  withValues: boolean,
): TemplateResult | typeof nothing {
  const each = [
    ...new Map(rules.map((rule) => [withValues ? rule.text : rule.name, rule])).values(),
  ];
  if (each.length === 0) return nothing;
  return html`<ul class="names">
    ${each.map(
      ({ name, meaning, equation, onTheWay, source, standing, caution }) =>
        html`<li>
          <code>${name}</code> ${meaning} <code class="equation">${equation}</code> ${
            withValues && onTheWay.length > 0
              ? html`<span class="way">${wayWords(onTheWay)}</span>`
              : nothing
          } <small>${authority(standing, source)}</small>${
            caution === '' ? nothing : html` <em>${caution}</em>`
          }
        </li>`,
    )}
  </ul>`;
}

/** The names of a formula, with what each was. */
export function renderNames(steps: readonly WorkingStep[]): TemplateResult | typeof nothing {
  if (steps.length === 0) return nothing;
  return html`<ul class="names">
    ${steps.map((step) => {
      const isSaid = !step.isUsed && step.taken !== '';
      return html`<li>
        <code>${step.name}</code> ${step.label}:
        <b>${step.taken === '' ? 'none' : figures(step.taken)}</b
        >${isSaid ? ', not needed here' : ''}
        <small>${[step.sheet, ...cameBy(step)].filter((words) => words !== '').join('; ')}</small>
      </li>`;
    })}
  </ul>`;
}

function renderTable(lines: readonly Line[], sheet: SheetView): TemplateResult {
  const names = new Map(
    lines.flatMap(({ working }) =>
      working.steps
        .filter((step) => !isShared(step, sheet))
        .map((step): [string, string] => [step.name, columnWords(step)]),
    ),
  );
  return html`<table class=${names.size < 4 ? 'narrow' : ''}>
    <thead>
      <tr>
        <th scope="col">Row</th>
        ${[...names].map(
          ([name, label]) =>
            html`<th scope="col" class="number"><code>${name}</code><small>${label}</small></th>`,
        )}
        <th scope="col" class="number">Comes to</th>
      </tr>
    </thead>
    <tbody>
      ${alike(lines).map(
        ([first, ...rest]) =>
          html`<tr>
            <th scope="row">${rowWords(sheet, [first, ...rest])}</th>
            ${[...names.keys()].map((name) => renderTaken(first.working, name))}
            <td class="number">${renderOutcome(first.working)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

type Alike = readonly [Line, ...Line[]];

// Rows that took the same and came to the same are one line with all their names.
function alike(lines: readonly Line[]): readonly Alike[] {
  const groups = new Map<string, Alike>();
  for (const line of lines) {
    const { steps, worked, value, typed, note } = line.working;
    const taken = steps.map((step) => [step.taken, step.typed, step.isUsed]);
    const key = JSON.stringify([taken, worked, value, typed, note]);
    groups.set(key, [...(groups.get(key) ?? []), line] as unknown as Alike);
  }
  return [...groups.values()];
}

// `post 1`, `post 1, 2, 5`: the kind is said once.
function rowWords(sheet: SheetView, lines: Alike): string {
  const [{ rowName }, ...rest] = lines;
  if (rowName === '') return sheet.title;
  const kind = /^\D+ /u.exec(rowName)?.[0] ?? '';
  const names = rest.map((line) =>
    kind !== '' && line.rowName.startsWith(kind) ? line.rowName.slice(kind.length) : line.rowName,
  );
  return [rowName, ...names].join(', ');
}

function renderTaken({ steps }: Working, name: string): TemplateResult {
  const step = steps.find((each) => each.name === name);
  if (!step) return html`<td></td>`;
  const { taken, typed, origin, isUsed } = step;
  const value = taken === '' ? '–' : taken;
  const asTyped = origin === 'typed' && typed !== taken ? html`<small>“${typed}”</small>` : nothing;
  return html`<td class="number">
    ${isUsed ? figures(value) : html`(${figures(value)})`}${asTyped}
  </td>`;
}

/** What a working came to, or why it came to nothing. */
export function renderOutcome(working: Working): TemplateResult {
  const { worked, value, typed, isOverruled } = working;
  if (isOverruled) {
    const comes = worked === '' ? '' : `, over ${worked}`;
    return html`<b>${figures(value)}</b><small>typed “${typed ?? ''}”${comes}</small>`;
  }
  if (worked !== '') return html`<b>${figures(worked)}</b>`;
  return html`<span class="waits">${reason(working)}</span>`;
}

function reason({ note, problems }: Working): string {
  return note === '' ? (problems[0] ?? 'not known yet') : note;
}

function isShared({ place, origin }: WorkingStep, sheet: SheetView): boolean {
  return origin === 'whole column' || place?.sheet === 'job' || sheet.id === 'job';
}

// A neighbor's row differs from line to line, so only the column is named in the head.
function columnWords({ label, name }: WorkingStep): string {
  return name.includes('(') ? label.replace(/, [^,]*$/, '') : label;
}
