import { html, type TemplateResult } from 'lit';

/**
 * Sets `2 1/4` as a whole number and a small fraction. The text stays `2 1/4` for the ear, the
 * clipboard and the search; only the font draws it smaller, so nothing has to be spelt twice.
 */
export function setFractions(text: string): TemplateResult | string {
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

// `11/4/2024` is a date, `a/3/4` a path: only a fraction that stands alone is set as one.
function touchesMoreDigits(text: string, start: number, length: number): boolean {
  return text[start - 1] === '/' || text[start + length] === '/';
}
