import { svg, type TemplateResult } from 'lit';

const FRACTION = /(\d+\s*[/⁄]\s*\d+)/u;

/** A measurement for a drawing, its fractions set as fractions. */
export function drawnFigures(text: string): readonly (string | TemplateResult<2>)[] {
  return parts(text).map((part) =>
    FRACTION.test(part) ? svg`<tspan class="fraction">${slashed(part)}</tspan>` : part,
  );
}

/** A unit as it is written by hand: `ft³` for `ft^3`. */
export function unitWords(unit: string): string {
  return unit.replace(/\^2/gu, '²').replace(/\^3/gu, '³');
}

/** A coordinate short enough to read in the markup. */
export function px(number: number): number {
  return Math.round(number * 100) / 100;
}

function parts(text: string): readonly string[] {
  return text.split(FRACTION).filter((part) => part !== '');
}

function slashed(fraction: string): string {
  return fraction.replace(/\s*[/⁄]\s*/u, '\u2044');
}
