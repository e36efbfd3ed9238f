import { css } from 'lit';

/** The job's name over a heavy rule, with its buttons at the end of the line. */
export const headerStyles = css`
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 6px 18px;
    padding: 22px 0 12px;
    border-bottom: 2px solid var(--ink);
  }
  .name {
    position: relative;
    font-size: 33px;
    min-width: 4em;
    max-width: 100%;
  }
  .sizer,
  .name input {
    padding: 0 4px;
    font: 600 33px/1.3 var(--name-face);
    white-space: pre;
  }
  .sizer {
    display: block;
    overflow: hidden;
    visibility: hidden;
    min-height: 1.3em;
    padding-right: 12px;
  }
  .name input {
    position: absolute;
    inset: 0 0 0 -4px;
    width: calc(100% + 4px);
    border: 0;
    border-bottom: 1px dashed transparent;
    border-radius: 0;
    background: none;
    text-overflow: ellipsis;
  }
  .name input:hover {
    border-bottom-color: var(--outline);
  }
  .saved {
    font-size: 15px;
    color: var(--soft);
  }
  .saved.trouble {
    color: var(--paint);
    font-weight: 600;
    border-left: 6px solid var(--paint-bar);
    padding-left: 8px;
    max-width: 40em;
  }
  .steps {
    display: flex;
    margin-left: auto;
    max-width: 100%;
  }
  .steps button {
    max-width: 16em;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
    font-size: 15px;
  }
  .label {
    font-weight: 400;
  }
  .deeds {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
  }
  .deeds > button,
  summary {
    border: 1px solid var(--ink);
    background: none;
  }
  details {
    position: relative;
  }
  summary {
    display: flex;
    align-items: center;
    min-height: var(--target);
    padding: 4px 14px;
    border-radius: var(--round);
    font-weight: 600;
    cursor: pointer;
    list-style: none;
  }
  summary::-webkit-details-marker {
    display: none;
  }
  summary::after {
    content: '';
    margin-left: 8px;
    border: 5px solid transparent;
    border-top-color: currentColor;
    transform: translateY(3px);
  }
  details ul {
    position: absolute;
    right: 0;
    z-index: 15;
    min-width: 15em;
    margin-top: 4px;
    padding: 4px 0;
    border: 1px solid var(--ink);
    background: var(--sheet);
  }
  details button {
    width: 100%;
    text-align: left;
  }
  @media (max-width: 599px) {
    header {
      padding-top: 10px;
      gap: 2px 10px;
    }
    .name,
    .sizer,
    .name input {
      font-size: 25px;
    }
    .steps {
      margin-left: 0;
    }
    details ul {
      right: auto;
      left: 0;
    }
  }
`;
