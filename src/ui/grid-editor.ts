import { css, html, type TemplateResult } from 'lit';
import type { ColumnView } from '../worksheet/index.ts';

/**
 * The field a cell is typed into: a list where one of the column's choices stands, else a line of
 * text. What is typed over a choice is read as a word, so that “replace” never stops at its first letter.
 */
export function cellEditor(column: ColumnView, text: string, label: string): TemplateResult {
  if (hasChoices(column) && text !== '') {
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
      ${choicesWith(column, '').map((choice) => html`<option value=${choice}></option>`)}
    </datalist>`;
}

/** Whether only one of a list may stand in the column. */
export function hasChoices({ kind }: ColumnView): boolean {
  return kind.type === 'choice' || kind.type === 'flag';
}

/** What may be chosen here: nothing, the column's choices, and whatever else already stands there. */
export function choicesWith({ kind, choices }: ColumnView, text: string): readonly string[] {
  const offered = kind.type === 'flag' && choices.length === 0 ? ['yes', 'no'] : choices;
  return [...new Set(['', ...offered, text])];
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
