import { css } from 'lit';

/**
 * The field book's colors and measures, set once on the page and inherited by every element.
 * Text colors keep 7:1 or better on paper, sheet and wash; outlines of controls keep 3:1.
 */
export const tokens = css`
  :root {
    color-scheme: light dark;
    --paper: light-dark(#f6f1e4, #1b1d1e);
    --sheet: light-dark(#fdfaf2, #232627);
    --ink: light-dark(#23282c, #efe9da);
    --soft: light-dark(#464a4b, #c4bfb1);
    --rule: light-dark(#d9d0ba, #3c3f3e);
    --outline: light-dark(#857c66, #8b8779);
    --chalk: light-dark(#1a4b88, #9cc4f2);
    --wash: light-dark(#e7eef6, #22303f);
    --paint: light-dark(#7f3000, #ffae74);
    --paint-bar: light-dark(#b8480a, #ff9a52);
    --paint-wash: light-dark(#fbe7d6, #41291a);
    --on-chalk: light-dark(#fdfaf2, #10161d);
    --key-ground: light-dark(#e9dfc9, #2b2e2f);
    --soil: light-dark(#a98c63, #6b573b);
    --concrete: light-dark(#b9b7b0, #77766f);
    --wood: light-dark(#c79f62, #b48a50);
    --face: 'Barlow Semi Condensed', 'Arial Narrow', system-ui, sans-serif;
    --name-face: 'Barlow Condensed', 'Barlow Semi Condensed', 'Arial Narrow', system-ui, sans-serif;
    --row: 34px;
    --target: 34px;
    --round: 3px;
  }
  :root[data-theme='light'] {
    color-scheme: light;
  }
  :root[data-theme='dark'] {
    color-scheme: dark;
  }
  @media (pointer: coarse) {
    :root {
      --row: 44px;
      --target: 44px;
    }
  }
  @media (forced-colors: active) {
    :root {
      --on-chalk: ButtonText;
    }
  }
  html {
    background: var(--paper);
    scroll-padding-top: 12px;
  }
  body {
    margin: 0;
    background: var(--paper);
    color: var(--ink);
    font: 17px/1.4 var(--face);
    font-variant-numeric: tabular-nums;
    -webkit-text-size-adjust: 100%;
    text-size-adjust: 100%;
  }
`;

/** What every element shares: box model, buttons, fields, focus, and words for the ear only. */
export const base = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :host {
    display: block;
  }
  :host([hidden]) {
    display: none;
  }
  h1,
  h2,
  h3,
  p,
  ul,
  dl,
  dd,
  fieldset {
    margin: 0;
    padding: 0;
    border: 0;
  }
  h1,
  h2,
  h3 {
    font-family: var(--name-face);
    font-weight: 600;
    line-height: 1.15;
  }
  ul {
    list-style: none;
  }
  button,
  input,
  select {
    font: inherit;
    font-variant-numeric: inherit;
    color: inherit;
    min-height: var(--target);
    border: 1px solid var(--outline);
    border-radius: var(--round);
    background: var(--sheet);
  }
  button {
    padding: 2px 14px;
    font-weight: 600;
    cursor: pointer;
    touch-action: manipulation;
  }
  @media (hover: hover) {
    button:hover:not(:disabled) {
      text-decoration: underline;
      text-underline-offset: 3px;
    }
  }
  button:disabled {
    color: var(--soft);
    border-color: var(--rule);
    background: none;
    cursor: default;
  }
  button.plain {
    border-color: transparent;
    background: none;
    padding: 2px 8px;
    color: var(--chalk);
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  button.plain:disabled {
    color: var(--soft);
    text-decoration: none;
  }
  a {
    color: var(--chalk);
  }
  :focus-visible {
    outline: 3px solid var(--chalk);
    outline-offset: 1px;
  }
  /* A heading takes the focus to be read aloud from there, not to be pressed. */
  h2:focus-visible {
    outline: none;
  }
  .spoken {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .frac {
    font-variant-numeric: diagonal-fractions;
    font-size: 1.38em;
    letter-spacing: 0.01em;
    line-height: 0;
  }
  @media (prefers-reduced-motion: reduce) {
    * {
      animation: none !important;
      transition: none !important;
      scroll-behavior: auto !important;
    }
  }
`;
