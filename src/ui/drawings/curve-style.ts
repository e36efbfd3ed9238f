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
    stroke: var(--drawn-paper);
    stroke-width: 1.5;
  }
  .lead {
    fill: none;
    stroke: var(--drawn-chalk);
    stroke-width: 1.25;
    stroke-dasharray: 3 3;
  }
  .number {
    fill: var(--drawn-paper);
    font-size: 13px;
    font-weight: 600;
  }
  .key {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 16px;
    margin: 2px 0 6px;
    padding: 0;
    list-style: none;
  }
  .dot {
    display: inline-block;
    min-width: 17px;
    margin-right: 3px;
    border-radius: 9px;
    background: var(--drawn-chalk);
    color: var(--drawn-paper);
    font-size: 13px;
    line-height: 17px;
    text-align: center;
  }
  .dashes {
    display: inline-block;
    width: 22px;
    margin-right: 3px;
    border-top: 2px dashed var(--drawn-soft);
    vertical-align: 0.3em;
  }
  .name {
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
