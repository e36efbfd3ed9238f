import { css } from 'lit';

/** A labelled line of a form: what may be typed in chalk blue, its unit at the end. */
export const fieldStyles = css`
  label {
    display: block;
    font: 600 16px/1.25 var(--name-face);
    color: var(--soft);
  }
  .hint {
    font: 400 14px/1.25 var(--face);
  }
  .line {
    position: relative;
    display: flex;
    align-items: center;
    border: 1px solid var(--outline);
    border-radius: var(--round);
    background: var(--sheet);
  }
  .line:focus-within {
    outline: 3px solid var(--chalk);
    outline-offset: -1px;
  }
  input,
  select {
    width: 100%;
    min-width: 0;
    padding: 0 9px;
    color: var(--chalk);
  }
  input {
    flex: 1;
    border: 0;
    background: none;
    outline: none;
  }
  input:focus-visible {
    outline: none;
  }
  .line:not(.typing) input {
    color: transparent;
  }
  .shown {
    position: absolute;
    left: 9px;
    pointer-events: none;
    color: var(--chalk);
    white-space: nowrap;
    overflow: hidden;
    max-width: calc(100% - 40px);
  }
  .none {
    color: var(--soft);
    font-style: italic;
    font-size: 15px;
  }
  .typing .shown {
    display: none;
  }
  .unit {
    padding-right: 9px;
    color: var(--soft);
    font-size: 15px;
  }
  .trouble.line {
    border-bottom: 3px solid var(--paint-bar);
  }
  .trouble .shown {
    color: var(--paint);
    font-weight: 600;
  }
  .note {
    font-size: 15px;
    color: var(--soft);
  }
  .note.trouble {
    color: var(--paint);
  }
  .standing {
    font-size: 13px;
    line-height: 1.35;
    color: var(--soft);
    white-space: nowrap;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .worked {
    display: block;
    min-height: var(--target);
    padding: 4px 0;
  }
  .buttons {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(82px, 1fr));
    gap: 6px;
  }
  .buttons button {
    padding: 2px 4px;
    line-height: 1.15;
  }
  .buttons [aria-pressed='true'] {
    background: var(--chalk);
    border-color: var(--chalk);
    color: var(--on-chalk);
  }
  @media (forced-colors: active) {
    .shown {
      display: none;
    }
    .line:not(.typing) input {
      color: FieldText;
    }
    .buttons [aria-pressed='true'] {
      border-width: 3px;
      font-weight: 600;
    }
  }
`;
