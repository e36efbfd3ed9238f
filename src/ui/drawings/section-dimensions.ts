import { svg, type TemplateResult } from 'lit';
import { drawnFigures, px } from './figures.ts';
import type { Dimension, SideLabel } from './section-measures.ts';
import type { Section } from './section.ts';

/** The dimensions of a hole's section and the labels that name its parts. */
export function drawDimensions({
  dimensions,
  labels,
  left,
  right,
  height,
}: Section): TemplateResult<2> {
  const y = height - 27;
  return svg`
    ${dimensions.map(drawDimension)} ${labels.map(drawLabel)}
    <path class="dimension" d="M${left} ${y}H${right}M${left} ${y - 4}v8M${right} ${y - 4}v8"></path>
  `;
}

function drawDimension({
  x,
  from,
  to,
  text,
  figure,
  word,
  side,
  wanted,
}: Dimension): TemplateResult<2> {
  const at = px(side === 'left' ? x - 8 : x + 8);
  const anchor = side === 'left' ? 'toward-left' : '';
  return svg`<path class="dimension ${wanted ? 'wanted' : ''}" d="M${px(x)} ${from}V${to}"></path>
    <path class="dimension" d="M${px(x - 5)} ${from}h10M${px(x - 5)} ${to}h10"></path>
    <text class="figure ${anchor}" x=${at} y=${figure}>${drawnFigures(text)}</text>
    <text class=${anchor} x=${at} y=${px(figure + 17)}>${word}</text>`;
}

function drawLabel({ text, at, x, y }: SideLabel): TemplateResult<2> {
  return svg`<path class="lead" d="M${at.x} ${at.y}L${px(x - 4)} ${px(y - 5)}"></path>
    <text x=${px(x)} y=${y}>${drawnFigures(text)}</text>`;
}
