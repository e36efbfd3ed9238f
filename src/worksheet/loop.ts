/** The names round a loop as people know them: a column and what is typed over it are one. */
export function loopNames(loop: readonly string[]): readonly string[] {
  // Where a set of rows closes the loop, its name is not among them.
  const closed = loop[0] === loop.at(-1) ? loop : [...loop, ...loop.slice(0, 1)];
  return closed
    .map((name) => name.replace(/ (as typed|by formula)$/, ''))
    .filter((name, at, all) => name !== all[at - 1]);
}

/** A loop in words. */
export function loopWords(names: readonly string[]): string {
  return names.length < 3 ? 'It needs itself.' : `These need each other: ${names.join(' → ')}.`;
}
