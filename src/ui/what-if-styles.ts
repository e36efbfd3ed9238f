import { css } from 'lit';

/** Tables of sums side by side, and the fields under them. */
export const whatIfStyles = css`
  dialog {
    width: min(64em, 100vw - 24px);
  }
  .table {
    overflow-x: auto;
    margin-top: 10px;
  }
  table {
    border-collapse: collapse;
  }
  th,
  td {
    padding: 3px 18px 3px 0;
    border-bottom: 1px solid var(--rule);
    text-align: start;
    vertical-align: baseline;
  }
  .sum {
    text-align: end;
    font-variant-numeric: tabular-nums;
    white-space: nowrap;
  }
  .total > * {
    font-weight: 600;
    border-bottom: 2px solid var(--ink);
  }
  small {
    display: block;
    color: var(--soft);
    font-size: 14px;
  }
  form {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(13em, 1fr));
    gap: 10px 18px;
    align-items: end;
    margin-top: 12px;
  }
  label {
    font-weight: 600;
  }
  label :is(input, select) {
    display: block;
    width: 100%;
  }
  .note {
    color: var(--paint);
  }
`;
