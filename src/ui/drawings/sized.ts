import { LitElement } from 'lit';
import { state } from 'lit/decorators.js';

/** An element that knows how wide it is, so that its drawing is laid out and not shrunk. */
export abstract class Sized extends LitElement {
  /** The width there is to draw in; 0 until it has been measured. [px] */
  @state() protected room = 0;

  private frame = 0;

  // Drawn in the next frame: a redraw inside the callback changes the height that is being reported.
  private readonly sizes = new ResizeObserver(([entry]) => {
    const width = Math.floor(entry?.contentRect.width ?? 0);
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => {
      if (width > 0) this.room = width;
    });
  });

  override connectedCallback(): void {
    super.connectedCallback();
    this.sizes.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sizes.disconnect();
    cancelAnimationFrame(this.frame);
  }
}
