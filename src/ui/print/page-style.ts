import { css } from 'lit';

/** The look of every printed page: black on white, measured in points, for A4 and Letter alike. */
export const pageStyle = css`
  :host {
    display: block;
    color-scheme: light;
    color: #000;
    background: #fff;
    font:
      10.5pt/1.35 'Barlow Semi Condensed',
      'Arial Narrow',
      sans-serif;
    font-variant-numeric: tabular-nums;
    --paper: #fff;
    --sheet: #fff;
    --ink: #000;
    --soft: #333;
    --rule: #999;
    --chalk: #000;
    --chalk-wash: #fff;
    --paint: #000;
    --paint-bar: #000;
    --paint-wash: #fff;
    --soil: #999;
    --concrete: #c8c8c8;
    --wood: #888;
    --rock: #aaa;
  }
  * {
    box-sizing: border-box;
  }
  h1,
  h2,
  p,
  dl,
  dd {
    margin: 0;
  }
  h1,
  h2,
  th {
    font-family: 'Barlow Condensed', 'Barlow Semi Condensed', 'Arial Narrow', sans-serif;
    font-weight: 600;
  }
  h1 {
    font-size: 22pt;
    line-height: 1.1;
  }
  h2 {
    margin-top: 16pt;
    font-size: 14pt;
    break-after: avoid;
  }
  .question {
    color: #333;
    break-after: avoid;
  }
  .frac {
    font-variant-numeric: diagonal-fractions;
    font-size: 1.15em;
    line-height: 0;
  }
  header {
    display: grid;
    grid-template-columns: 1fr auto;
    align-items: end;
    gap: 2pt 18pt;
    padding-bottom: 6pt;
    border-bottom: 1.5pt solid #000;
  }
  header .kind {
    font-size: 12pt;
    text-align: end;
  }
  .blanks {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 7pt 22pt;
    margin-top: 8pt;
    break-inside: avoid;
  }
  .blank {
    display: flex;
    gap: 5pt;
    align-items: baseline;
  }
  .blank.wide {
    grid-column: 1 / -1;
  }
  .blank dt {
    white-space: nowrap;
    color: #333;
  }
  .blank dd {
    flex: 1;
    min-height: 15pt;
    border-bottom: 0.75pt solid #000;
  }
  .blank dd.ticks {
    border-bottom: 0;
  }
  .tick {
    display: inline-block;
    width: 9pt;
    height: 9pt;
    margin-inline: 0 4pt;
    border: 0.75pt solid #000;
    vertical-align: -1pt;
  }
  .ticked {
    background:
      linear-gradient(to top right, transparent 43%, #000 43% 57%, transparent 57%),
      linear-gradient(to bottom right, transparent 43%, #000 43% 57%, transparent 57%);
  }
  .tick + .tick,
  .ticks span + span {
    margin-inline-start: 14pt;
  }
  table {
    width: 100%;
    margin-top: 6pt;
    border-collapse: collapse;
  }
  table.narrow {
    width: auto;
  }
  table.narrow :is(th, td) {
    padding-inline-end: 22pt;
  }
  thead {
    display: table-header-group;
  }
  tr {
    break-inside: avoid;
  }
  th,
  td {
    padding: 2.5pt 7pt 2.5pt 0;
    text-align: start;
    vertical-align: baseline;
  }
  thead th {
    border-bottom: 1pt solid #000;
    vertical-align: bottom;
    line-height: 1.15;
  }
  thead small {
    display: block;
    font:
      8.5pt/1.2 'Barlow Semi Condensed',
      'Arial Narrow',
      sans-serif;
    color: #333;
  }
  tbody td,
  tbody th {
    border-bottom: 0.5pt solid #bbb;
  }
  tbody th {
    font-weight: 600;
  }
  .number {
    text-align: end;
  }
  td.number:not(:has(.waits)) {
    white-space: nowrap;
  }
  .quantity {
    font-weight: 600;
  }
  .waits {
    font-style: italic;
  }
  .hand {
    min-width: 60pt;
  }
  tbody.group th {
    white-space: nowrap;
  }
  tbody.group tr:not(:last-child) > * {
    border-bottom-color: transparent;
  }
  .hold {
    margin-top: 8pt;
    padding: 5pt 8pt;
    border: 1.5pt solid #000;
    font-weight: 600;
    break-inside: avoid;
  }
  .cautions {
    margin: 6pt 0 0;
    padding: 0;
    list-style: none;
    columns: 2;
    column-gap: 22pt;
  }
  .cautions li {
    padding: 0 0 4pt 9pt;
    border-inline-start: 2.5pt solid #000;
    margin-bottom: 4pt;
    break-inside: avoid;
  }
  .cautions small,
  td small {
    display: block;
    font-size: 8.5pt;
    line-height: 1.25;
    color: #333;
  }
  .sections {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 0 22pt;
    break-inside: avoid;
  }
  .sections h3 {
    margin: 4pt 0;
    font-size: 11pt;
  }
  .formula {
    font-family: ui-monospace, 'DejaVu Sans Mono', monospace;
    font-size: 8.5pt;
    overflow-wrap: anywhere;
  }
  .worked h3 {
    margin: 12pt 0 1pt;
    font-size: 12pt;
    break-after: avoid;
  }
  .worked :is(.formula, .said) {
    margin: 1pt 0;
    break-after: avoid;
  }
  .worked code {
    font-family: ui-monospace, 'DejaVu Sans Mono', monospace;
    font-size: 8.5pt;
    font-weight: 400;
    overflow-wrap: anywhere;
  }
  .worked .numbers {
    padding-inline-start: 9pt;
  }
  .calculation {
    font-size: 9pt;
  }
  .calculation table:not(.narrow) {
    font-size: 8.5pt;
  }
  .calculation :is(th, td) {
    padding-block: 1.2pt;
  }
  .calculation :is(.formula, .worked code, .names small, small) {
    font-size: 7.5pt;
  }
  .calculation .worked h3 {
    margin-top: 7pt;
    font-size: 10.5pt;
  }
  .blocks,
  .inputs {
    columns: 2;
    column-gap: 20pt;
  }
  .inputs table {
    margin-top: 0;
  }
  .blocks table.narrow {
    width: 100%;
  }
  .blocks table.narrow :is(th, td) {
    padding-inline-end: 5pt;
  }
  .blocks .wide {
    column-span: all;
  }
  .followed {
    display: grid;
    grid-template-columns: 9.5em 1fr 8.5em;
    gap: 0 10pt;
    padding-block: 3pt;
    border-bottom: 0.5pt solid #bbb;
  }
  .worked:has(.followed),
  .together {
    break-inside: avoid;
  }
  .inputs.read {
    columns: auto;
  }
  .inputs th small {
    display: block;
    font-weight: 400;
  }
  .calculation .followed :is(h3, p) {
    margin: 0;
    break-after: auto;
  }
  .followed h3 code {
    display: block;
  }
  .followed .outcome {
    font-size: 10.5pt;
    text-align: end;
  }
  .single {
    columns: 2;
    column-gap: 22pt;
  }
  .single .worked {
    break-inside: avoid;
    padding-bottom: 6pt;
    border-bottom: 0.5pt solid #bbb;
  }
  .single h3 {
    margin-top: 6pt;
  }
  .single .outcome {
    float: inline-end;
    text-align: end;
  }
  .outcome small {
    display: block;
    font-size: 8.5pt;
    font-weight: 400;
    color: #333;
  }
  .names {
    margin: 3pt 0 0;
    padding: 0 0 0 9pt;
    list-style: none;
  }
  .names li {
    break-inside: avoid;
  }
  .names small {
    font-size: 8.5pt;
    color: #333;
  }
`;
