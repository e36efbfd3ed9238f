/** How far one sum is from another, with its sign: `+ 59.40`; blank where it is not, or can’t be known. */
export function moneyStep(from: number | undefined, to: number | undefined): string {
  return from === undefined || to === undefined ? '' : stepWords(to - from);
}

/** A difference in money with its sign; blank where it is none. */
export function stepWords(step: number): string {
  const cents = Math.round(step * 100);
  if (cents === 0) return '';
  return `${cents < 0 ? '−' : '+'} ${(Math.abs(cents) / 100).toFixed(2)}`;
}
