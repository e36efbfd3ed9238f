import { css } from 'lit';

/** The screen of a file before it comes in. */
export const importStyles = css`
  main {
    max-width: 1100px;
    margin: 0 auto;
    padding: 5vh 24px 40px;
  }
  h1 {
    font-size: 34px;
    overflow-wrap: anywhere;
  }
  h1:focus {
    outline: none;
  }
  h2 {
    margin-top: 26px;
    padding-bottom: 4px;
    border-bottom: 2px solid var(--ink);
    font-size: 22px;
  }
  .summary {
    margin-top: 6px;
    font-weight: 600;
  }
  .soft {
    color: var(--soft);
  }
  .progress {
    display: flex;
    align-items: center;
    gap: 12px;
    margin: 18px 0;
  }
  progress {
    flex: 0 1 26em;
    height: 16px;
    accent-color: var(--chalk);
  }
  .deeds {
    display: flex;
    flex-wrap: wrap;
    gap: 10px;
    margin: 14px 0;
  }
  .first {
    background: var(--chalk);
    border-color: var(--chalk);
    color: var(--on-chalk);
  }
  .notes {
    border-left: 8px solid var(--paint-bar);
    background: var(--paint-wash);
    padding: 6px 14px;
  }
  .notes li {
    padding: 3px 0;
    overflow-wrap: anywhere;
  }
  .wide {
    overflow-x: auto;
  }
  table {
    border-collapse: collapse;
    min-width: 60%;
  }
  th,
  td {
    padding: 4px 14px 4px 0;
    border-bottom: 1px solid var(--rule);
    text-align: left;
    vertical-align: baseline;
  }
  thead th {
    color: var(--soft);
    font-weight: 600;
  }
  tbody th {
    font-weight: 600;
    overflow-wrap: anywhere;
  }
  select {
    max-width: 100%;
    color: var(--chalk);
  }
  @media (max-width: 599px) {
    main {
      padding: 18px 14px;
    }
    th,
    td {
      padding-right: 10px;
    }
    tbody th {
      min-width: 5.5em;
    }
    select {
      width: 9em;
    }
  }
`;
