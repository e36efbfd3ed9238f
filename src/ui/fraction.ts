import { html, type TemplateResult } from 'lit';

/**
 * Sets `2 1/4` as a whole number and a small fraction, and units in a sentence as they are printed. The text stays `2 1/4` for the ear, the
 * clipboard and the search; only the font draws it smaller, so nothing has to be spelt twice.
 */
export function setFractions(written: string): TemplateResult | string {
  const text = withSigns(written);
  const parts: (TemplateResult | string)[] = [];
  let read = 0;
  for (const found of text.matchAll(/\d+\/\d+/g)) {
    if (touchesMoreDigits(text, found.index, found[0].length)) continue;
    parts.push(text.slice(read, found.index), html`<span class="frac">${found[0]}</span>`);
    read = found.index + found[0].length;
  }
  if (parts.length === 0) return text;
  parts.push(text.slice(read));
  return html`${parts}`;
}

// Formulas write `ft^3` and `degC`; a page says `ft³` and `°C`.
function withSigns(text: string): string {
  return text
    .replace(/(?<=[a-z])\^2\b/g, '²')
    .replace(/(?<=[a-z])\^3\b/g, '³')
    .replace(/ ?\bdeg([CF])\b/g, ' °$1');
}

// `11/4/2024` is a date, `a/3/4` a path: only a fraction that stands alone is set as one.
function touchesMoreDigits(text: string, start: number, length: number): boolean {
  return text[start - 1] === '/' || text[start + length] === '/';
}
