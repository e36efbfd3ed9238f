import { css } from 'lit';

/** What only the hole's section draws. */
export const sectionStyle = css`
  figcaption {
    max-width: 460px;
    padding-top: 6px;
  }
  figcaption p {
    margin: 0;
  }
  .rock {
    fill: var(--drawn-rock);
  }
  .ledge {
    fill: none;
    stroke: var(--drawn-ink);
    stroke-width: 1.25;
  }
  .crack {
    fill: none;
    stroke: var(--drawn-ink);
    stroke-opacity: 0.45;
    stroke-width: 1;
  }
  .stopped {
    stroke: var(--drawn-paint-bar);
    stroke-width: 4;
  }
  .pit {
    fill: var(--drawn-paper);
  }
  .side {
    fill: none;
    stroke: var(--drawn-ink);
    stroke-width: 1;
  }
  .wish {
    fill: none;
    stroke: var(--drawn-ink);
    stroke-width: 1.5;
    stroke-dasharray: 6 4;
  }
  .gravel {
    fill: var(--drawn-paper);
    stroke: var(--drawn-ink);
    stroke-width: 1;
  }
  .pebble {
    fill: none;
    stroke: var(--drawn-ink);
    stroke-width: 1;
  }
  .timber {
    fill: var(--drawn-wood);
    stroke: var(--drawn-ink);
    stroke-width: 1;
  }
  .frost {
    fill: none;
    stroke: var(--drawn-ink);
    stroke-width: 1.25;
    stroke-dasharray: 10 3 2 3;
  }
  .dimension,
  .lead {
    fill: none;
    stroke: var(--drawn-ink);
    stroke-width: 1;
  }
  .dimension.wanted {
    stroke-dasharray: 6 4;
  }
  .figure {
    font-weight: 600;
    font-size: 16px;
  }
  .toward-left {
    text-anchor: end;
  }
  .middle {
    text-anchor: middle;
  }
`;
