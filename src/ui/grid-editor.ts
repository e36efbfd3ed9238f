import { css, html, type TemplateResult } from 'lit';
import type { ColumnView } from '../worksheet/index.ts';

/** The field a cell is typed into: a list where the column has choices of its own, else a line of text. */
export function cellEditor(column: ColumnView, text: string, label: string): TemplateResult {
  if (column.kind.type === 'choice' || column.kind.type === 'flag') {
    return html`<select class="editor" aria-label=${label}>
      ${choicesWith(column, text).map(
        (choice) =>
          html`<option value=${choice} ?selected=${choice === text}>
            ${choice === '' ? '–' : choice}
          </option>`,
      )}
    </select>`;
  }
  return html`<input
      class="editor"
      aria-label=${label}
      .value=${text}
      list="offered"
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
    /><datalist id="offered">
      ${column.choices.map((choice) => html`<option value=${choice}></option>`)}
    </datalist>`;
}

/** What may be chosen here: nothing, the column's choices, and whatever else already stands there. */
export function choicesWith({ kind, choices }: ColumnView, text: string): readonly string[] {
  const offered = kind.type === 'flag' && choices.length === 0 ? ['yes', 'no'] : choices;
  return [...new Set(['', ...offered, text])];
}

/** The choice a first letter means, so that a letter picks as it does in any list. */
export function choiceBegun(column: ColumnView, letter: string): string | undefined {
  return choicesWith(column, '').find(
    (choice) => choice !== '' && choice.toLowerCase().startsWith(letter.toLowerCase()),
  );
}

/** The field fills its cell. */
export const editorStyles = css`
  .editor {
    position: absolute;
    inset: 0;
    width: 100%;
    min-width: 8ch;
    height: 100%;
    min-height: 0;
    padding: 0 8px;
    border: 2px solid var(--chalk);
    border-radius: 0;
    background: var(--sheet);
    color: var(--chalk);
    text-align: inherit;
    outline: none;
    z-index: 4;
  }
`;
