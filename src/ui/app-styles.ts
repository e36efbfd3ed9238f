import { css } from 'lit';

/** The page: the string line at the left, the sheets down the middle. */
export const appStyles = css`
  .desk {
    display: grid;
    grid-template-columns: 190px minmax(0, 1fr);
    max-width: 1500px;
  }
  .desk main {
    min-width: 0;
    padding: 0 36px 30vh 0;
  }
  .notices {
    display: grid;
    gap: 10px;
    margin-top: 14px;
  }
  .trouble {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 4px 16px;
    padding: 8px 14px;
    border-left: 8px solid var(--paint-bar);
    background: var(--paint-wash);
  }
  .trouble p {
    flex: 1 1 20em;
  }
  .file {
    display: none;
  }
  .said {
    position: fixed;
    left: 0;
    bottom: 0;
    z-index: 30;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 16px;
    max-width: min(44em, 100vw);
    padding: 7px 16px;
    background: var(--ink);
    color: var(--paper);
  }
  .said:has(:empty) {
    padding: 0;
  }
  @media (forced-colors: active) {
    .said:not(:has(:empty)) {
      border: 1px solid;
      color: CanvasText;
    }
  }
  .said button {
    color: var(--ink);
    background: var(--paper);
  }
  .said p {
    flex: 0 1 auto;
    margin: 0;
  }
  /* On a phone the keys and the next post are at the bottom. */
  @media (max-width: 599px) {
    .said {
      top: 0;
      bottom: auto;
    }
  }
  /* A small laptop shows a post from its number to its remedy only with the margins narrow. */
  @media (max-width: 1399px) {
    .desk {
      grid-template-columns: 168px minmax(0, 1fr);
    }
    .desk main {
      padding-right: 18px;
    }
  }
`;
