import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type {
  CellPlace,
  Gathering,
  Named,
  RuleCall,
  Use,
  Working,
  WorkingStep,
} from '../worksheet/index.ts';
import { authority, cameBy } from '../output/index.ts';
import { setFractions } from './fraction.ts';
import { base } from './tokens.ts';
import { unitFace } from './unit-face.ts';
import { workingStyles } from './working-styles.ts';

/**
 * The steps of one working: what the formula read, which rules it called, what it waits for and who
 * reads it. Every name leads to the cell where it stands.
 *
 * @fires cell-pick - Somebody wants to see the working of another cell; the detail is its place.
 */
@customElement('bp-working-detail')
export class WorkingDetail extends LitElement {
  static override styles = [base, workingStyles];

  @property({ attribute: false }) working: Working | undefined;

  protected override render() {
    const { working } = this;
    if (!working) return nothing;
    return html`
      ${listed('What is wrong', working.problems, (words) => html`<li class="trouble">${words}</li>`)}
      ${listed('It waits for', working.waits, (wait) => html`<li>${this.link(wait)}</li>`)}
      ${renderNumbers(working)}
      ${listed('What it read', working.steps, (step) => this.renderStep(step))}
      ${listed('Rules it called', working.rules, renderRule)}
      ${listed('Rows it went through', working.gathered, renderGathering)}
      ${listed('What reads it', working.usedBy, (use) => html`<li>${this.link(use)}</li>`)}
    `;
  }

  private renderStep(step: WorkingStep): TemplateResult {
    const { label, name, place, taken, si, sheet, isUsed } = step;
    const value = taken === '' ? 'no value' : figures(taken);
    return html`<li>
      <div class="line">
        ${place ? this.link({ label, place }) : html`<span class="label">${label}</span>`}
        <b class="value">${value}</b>
      </div>
      <p class="small">
        <code>${name}</code
        >${isUsed ? '' : ', not needed here'}${si === '' ? '' : `, ${unitFace(si)}`}
      </p>
      <p class="small">${[sheet, ...cameBy(step)].filter((words) => words !== '').join('; ')}</p>
    </li>`;
  }

  private link({ label, place }: Named | Use): TemplateResult {
    if (!place) return html`<span class="label">${label}</span>`;
    return html`<button class="plain" @click=${() => this.pick(place)}>${label}</button>`;
  }

  private pick(place: CellPlace) {
    this.dispatchEvent(
      new CustomEvent('cell-pick', { detail: place, bubbles: true, composed: true }),
    );
  }
}

/** A value with its unit as it is printed, fractions set. */
export function figures(text: string): TemplateResult | string {
  return setFractions(unitFace(text).replace(/ °(?![CF])/g, '°'));
}

function renderNumbers({ inNumbers, worked, formula }: Working): TemplateResult | typeof nothing {
  if (inNumbers === '' || (inNumbers === formula && worked === '')) return nothing;
  return html`<section>
    <h3>In numbers</h3>
    <code class="block">${setFractions(inNumbers)}</code>
    ${worked === '' ? nothing : html`<p class="line comes">comes to <b class="value">${figures(worked)}</b></p>`}
  </section>`;
}

function renderRule(call: RuleCall): TemplateResult {
  const { name, given, result, meaning, equation, onTheWay } = call;
  const { source, standing, caution, problem, isUsed } = call;
  return html`<li>
    <p class="line">
      <code>${name}</code><b class="value">${result === '' ? 'no value' : figures(result)}</b>
    </p>
    <p>${meaning}${isUsed ? '' : ' Not needed here.'}</p>
    <dl class="given">
      ${given.map(
        (each) =>
          html`<dt>${each.name.replaceAll('_', ' ')}</dt>
            <dd>${each.value === '' ? 'no value' : figures(each.value)}</dd>`,
      )}
    </dl>
    ${problem === '' ? nothing : html`<p class="trouble">${problem}</p>`}
    <p class="small"><code>${equation}</code></p>
    ${
      onTheWay.length === 0
        ? nothing
        : html`<dl class="given">
            ${onTheWay.map(
              (each) =>
                html`<dt><code>${each.symbol}</code> ${each.meaning}</dt>
                  <dd>${figures(each.value)}</dd>`,
            )}
          </dl>`
    }
    <p class="small">${authority(standing, source)}</p>
    ${caution === '' ? nothing : html`<p class="caution">${caution}</p>`}
  </li>`;
}

function renderGathering({ text, meaning, sheet, rows, result }: Gathering): TemplateResult {
  return html`<li>
    <p class="line">
      <span class="label">${sheet}: ${meaning}, ${rows} ${rows === 1 ? 'row' : 'rows'}</span>
      <b class="value">${result === '' ? 'no value' : figures(result)}</b>
    </p>
    <p class="small"><code>${text}</code></p>
  </li>`;
}

function listed<Item>(
  title: string,
  items: readonly Item[],
  render: (item: Item) => TemplateResult,
): TemplateResult | typeof nothing {
  if (items.length === 0) return nothing;
  return html`<section>
    <h3>${title}</h3>
    <ul>
      ${items.map(render)}
    </ul>
  </section>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-working-detail': WorkingDetail;
  }
  interface GlobalEventHandlersEventMap {
    'cell-pick': CustomEvent<CellPlace>;
  }
}
