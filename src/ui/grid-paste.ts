import { html, nothing, type TemplateResult } from 'lit';
import { copyCells, pastedRows, planPaste, type PastePlan } from './clipboard.ts';
import { send } from './events.ts';
import type { GridHost } from './grid-host.ts';
import './paste-preview.ts';
import type { PasteChoice } from './paste-preview.ts';
import { counted } from './waiting.ts';

/** Copies, cuts and pastes cells of a grid, and shows a paste first where its shape does not fit. */
export class GridPaste {
  private readonly grid: GridHost;
  private plan: PastePlan | undefined;

  constructor(grid: GridHost) {
    this.grid = grid;
  }

  readonly copy = (event: ClipboardEvent): void => {
    const { hand } = this.grid;
    if (hand.editing === undefined) copyCells(event, hand.chosenText());
  };

  readonly cut = (event: ClipboardEvent): void => {
    const { hand } = this.grid;
    if (hand.editing !== undefined) return;
    copyCells(event, hand.chosenText());
    hand.clear();
  };

  readonly paste = (event: ClipboardEvent): void => {
    const { view, columns, hand } = this.grid;
    if (hand.editing !== undefined || !view) return;
    const plan = planPaste(pastedRows(event), view, columns, hand.block);
    if (plan.rows.length === 0) return;
    if (plan.fits) this.apply(plan, 'here');
    else this.plan = plan;
    this.grid.requestUpdate();
  };

  render(): TemplateResult | typeof nothing {
    const { plan } = this;
    const { view } = this.grid;
    if (!plan || !view) return nothing;
    return html`<bp-paste-preview
      .plan=${plan}
      .growable=${view.growable}
      @paste-choice=${({ detail }: CustomEvent<PasteChoice>) => {
        this.plan = undefined;
        this.apply(plan, detail);
        this.grid.drawAndFocus();
      }}
    ></bp-paste-preview>`;
  }

  private apply(plan: PastePlan, choice: PasteChoice): void {
    const { book, view } = this.grid;
    if (!book || !view || choice === 'leave') return;
    const added = choice === 'with rows' ? plan.added : [];
    const cells = choice === 'with rows' ? plan.cells.withRows : plan.cells.here;
    const words = counted(cells, 'cell') || 'No cell';
    const came = { isDone: false };
    book.rows.putLong(`paste ${words}`, view.id, added, plan.entries, () => {
      came.isDone = true;
      const left = plan.rows.reduce((sum, { length }) => sum + length, 0) - cells;
      const rest = left === 0 ? '' : ` ${counted(left, 'cell')} had no place to go here.`;
      send(this.grid, 'say', `${words} pasted.${rest}`);
    });
    if (!came.isDone) send(this.grid, 'say', `Pasting ${words} …`);
  }
}
