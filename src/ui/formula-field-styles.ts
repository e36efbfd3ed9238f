import { css } from 'lit';

/** A field whose text lies over a copy of itself that carries the marks. */
export const formulaFieldStyles = css`
  label {
    font: 600 16px/1.3 var(--name-face);
    color: var(--soft);
  }
  .stack {
    display: grid;
    margin-top: 2px;
  }
  pre,
  textarea {
    grid-area: 1 / 1;
    margin: 0;
    padding: 8px 10px;
    border: 1px solid var(--outline);
    border-radius: var(--round);
    font: 18px/1.5 var(--face);
    letter-spacing: 0;
    white-space: pre-wrap;
    overflow-wrap: anywhere;
    text-align: left;
  }
  pre {
    color: transparent;
    background: var(--sheet);
    border-color: transparent;
  }
  textarea {
    width: 100%;
    min-height: 4.6em;
    resize: vertical;
    background: transparent;
    color: var(--chalk);
    overflow: hidden;
    field-sizing: content;
  }
  mark {
    background: var(--paint-wash);
    color: transparent;
    text-decoration: underline wavy var(--paint-bar) 2px;
    text-decoration-skip-ink: none;
    text-underline-offset: 4px;
  }
  ul {
    margin-top: 4px;
    border: 1px solid var(--outline);
    border-left: 4px solid var(--chalk);
    background: var(--sheet);
  }
  li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 0 10px;
    min-height: max(24px, var(--target) - 6px);
    padding: 4px 10px;
    cursor: pointer;
    overflow-wrap: anywhere;
  }
  li[aria-selected='true'] {
    background: var(--wash);
    outline: 2px solid var(--chalk);
    outline-offset: -2px;
  }
  .what,
  .meaning,
  .kind {
    font-size: 15px;
    color: var(--soft);
  }
  .meaning,
  .kind {
    grid-column: 1 / -1;
  }
  .call {
    margin-top: 6px;
    padding: 4px 10px;
    font-size: 15px;
    border-left: 4px solid var(--rule);
    overflow-wrap: anywhere;
  }
  .call .now {
    color: var(--chalk);
    font-weight: 600;
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  .said {
    min-height: 3em;
    margin-top: 6px;
  }
  .trouble {
    color: var(--paint);
    border-left: 6px solid var(--paint-bar);
    padding-left: 10px;
  }
  @media (forced-colors: active) {
    mark {
      text-decoration-color: Mark;
    }
  }
`;
