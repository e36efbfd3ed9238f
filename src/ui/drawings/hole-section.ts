import { html, nothing, svg, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { drawingStyle } from './drawing-style.ts';
import { Drawing } from './drawing.ts';
import { drawnFigures } from './figures.ts';
import { readHole, type HoleReadings } from './hole-readings.ts';
import { drawDimensions } from './section-dimensions.ts';
import { drawGround, drawHole } from './section-ground.ts';
import { sectionStyle } from './section-style.ts';
import { layOutHole, type Section } from './section.ts';

/**
 * The hole of the current post in section, to scale: post, concrete, crown,
 * gravel, grade and frost line; where digging stopped short, what stopped it and
 * the depth that was wanted. Says what it waits for where it can't be drawn.
 */
@customElement('bp-hole-section')
export class HoleSection extends Drawing {
  static override readonly styles = [drawingStyle, sectionStyle];

  protected override render() {
    if (!this.book) return nothing;
    const hole = readHole(this.book, this.current);
    if (typeof hole === 'string') return html`<p class="waits">${hole}</p>`;
    const { depth, width } = hole;
    if (!depth || !width) {
      return html`<p class="waits">
        The hole for ${hole.name} can’t be drawn yet.
        ${hole.waits.map((wait) => html`<br />${wait}`)}
      </p>`;
    }
    const section = layOutHole(hole, depth, width, this.room === 0 ? 380 : this.room);
    return html`<figure>
      ${this.renderSection(section, hole)}
      <figcaption>${this.renderCaption(section, hole)}</figcaption>
    </figure>`;
  }

  private renderSection(section: Section, hole: HoleReadings): TemplateResult {
    const across = [hole.width?.text ?? '', hole.shape].filter((part) => part !== '').join(' ');
    const parts = [
      ...section.dimensions.map(({ text, word }) => `${text} ${word}`),
      `${across} across`,
      hole.post ? `post ${hole.post.text}` : '',
      ...section.labels.map(({ text }) => text),
      hole.stoppedBy === '' ? '' : `stopped by ${hole.stoppedBy}`,
    ].filter((part) => part !== '');
    return html`<svg
      width=${section.width}
      height=${section.height}
      viewBox="0 0 ${section.width} ${section.height}"
      role="img"
      aria-label="The hole for ${hole.name} in section"
      aria-describedby="summary"
    >
      <desc id="summary">${parts.join(', ')}</desc>
      ${drawGround(section, hole)} ${drawHole(section)} ${drawDimensions(section)}
      ${svg`<text class="middle" x=${section.middle} y=${section.height - 10}>${drawnFigures(across)}</text>`}
    </svg>`;
  }

  private renderCaption({ short }: Section, hole: HoleReadings) {
    const { embedment, shortBy, stoppedBy, rule, waits } = hole;
    const by = stoppedBy === '' ? '' : `: stopped by ${stoppedBy}`;
    const of = embedment ? ` of the ${embedment.text} wanted in the ground` : '';
    return html`
      ${
        shortBy === '' && !short
          ? nothing
          : html`<p class="stop">${shortBy === '' ? 'Short' : `${shortBy} short`}${of}${by}.</p>`
      }
      ${rule === '' ? nothing : html`<p>Depth governed by ${rule}.</p>`}
      ${waits.map((wait) => html`<p>${wait}</p>`)}
      <p>
        Buried services marked first; hand dig near the marks. Local code and licensed practice
        decide the depth.
      </p>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-hole-section': HoleSection;
  }
}
