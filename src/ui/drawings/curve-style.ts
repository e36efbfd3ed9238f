import { css } from 'lit';

/** What only the chart draws. */
export const curveStyle = css`
  .axis,
  .tick {
    fill: none;
    stroke: var(--drawn-ink);
    stroke-width: 1.25;
  }
  .guide {
    fill: none;
    stroke: var(--drawn-rule);
    stroke-width: 1;
  }
  .line {
    fill: none;
    stroke: var(--drawn-ink);
    stroke-width: 2.25;
  }
  .line.second {
    stroke-dasharray: 9 4;
  }
  .line.third {
    stroke-dasharray: 2 4;
  }
  .level {
    fill: none;
    stroke: var(--drawn-soft);
    stroke-width: 1.5;
    stroke-dasharray: 6 3;
  }
  .mark {
    fill: var(--drawn-chalk);
  }
  .lead {
    fill: none;
    stroke: var(--drawn-chalk);
    stroke-width: 1.25;
    stroke-dasharray: 3 3;
  }
  .marked {
    fill: var(--drawn-chalk);
    font-weight: 600;
  }
  .name,
  .marked {
    paint-order: stroke;
    stroke: var(--drawn-paper);
    stroke-width: 4px;
  }
  .stretch {
    fill: none;
    stroke: var(--drawn-soft);
    stroke-width: 1;
  }
  figcaption {
    margin-bottom: 4px;
    color: var(--drawn-ink);
    font-weight: 600;
  }
  .note {
    margin: 4px 0 0;
    color: var(--drawn-soft);
  }
  .toward-left {
    text-anchor: end;
  }
  .middle {
    text-anchor: middle;
  }
`;
