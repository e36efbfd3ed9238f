import { css } from 'lit';

/** What only the elevation draws. */
export const elevationStyle = css`
  .scroller {
    overflow-x: auto;
    overflow-y: hidden;
  }
  .scroller svg {
    max-width: none;
  }
  :host([still]) .scroller svg {
    max-width: 100%;
  }
  figure {
    break-inside: avoid;
  }
  figcaption {
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    gap: 0 1.5em;
  }
  figcaption.narrow {
    justify-content: flex-start;
  }
  .rail {
    fill: none;
    stroke: var(--drawn-wood);
    stroke-width: 3.5;
  }
  .pickets {
    fill: none;
    stroke: var(--drawn-wood);
    stroke-opacity: 0.5;
    stroke-width: 1;
  }
  .gate {
    fill: none;
    stroke: var(--drawn-wood);
    stroke-width: 2.5;
  }
  .plumb {
    fill: none;
    stroke: var(--drawn-soft);
    stroke-width: 1.25;
    stroke-dasharray: 2 3;
  }
  .tree {
    fill: none;
    stroke: var(--drawn-soft);
    stroke-width: 1.25;
    stroke-dasharray: 4 3;
  }
  .post {
    fill: none;
    stroke: var(--drawn-ink);
  }
  .below {
    stroke: var(--drawn-ink);
    stroke-opacity: 0.55;
    fill: none;
  }
  .bar {
    stroke: var(--drawn-paper);
    stroke-width: 2.5;
  }
  .unread .post {
    stroke-dasharray: 5 4;
  }
  .number {
    text-anchor: middle;
    font-size: 16px;
  }
  .beside,
  .remedy,
  .mark {
    text-anchor: middle;
  }
  .mark {
    font-size: 19px;
    font-weight: 600;
  }
  .remedy.replace,
  .unread .beside {
    font-weight: 600;
  }
  .unread .beside {
    fill: var(--drawn-paint);
  }
  .now .post,
  .now .below {
    stroke: var(--drawn-chalk);
  }
  .now text {
    fill: var(--drawn-chalk);
    font-weight: 600;
  }
  .now .underline {
    stroke: var(--drawn-chalk);
    stroke-width: 2.5;
  }
  .touch {
    fill: transparent;
    stroke: none;
  }
  .words {
    pointer-events: none;
  }
  .handle {
    cursor: pointer;
    outline: none;
  }
  .handle:focus-visible .touch {
    stroke: var(--drawn-chalk);
    stroke-width: 2.5;
  }
`;
