import { html, nothing, type TemplateResult } from 'lit';
import { rowsInWords, stopsAlike } from '../../output/index.ts';
import type { BookView, CellView, Stop } from '../../worksheet/index.ts';
import { setFractions } from '../fraction.ts';
import type { Caution } from './cautions.ts';

/** The one header of a page: the job's name and what the page is. */
export function pageHeader(book: BookView, kind: string): TemplateResult {
  return html`<header>
    <h1>${book.name}</h1>
    <p class="kind">${kind}</p>
  </header>`;
}

/** A line to write on, with its name. */
export function blankLine(name: string, wide = false): TemplateResult {
  return html`<div class="blank ${wide ? 'wide' : ''}">
    <dt>${name}</dt>
    <dd></dd>
  </div>`;
}

/** A line that says what the job has for it; blank to write on where it has nothing. */
export function saidLine(
  book: BookView,
  name: string,
  column: string,
  wide = false,
): TemplateResult {
  const said = saidIn(book, column);
  if (said === '') return blankLine(name, wide);
  return html`<div class="blank ${wide ? 'wide' : ''}">
    <dt>${name}</dt>
    <dd>${said}</dd>
  </div>`;
}

/** A choice to tick by hand; ticked where the job has it. */
export function tickLine(
  book: BookView,
  name: string,
  column: string,
  choices: readonly string[],
): TemplateResult {
  const said = saidIn(book, column);
  return html`<div class="blank">
    <dt>${name}</dt>
    <dd class="ticks">
      ${choices.map(
        (choice) =>
          html`<span
            ><i class=${choice === said ? 'tick ticked' : 'tick'}></i>${
              choice === said ? html`<b>${choice}</b>` : choice
            }</span
          >`,
      )}
    </dd>
  </div>`;
}

/** What the job has for an input, a day in words; blank where it has nothing. */
export function saidIn(book: BookView, column: string): string {
  const job = book.sheet('job');
  const head = job?.columns.find(({ id }) => id === column);
  const cell = job && head ? job.cell(0, column) : undefined;
  if (cell?.state !== 'known') return '';
  const { text, value } = cell;
  if (head?.kind.type !== 'date' || typeof value !== 'number') return text;
  const english = saidIn(book, 'units') === 'metric' ? 'en-GB' : 'en-US';
  const day = new Date(value * 1000).toLocaleDateString(english, {
    dateStyle: 'long',
    timeZone: 'UTC',
  });
  // The time of day, where it was entered too.
  return text.replace(/^\S+/u, day);
}

/** What a cell says on paper: its figures, or why it has none. */
export function printedCell(cell: CellView, unit = ''): TemplateResult {
  switch (cell.state) {
    case 'known': {
      const said = unit === '' || cell.text === '' ? cell.text : `${cell.text} ${unit}`;
      const over =
        cell.suggested === undefined || cell.suggested === cell.text
          ? nothing
          : html`<small>worked out: ${cell.suggested}</small>`;
      return html`${setFractions(said)}${over}`;
    }
    case 'blank':
      return html``;
    case 'ask':
      return html`<span class="waits">“${cell.text}” is asked about</span>`;
    case 'waiting':
    case 'wrong':
      return html`<span class="waits">${cell.note === '' ? 'not known yet' : cell.note}</span>`;
  }
}

/** Cautions as a short list, each with its authority. */
export function cautionList(cautions: readonly Caution[]): TemplateResult {
  return html`<ul class="cautions">
    ${cautions.map(
      ({ words, authority }) =>
        html`<li>${words}${authority === '' ? nothing : html` <small>${authority}</small>`}</li>`,
    )}
  </ul>`;
}

/** Stops first, then cautions, each once with the rows it bears on; nothing where there are none. */
export function stopList(stops: readonly Stop[]): TemplateResult | typeof nothing {
  if (stops.length === 0) return nothing;
  const shared = stopsAlike(stops).map((stop) => ({ ...stop, where: rowsInWords(stop) }));
  const order = shared.sort((a, b) => Number(a.level !== 'stop') - Number(b.level !== 'stop'));
  return html`<ul class="cautions stops">
    ${order.map(
      ({ level, where, message, source }) =>
        html`<li>
          <strong
            >${level === 'stop' ? 'Stop' : 'Caution'}${where === '' ? '' : `, ${where}`}:</strong
          >
          ${message}${source === '' ? nothing : html` <small>${source}</small>`}
        </li>`,
    )}
  </ul>`;
}
