import { css } from 'lit';

/** A post's card: large fields, a heavy rule, the results, and the keys held at the bottom. */
export const cardStyles = css`
  :host {
    --target: 48px;
    display: flex;
    flex-direction: column;
    height: calc(100dvh - 50px);
    margin: 0 -16px;
  }
  /* It holds the words for the ear alone too, which would make the page longer from outside. */
  .scroll {
    position: relative;
    flex: 1;
    min-height: 0;
    padding: 0 16px;
    overflow-y: auto;
    scroll-padding: 8px 0 72px;
  }
  h2 {
    font-size: 30px;
    margin: 2px 0 6px;
    outline: none;
  }
  .title {
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    color: var(--soft);
  }
  .title h2 {
    color: var(--ink);
  }
  h2::first-letter {
    text-transform: uppercase;
  }
  .fields {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 10px 12px;
  }
  bp-field {
    grid-column: 1 / -1;
    min-width: 0;
  }
  bp-field.half {
    grid-column: span 1;
    font-size: 21px;
  }
  .results {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(132px, 1fr));
    gap: 0 14px;
    margin-top: 14px;
    padding-top: 6px;
    border-top: 2px solid var(--ink);
  }
  dt {
    font: 600 15px/1.3 var(--name-face);
    color: var(--soft);
  }
  dd button.plain {
    padding: 0;
    min-height: 44px;
    text-align: left;
    font-size: 19px;
    line-height: 1.2;
    color: var(--ink);
    text-decoration: none;
  }
  .waiting dd button.plain,
  .blank dd button.plain {
    font-style: italic;
    font-weight: 400;
    font-size: 16px;
    color: var(--soft);
  }
  .typed dd button.plain {
    color: var(--chalk);
  }
  .wrong dd button.plain {
    color: var(--paint);
    border-bottom: 3px solid var(--paint-bar);
    font-size: 16px;
  }
  .ask-here {
    border-left: 8px solid var(--paint-bar);
    background: var(--paint-wash);
    margin-bottom: 12px;
  }
  .stop,
  .caution {
    margin: 8px 0;
    padding: 6px 10px;
    border-left: 3px solid var(--paint-bar);
  }
  .stop {
    border-left-width: 8px;
    background: var(--paint-wash);
  }
  .stop strong,
  .caution strong {
    color: var(--paint);
  }
  details {
    margin: 12px 0;
  }
  summary {
    min-height: 44px;
    line-height: 44px;
    font-weight: 600;
    color: var(--chalk);
    cursor: pointer;
  }
  details > button {
    margin-top: 14px;
  }
  .begin {
    margin-top: 12px;
  }
  .outcome {
    display: flex;
    justify-content: space-between;
    align-items: center;
    gap: 12px;
    min-height: 44px;
    padding: 2px 16px;
    border-top: 2px solid var(--ink);
    font-size: 19px;
  }
  .outcome em {
    font-size: 16px;
    color: var(--soft);
  }
  /* Also while a notice over the card still pushes it down. */
  .held {
    position: sticky;
    bottom: 0;
    z-index: 1;
    background: var(--paper);
  }
  @media (max-height: 560px) {
    :host {
      display: block;
      height: auto;
    }
    .held {
      position: static;
    }
    .scroll {
      overflow: visible;
    }
  }
`;
