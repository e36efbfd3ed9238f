/** Why a cell has or has no value. Order matters: of several inputs, the highest state wins. */
export type State = typeof KNOWN | typeof BLANK | typeof UNREAD | typeof WRONG;

/** There is a value. */
export const KNOWN = 0;
/** Nothing has been entered; `given` may answer for it. */
export const BLANK = 1;
/** Something stands there that a person must settle first; nothing may answer for it. */
export const UNREAD = 2;
/** The rule has no value for these inputs, and says why. */
export const WRONG = 3;

/** The state that results from needing both. */
export function worse(a: State, b: State): State {
  return a > b ? a : b;
}
