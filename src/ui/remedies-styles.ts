import { css } from 'lit';

/** Cards in a row, as wide as the panel has room; one under another on a phone. */
export const remediesStyles = css`
  dialog {
    width: min(92em, 100vw - 24px);
  }
  .why {
    display: block;
    max-width: 34em;
    margin-top: 10px;
    font-weight: 600;
  }
  .why input,
  .by input {
    display: block;
    width: 100%;
  }
  .cards {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(17em, 100%), 1fr));
    gap: 14px;
    margin-top: 12px;
  }
  .cards > li {
    display: flex;
    flex-direction: column;
    gap: 8px;
    padding: 10px 12px;
    border: 1px solid var(--outline);
    border-top: 4px solid var(--rule);
    background: var(--sheet);
  }
  .cards > .stands {
    border-color: var(--chalk);
  }
  h3.way::first-letter {
    text-transform: uppercase;
  }
  h3.way {
    margin: 0;
    font: 600 20px/1.2 var(--name-face);
  }
  dl {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: 3px 12px;
  }
  dt {
    color: var(--soft);
  }
  dd ul {
    list-style: none;
  }
  dd li {
    padding: 0;
    border: 0;
  }
  .sum {
    font-weight: 600;
    font-variant-numeric: tabular-nums;
  }
  em {
    color: var(--soft);
  }
  .stop,
  .caution {
    padding-left: 8px;
    border-left: 3px solid var(--paint-bar);
    font-size: 15px;
  }
  .rule {
    display: flex;
    align-items: center;
    gap: 8px;
    margin-top: auto;
  }
  .rule input {
    width: 20px;
    height: 20px;
    min-height: 0;
    accent-color: var(--chalk);
  }
  .by {
    font-weight: 600;
  }
`;
