import { css } from 'lit';

/** A post's block on the crew sheet: read at arm's length, written on with a carpenter's pencil. */
export const crewStyle = css`
  .post {
    margin-top: 6pt;
    padding: 4pt 8pt 6pt;
    border: 1pt solid #000;
    break-inside: avoid;
  }
  .post h3 {
    display: flex;
    gap: 12pt;
    align-items: baseline;
    margin: 0 0 3pt;
    font:
      600 20pt/1 'Barlow Condensed',
      'Arial Narrow',
      sans-serif;
  }
  .post h3 span {
    font-size: 15pt;
  }
  .cautions {
    font-size: 9.5pt;
  }
  .post dl:not(.done) {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 1pt 18pt;
  }
  .stop {
    margin: 2pt 0 4pt;
    padding: 2pt 0 2pt 8pt;
    border-inline-start: 6pt solid #000;
  }
  .post dl:not(.done) > div {
    display: grid;
    grid-template-columns: 58pt 1fr;
  }
  .post dl:not(.done) dt {
    color: #333;
  }
  .post dl:not(.done) dd {
    font-weight: 600;
  }
  .hazards {
    margin-top: 4pt;
    padding-inline-start: 8pt;
    border-inline-start: 3pt solid #000;
  }
  .done {
    display: grid;
    grid-template-columns: auto 1.4fr 1fr;
    gap: 14pt;
    margin-top: 5pt;
  }
`;
