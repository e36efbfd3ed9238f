import { css } from 'lit';

/** The ruled page of a sheet: rows parted by a hairline, nothing boxed. */
export const gridStyles = css`
  :host {
    position: relative;
  }
  .scroller {
    /* An edit lays out this sheet and not the page. */
    contain: layout paint style;
    overflow: auto;
    max-height: max(320px, 76vh);
    background: var(--sheet);
    overscroll-behavior: contain auto;
    overflow-anchor: none;
    scroll-padding: var(--head-height, 52px) var(--answer-width, 0px) calc(var(--row, 34px) + 2px)
      var(--first-width, 80px);
  }
  [role='row'],
  .totals {
    display: grid;
    grid-template-columns: var(--tracks);
  }
  [role='row'] {
    /* An edit lays out its row and nothing else; rows out of sight cost nothing. */
    contain: size layout style;
    content-visibility: auto;
    height: var(--row, 34px);
    border-bottom: 1px solid var(--rule);
  }
  .head {
    contain: none;
    content-visibility: visible;
    position: sticky;
    top: 0;
    z-index: 3;
    height: auto;
    background: var(--sheet);
    border-bottom: 2px solid var(--ink);
  }
  [role='columnheader'] {
    min-width: 0;
    display: flex;
    flex-direction: column;
    justify-content: flex-end;
    padding: 8px 9px 6px;
    font: 600 16px/1.2 var(--name-face);
    letter-spacing: 0.01em;
    border-bottom: 3px solid transparent;
  }
  [role='columnheader'] {
    position: relative;
    cursor: pointer;
  }
  .edge {
    position: absolute;
    top: 0;
    right: -6px;
    bottom: 0;
    width: 12px;
    z-index: 1;
    cursor: col-resize;
    touch-action: none;
  }
  .own > :nth-child(2) {
    text-decoration: underline wavy var(--chalk) 1px;
    text-underline-offset: 4px;
  }
  .own .unit {
    color: var(--chalk);
  }
  :host(:focus-within) [role='columnheader'].current {
    color: var(--chalk);
    border-bottom-color: var(--chalk);
  }
  [aria-sort='ascending'] > :nth-child(2)::after {
    content: ' ↑';
  }
  [aria-sort='descending'] > :nth-child(2)::after {
    content: ' ↓';
  }
  .unit {
    font: 400 14px/1.25 var(--face);
    color: var(--soft);
    white-space: nowrap;
  }
  .unit.long {
    width: 0;
    min-width: max(100%, 5.4em);
    white-space: normal;
    text-wrap: balance;
  }
  .cell {
    padding: 0 9px;
    line-height: calc(var(--row, 34px) - 1px);
    white-space: nowrap;
    cursor: default;
  }
  /* A box that clips is a layer of paint of its own, so only those clip that have more than fits. */
  .cell.long {
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .cell.current {
    position: relative;
  }
  .figures {
    text-align: right;
    justify-content: flex-end;
    align-items: flex-end;
  }
  .answer {
    right: 0;
    background: var(--sheet);
    border-left: 1px solid var(--rule);
  }
  .first {
    left: 0;
    background: var(--sheet);
  }
  /* What sticks is a layer of its own: only where there is something to scroll past it. */
  .past-first .first,
  .before-answer .answer {
    position: sticky;
    z-index: 1;
  }
  .past-first .first {
    z-index: 2;
  }
  .head .first,
  .head .answer {
    background-clip: padding-box;
  }
  .call.worked .value,
  .call .value:has(+ .suggested) {
    font-weight: 600;
  }
  .row-current .cell {
    background: var(--wash);
  }
  .chosen {
    background: var(--wash);
    box-decoration-break: clone;
  }
  .ask,
  .wrong {
    border-bottom: 3px solid var(--paint-bar);
    line-height: calc(var(--row, 34px) - 4px);
  }
  .stopped .first {
    border-left: 5px solid var(--paint-bar);
    padding-left: 5px;
  }
  .cell:focus,
  .cell.current:has(.editor) {
    outline: 2px solid var(--chalk);
    outline-offset: -2px;
    background: var(--sheet);
    overflow: visible;
    z-index: 3;
  }
  /* Taken away again after a moment: one that fades paints the sheet at every frame while it does. */
  .cell.flash {
    background: color-mix(in srgb, var(--chalk) 24%, var(--sheet));
  }
  .totals {
    position: sticky;
    bottom: 0;
    z-index: 3;
    border-top: 2px solid var(--ink);
    background: var(--sheet);
    min-height: var(--row, 34px);
  }
  .totals > * {
    font-weight: 600;
  }
  .foot {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 8px;
    padding-top: 6px;
    font-size: 15px;
  }
  .note {
    flex: 1 1 24em;
    min-height: 1.5em;
    color: var(--soft);
  }
  .note strong {
    color: var(--ink);
    font-weight: 600;
  }
  .note .trouble {
    color: var(--paint);
  }
  .empty {
    padding: 14px 10px;
    color: var(--soft);
  }
  .asking {
    position: fixed;
    margin: 0;
    padding: 0;
    border: 0;
    border-left: 6px solid var(--paint-bar);
    background: var(--paint-wash);
    color: var(--ink);
    width: min(420px, 94vw);
    outline: 1px solid var(--paint-bar);
  }
  @media (forced-colors: active) {
    .chosen {
      outline: 1px dashed Highlight;
      outline-offset: -3px;
    }
    .cell.current {
      outline: 2px solid Highlight;
    }
    .ask,
    .wrong {
      border-bottom-style: double;
    }
  }
`;
