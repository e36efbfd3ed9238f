import { css } from 'lit';

/** The look of a working's steps: a narrow column of lines, name at the left, value at the right. */
export const workingStyles = css`
  section {
    margin-top: 18px;
  }
  h3 {
    font-size: 19px;
    margin-bottom: 2px;
  }
  li {
    padding: 6px 0;
    border-top: 1px solid var(--rule);
  }
  .line {
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    gap: 12px;
  }
  .line > :first-child {
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .value {
    text-align: end;
    font-weight: 600;
  }
  button.plain {
    padding: 2px 0;
    text-align: start;
    font-weight: 600;
  }
  .label {
    font-weight: 600;
  }
  .small {
    font-size: 15px;
    color: var(--soft);
    overflow-wrap: anywhere;
  }
  code {
    font: inherit;
  }
  code.block {
    display: block;
    padding: 6px 10px;
    margin-bottom: 4px;
    border-left: 3px solid var(--chalk);
    background: var(--wash);
    overflow-wrap: anywhere;
  }
  .given {
    display: grid;
    grid-template-columns: 1fr auto;
    gap: 0 12px;
    padding-left: 12px;
  }
  .given dt {
    color: var(--soft);
  }
  .given dd {
    text-align: end;
  }
  .trouble {
    color: var(--paint);
    border-left: 6px solid var(--paint-bar);
    padding-left: 10px;
  }
  .caution {
    border-left: 3px solid var(--paint-bar);
    padding-left: 10px;
    margin-top: 4px;
  }
`;
