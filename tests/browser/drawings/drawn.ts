import axe from 'axe-core';
import type { LitElement } from 'lit';

type Drawable =
  | 'bp-elevation'
  | 'bp-hole-section'
  | 'bp-bags-picture'
  | 'bp-curve'
  | 'bp-cutting-plan'
  | 'bp-crew-page'
  | 'bp-quote-page'
  | 'bp-return-page'
  | 'bp-supplier-page'
  | 'bp-calculation-page';

/** Puts an element on the page and waits until it is drawn. */
export async function drawn<Tag extends Drawable>(
  tag: Tag,
  properties: Partial<HTMLElementTagNameMap[Tag]>,
  width = 900,
): Promise<HTMLElementTagNameMap[Tag]> {
  const element = Object.assign(document.createElement(tag), properties);
  element.style.width = `${String(width)}px`;
  document.body.append(element);
  await settled(element);
  return element;
}

/** Waits until an element has been measured and drawn at its own width. */
export async function settled(element: LitElement): Promise<void> {
  await element.updateComplete;
  await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  await element.updateComplete;
}

/** What an accessibility check finds wrong in an element, in words. */
export async function faults(element: Element): Promise<readonly string[]> {
  const { violations } = await axe.run(element);
  return violations.map(({ id, help }) => `${id}: ${help}`);
}

/** The texts that match a selector inside an element, spaces evened. */
export function texts(element: Element, selector: string): readonly string[] {
  return [...(element.shadowRoot?.querySelectorAll(selector) ?? [])].map((found) =>
    found.textContent.replace(/\s+/gu, ' ').trim(),
  );
}

/** Every attribute inside an element that carries no number where one is meant. */
export function brokenNumbers(element: Element): readonly string[] {
  const found: string[] = [];
  for (const part of element.shadowRoot?.querySelectorAll('svg, svg *') ?? []) {
    for (const { name, value } of part.attributes) {
      if (/NaN|Infinity|undefined/u.test(value)) found.push(`${part.tagName} ${name}="${value}"`);
    }
  }
  return found;
}
