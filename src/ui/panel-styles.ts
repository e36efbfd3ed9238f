import { css } from 'lit';

/** A panel that stands at the side of the page, or along the foot of a phone. */
export const panelStyles = css`
  aside {
    position: fixed;
    top: 0;
    right: 0;
    bottom: 0;
    z-index: 20;
    width: min(460px, 100vw);
    padding: 18px 22px;
    overflow-y: auto;
    background: var(--sheet);
    border-left: 2px solid var(--ink);
  }
  h2 {
    font-size: 24px;
    margin-bottom: 6px;
    outline: none;
  }
  h3 {
    margin-top: 14px;
    font-size: 16px;
    color: var(--soft);
  }
  .close {
    float: right;
  }
  .trouble {
    color: var(--paint);
    border-left: 6px solid var(--paint-bar);
    padding-left: 10px;
  }
  .ways {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    margin: 14px 0 8px;
  }
  @media (max-width: 599px) {
    aside {
      top: auto;
      width: 100vw;
      max-height: 88vh;
      border-left: 0;
      border-top: 2px solid var(--ink);
    }
  }
`;

/** Labels over their fields, one under another. */
export const formStyles = css`
  .line {
    display: grid;
    gap: 2px;
    margin-top: 12px;
  }
  .line > label,
  legend {
    font: 600 16px/1.3 var(--name-face);
    color: var(--soft);
  }
  .line > input,
  .line > select {
    width: 100%;
    padding: 0 8px;
    color: var(--chalk);
  }
  .check {
    display: flex;
    align-items: center;
    gap: 8px;
    min-height: var(--target);
  }
  .check input {
    width: 22px;
    min-height: 22px;
    height: 22px;
    accent-color: var(--chalk);
  }
  .hint {
    font-size: 15px;
    color: var(--soft);
  }
`;
