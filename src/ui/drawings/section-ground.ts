import { nothing, svg, type TemplateResult } from 'lit';
import { drawnFigures, px } from './figures.ts';
import type { HoleReadings } from './hole-readings.ts';
import type { Section } from './section.ts';

/** The soil, what stopped the digging, the frost line and the grade. */
export function drawGround(
  section: Section,
  { stoppedBy, frost: frostDepth }: HoleReadings,
): TemplateResult<2> {
  const { width, height, grade, bottom, left, right, rock, frost } = section;
  const floor = height - 30;
  const frostText = frostDepth?.text ?? '';
  const ledge = rock ? ledgeLine(section) : '';
  return svg`
    <rect class="soil" x="0" y=${grade} width=${width} height=${px(Math.max(0, floor - grade))}></rect>
    ${
      rock
        ? svg`<path class="rock" d="${ledge}V${floor}H0Z"></path>
            <path class="ledge" d=${ledge}></path>
            <path class="crack" d=${cracks(section, floor)}></path>
            <text x="10" y=${px(ledgeWords(bottom + 26, frost, floor - 8))}>${stoppedBy}</text>`
        : nothing
    }
    ${
      frost === undefined
        ? nothing
        : svg`<path class="frost" d="M0 ${frost}H${width}"></path>
      <text x="8" y=${px(frost - 6)}>${drawnFigures(`frost ${frostText}`)}</text>`
    }
    <path class="grade" d="M0 ${grade}H${left}M${right} ${grade}H${width}"></path>
    <text class="quiet" x="8" y=${px(grade - 7)}>grade</text>
  `;
}

/** The hole with its gravel, concrete and post, and the outline that was wanted. */
export function drawHole(section: Section): TemplateResult<2> {
  const { left, right, grade, bottom, wanted, gravelTop, post, concrete, short, rock } = section;
  const width = px(right - left);
  return svg`
    <rect class="pit" x=${left} y=${grade} width=${width} height=${px(Math.max(0, bottom - grade))}></rect>
    ${
      bottom > gravelTop
        ? svg`<rect class="gravel" x=${left} y=${gravelTop} width=${width} height=${px(bottom - gravelTop)}></rect>
            <path class="pebble" d=${pebbles(section)}></path>`
        : nothing
    }
    ${concrete.length === 0 ? nothing : svg`<path class="concrete" d="M${concrete.map(({ x, y }) => `${String(x)} ${String(y)}`).join('L')}Z"></path>`}
    ${post ? drawTimber(post) : nothing}
    <path class="side" d="M${left} ${grade}V${bottom}H${right}V${grade}"></path>
    ${short ? svg`<path class="wish" d="M${left} ${bottom}V${wanted}H${right}V${bottom}"></path>` : nothing}
    ${short && !rock ? svg`<path class="stopped" d="M${left} ${bottom}H${right}"></path>` : nothing}
  `;
}

function drawTimber({ left, right, top, foot }: NonNullable<Section['post']>): TemplateResult<2> {
  const middle = px((left + right) / 2);
  return svg`<path class="timber" d="M${left} ${foot}V${top + 5}L${middle} ${top + 1}L${right} ${top + 5}V${foot}Z"></path>`;
}

// Under the frost line where its own words stand in the way.
function ledgeWords(wanted: number, frost: number | undefined, lowest: number): number {
  const isInTheWay = frost !== undefined && Math.abs(frost - 6 - wanted) < 18;
  return Math.min(isInTheWay ? frost + 20 : wanted, lowest);
}

function ledgeLine({ width, left, right, bottom }: Section): string {
  const steps = [
    [0, -4],
    [left * 0.4, -9],
    [left * 0.8, 2],
    [left, 0],
    [right, 0],
    [right + (width - right) * 0.3, 3],
    [right + (width - right) * 0.7, -7],
    [width, -2],
  ] as const;
  return steps
    .map(
      ([x, rise], index) =>
        `${index === 0 ? 'M' : 'L'}${String(px(x))} ${String(px(bottom + rise))}`,
    )
    .join('');
}

function cracks({ width, bottom, left, right }: Section, floor: number): string {
  const deep = Math.max(0, floor - bottom);
  return [0.08, 0.24, 0.42, 0.6, 0.78, 0.92]
    .filter((share) => width * share < left - 40 || width * share > right + 90)
    .map((share, index) => {
      const x = px(width * share);
      const y = px(bottom + deep * (0.35 + 0.12 * (index % 3)));
      return `M${String(x)} ${String(y)}l${String(px(deep * 0.14))} ${String(px(deep * 0.12))}l${String(px(deep * 0.05))} ${String(px(deep * 0.16))}`;
    })
    .join('');
}

function pebbles({ left, right, gravelTop, bottom }: Section): string {
  const size = 7;
  const columns = Math.min(40, Math.floor((right - left) / size));
  const rows = Math.min(20, Math.floor((bottom - gravelTop) / size));
  return Array.from({ length: columns * rows }, (_, stone) => {
    const row = Math.floor(stone / columns);
    const x = px(left + ((stone % columns) + (row % 2 === 0 ? 0.3 : 0.6)) * size);
    const y = px(gravelTop + (row + 0.5) * size);
    return `M${String(x)} ${String(y)}a2 1.6 0 1 0 4 0a2 1.6 0 1 0 -4 0`;
  }).join('');
}
