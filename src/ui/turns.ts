import type { ReactiveControllerHost } from 'lit';

/** An element that is drawn again when its turn comes. */
export type InTurn = ReactiveControllerHost & Element;

/** Where frames stand still, as in a hidden window, the turns go on. [ms] */
const NO_FRAME = 100;

/** Elements that show the book; the one somebody works in is drawn before all others. */
const followers = new WeakSet<Element>();
const waiting = new Set<InTurn>();
const outOfSight = new WeakSet<Element>();
const sight = new IntersectionObserver(
  (entries) => {
    for (const { target, isIntersecting } of entries) {
      if (isIntersecting) outOfSight.delete(target);
      else outOfSight.add(target);
    }
  },
  { rootMargin: '50%' },
);

export function joinTurns(host: InTurn): void {
  followers.add(host);
  sight.observe(host);
}

export function leaveTurns(host: InTurn): void {
  followers.delete(host);
  waiting.delete(host);
  sight.unobserve(host);
}

/** Draws at once what has the focus in it, or everything in sight where nothing has; the rest in turn. */
export function drawSoon(host: InTurn): void {
  const isNext = isWorkedIn() ? host.matches(':focus-within') : !outOfSight.has(host);
  if (isNext) host.requestUpdate();
  else drawInTurn(host);
}

/** Draws an element after the next frame, one a task and those in sight first: no key has to wait for all of them. */
export function drawInTurn(host: InTurn): void {
  if (waiting.size === 0) afterFrame(drawNext);
  waiting.add(host);
}

function drawNext(): void {
  const host = [...waiting].find((one) => !outOfSight.has(one)) ?? [...waiting][0];
  if (!host) return;
  waiting.delete(host);
  host.requestUpdate();
  if (waiting.size > 0) setTimeout(drawNext);
}

/** Whether the focus is in an element that shows the book. */
function isWorkedIn(): boolean {
  for (let at = document.activeElement; at; at = at.shadowRoot?.activeElement ?? null)
    if (followers.has(at)) return true;
  return false;
}

function afterFrame(deed: () => void): void {
  let isDone = false;
  const once = () => {
    if (isDone) return;
    isDone = true;
    clearTimeout(late);
    deed();
  };
  const late = setTimeout(once, NO_FRAME);
  requestAnimationFrame(() => setTimeout(once));
}
