import { html, nothing, type TemplateResult } from 'lit';
import type { BookView, Working, WorkingStep } from '../../worksheet/index.ts';
import {
  authority,
  chaptersOf,
  restsOn,
  unexplained,
  withoutPassing,
  type Chapter,
} from '../../output/index.ts';
import { figures } from '../working-detail.ts';
import {
  labelOf,
  renderNames,
  renderOutcome,
  renderRules,
  renderWaiting,
  waits,
  wayWords,
} from './working-parts.ts';

/** The calculation of one post or hole: what was read, then the cells one after the other as they are followed. */
export function followedWorkings(book: BookView, row: string, of: string): TemplateResult {
  const all = chaptersOf(book, row, of);
  const chapters = withoutPassing(all);
  const isOpen = (working: Working): boolean => waits([{ rowName: '', working }]);
  const open = chapters.flatMap(({ workings }) => workings.filter(isOpen));
  const told = new Set<string>();
  return html`<h2>Readings and inputs</h2>
    <div class="inputs read">${renderReadings(restsOn(all))}</div>
    ${chapters.map(({ title, workings }) => {
      const [first, ...rest] = workings
        .filter((working) => !isOpen(working))
        .map((working) => renderFollowed(book, working, chapters, told));
      return first === undefined
        ? nothing
        : html`<div class="together">
              <h2>${title}</h2>
              ${first}
            </div>
            ${rest}`;
    })}
    ${open.length === 0 ? nothing : renderWaiting(book, open)}`;
}

// An equation is told where it comes first; after that its values are enough.
function renderFollowed(
  book: BookView,
  working: Working,
  chapters: readonly Chapter[],
  told: Set<string>,
): TemplateResult {
  const { taken, takenInNumbers, rules, value } = working;
  const isNew = (name: string): boolean => !told.has(name) && told.add(name).size > 0;
  const used = rules.filter(({ isUsed }) => isUsed);
  const first = used.filter(({ name }) => isNew(name));
  const again = used.filter((rule) => !first.includes(rule) && rule.onTheWay.length > 0);
  const names = unexplained(working, chapters).filter(({ name }) => isNew(`, ${name}`));
  const said = authority(working.standing, working.source);
  // A text that a condition chose says nothing more than what came of it.
  const lines = taken.startsWith('"')
    ? []
    : takenInNumbers === value
      ? [taken]
      : [taken, takenInNumbers];
  return html`<section class="worked">
    <div class="followed">
      <h3>
        ${labelOf(book.sheet(working.place.sheet), working)} <code>${working.place.column}</code>
      </h3>
      <div>
        ${[...new Set(lines)].map((line, at) => html`<p class=${at === 0 ? 'formula' : 'formula numbers'}>${line}</p>`)}
        ${said === 'arithmetic' ? nothing : html`<p class="said">${said}</p>`}
        ${renderRules(first, true)}
        ${again.map(({ name, onTheWay }) => html`<p class="said"><code>${name}</code> ${wayWords(onTheWay)}</p>`)}
        ${renderNames(names)}
      </div>
      <p class="outcome">${renderOutcome(working)}</p>
    </div>
  </section>`;
}

function renderReadings(steps: readonly WorkingStep[]): TemplateResult {
  return html`<table>
    <thead>
      <tr>
        <th scope="col">Name</th>
        <th scope="col" class="number">Value</th>
        <th scope="col">From</th>
      </tr>
    </thead>
    <tbody>
      ${steps.map(
        (step) =>
          html`<tr>
            <th scope="row">
              ${step.label}<small><code>${step.name}</code></small>
            </th>
            <td class="number">${figures(step.taken)}</td>
            <td>${readingWords(step)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

// What nobody typed is the job's starting value, whoever stands behind it.
function readingWords({ origin, typed, taken, standing, source, note }: WorkingStep): string {
  if (origin === 'starting value')
    return standing === 'yours' ? 'as a job starts' : authority(standing, source);
  return [typed === taken ? 'yours' : `“${typed}”`, note]
    .filter((words) => words !== '')
    .join('; ');
}
