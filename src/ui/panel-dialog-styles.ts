import { css } from 'lit';

/** A panel that stands over the page until it is put away. */
export const panelDialogStyles = css`
  dialog {
    width: min(46em, 100vw - 24px);
    max-height: calc(100vh - 32px);
    padding: 18px 22px;
    border: 2px solid var(--ink);
    border-radius: var(--round);
    background: var(--paper);
    color: var(--ink);
    overflow: auto;
  }
  dialog::backdrop {
    background: rgb(0 0 0 / 45%);
  }
  h2 {
    font-size: 26px;
  }
  h3 {
    margin-top: 14px;
    font-size: 20px;
    overflow-wrap: anywhere;
  }
  .deeds {
    display: flex;
    flex-wrap: wrap;
    gap: 10px;
    margin-top: 14px;
  }
  summary {
    min-height: 30px;
    cursor: pointer;
  }
  .soft {
    color: var(--soft);
  }
  li {
    padding: 3px 0;
    border-bottom: 1px solid var(--rule);
    overflow-wrap: anywhere;
  }
  code {
    font-family: ui-monospace, monospace;
    font-size: 14px;
    white-space: pre-wrap;
  }
`;
