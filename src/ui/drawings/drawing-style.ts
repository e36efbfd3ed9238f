import { css } from 'lit';

/** The look that all pictures share; colors come from the page's tokens. */
export const drawingStyle = css`
  :host {
    display: block;
    --drawn-paper: var(--paper, #f6f1e4);
    --drawn-ink: var(--ink, #23282c);
    --drawn-soft: var(--soft, #4d5152);
    --drawn-rule: var(--rule, #d9d0ba);
    --drawn-chalk: var(--chalk, #1c4f8f);
    --drawn-chalk-wash: var(--chalk-wash, var(--wash, #e7eef6));
    --drawn-paint: var(--paint, #7f3000);
    --drawn-paint-bar: var(--paint-bar, #b8480a);
    --drawn-paint-wash: var(--paint-wash, #fbe7d6);
    --drawn-soil: var(--soil, #a98c63);
    --drawn-concrete: var(--concrete, #b9b7b0);
    --drawn-wood: var(--wood, #c79f62);
    --drawn-rock: var(--rock, light-dark(#a19d92, #625f54));
    color: var(--drawn-ink);
    font-family: 'Barlow Semi Condensed', 'Arial Narrow', sans-serif;
    font-size: 15px;
    line-height: 1.35;
    font-variant-numeric: tabular-nums;
  }
  figure {
    margin: 0;
  }
  figcaption {
    color: var(--drawn-soft);
  }
  svg {
    display: block;
    max-width: 100%;
    height: auto;
  }
  text {
    fill: var(--drawn-ink);
    font-size: 15px;
  }
  .fraction {
    font-variant-numeric: diagonal-fractions;
    font-size: 1.15em;
  }
  .waits {
    margin: 0;
    padding: 12px 0;
    font-style: italic;
    color: var(--drawn-soft);
  }
  .stop {
    margin: 0 0 4px;
    padding: 4px 10px;
    border-inline-start: 5px solid var(--drawn-paint-bar);
    background: var(--drawn-paint-wash);
    color: var(--drawn-paint);
    font-weight: 600;
  }
  .soil {
    fill: var(--drawn-soil);
    fill-opacity: 0.35;
  }
  .concrete {
    fill: var(--drawn-concrete);
  }
  .grade {
    fill: none;
    stroke: var(--drawn-ink);
    stroke-width: 1.5;
  }
  .quiet {
    fill: var(--drawn-soft);
  }
  @media (forced-colors: active) {
    :host {
      --drawn-paper: Canvas;
      --drawn-ink: CanvasText;
      --drawn-soft: CanvasText;
      --drawn-chalk: Highlight;
      --drawn-paint: CanvasText;
      --drawn-paint-bar: CanvasText;
      --drawn-paint-wash: Canvas;
    }
  }
`;
