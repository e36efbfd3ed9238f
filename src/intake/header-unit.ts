/** A header taken apart: its words, the unit of its numbers, and the level length they were taken over. */
export interface HeadedUnit {
  /** The header without its unit. */
  readonly words: string;
  readonly unit: string | undefined;
  /** Such as `1 ft` in `Lean (in/ft)`, or a bare `48` in `Gap over 48`. */
  readonly over: string | undefined;
}

/** Takes the unit out of a header: `Gap (in)`, `Gap in`, `gap_mm`, `Lean (in/ft)`, `Gap in 4 ft`. */
export function headedUnit(header: string): HeadedUnit {
  const text = header
    .replace(/[_\s\u00a0\u2009\u202f]+/g, ' ')
    .replace(/([\p{Ll}\p{N}])(\p{Lu})/gu, '$1 $2')
    .trim();
  for (const form of FORMS) {
    const found = form.exec(text);
    const groups = found?.groups;
    if (!found || !groups) continue;
    const unit = groups.unit === undefined ? undefined : unitWord(groups.unit);
    const lengthUnit = groups.length === undefined ? unit : unitWord(groups.length);
    const count = groups.count ?? (groups.length === undefined ? undefined : '1');
    const words =
      `${text.slice(0, found.index)} ${text.slice(found.index + found[0].length)}`.trim();
    if (!/\p{L}|#|№/u.test(words)) continue;
    const over = count === undefined ? undefined : `${count} ${lengthUnit ?? ''}`.trim();
    const inner = over === undefined && unit !== undefined ? headedUnit(words) : undefined;
    if (inner?.over !== undefined) return { ...inner, unit: inner.unit ?? unit };
    return { words: withoutLists(words), unit, over };
  }
  return { words: withoutLists(text), unit: undefined, over: undefined };
}

/** The unit that a word or sign stands for in a header; undefined where it is none. */
export function unitWord(text: string): string | undefined {
  const word = text
    .trim()
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[.\p{M}]/gu, '')
    .replace(/ß/g, 'ss');
  return WORDS.get(word);
}

const WORDS: ReadonlyMap<string, string> = new Map(
  [
    "in in inch inches ins \" ″ ” '' zoll pulgada pulgadas pulg",
    "ft ft foot feet ' ′ ’ fuss pie pies",
    'mm mm millimeter millimeters millimetre millimetres milimetro milimetros',
    'cm cm centimeter centimeters centimetre centimetres zentimeter centimetro centimetros',
    'm m meter meters metre metres metro metros',
    'yd yd yds yard yards',
    'deg deg degree degrees degs ° º grad grado grados',
    '% % percent prozent',
  ].flatMap((line) => {
    const [unit = '', ...words] = line.split(' ');
    return words.map((word) => [word, unit] as const);
  }),
);

const UNIT = [...WORDS.keys()]
  .concat('in.', 'ft.', 'ins.', 'fuß')
  .sort((a, b) => b.length - a.length)
  .map((word) => word.replaceAll('.', '\\.'))
  .join('|');
const COUNT = '\\d+(?:[.,]\\d+)?(?:[ -]\\d+/\\d+)?';
const FORMS: readonly RegExp[] = [
  // A slope: in/ft, mm per m, in per 4 ft.
  `[(\\[]?\\s*(?<!\\p{L})(?<unit>${UNIT})\\s*(?:/|per|pro|por)\\s*(?<count>${COUNT})?\\s*(?<length>${UNIT})\\s*[)\\]]?$`,
  // A gap over a stated level: (in over 48), over 4 ft, in 4'.
  `[(\\[]?\\s*(?:(?<=[\\s(\\[,])(?<unit>${UNIT})\\s+)?(?<=[\\s(\\[])(?:over|in|on|per|auf|en|sobre)\\s+(?:a\\s+)?(?<count>${COUNT})\\s*(?<length>${UNIT})?(?:\\s+level)?\\s*[)\\]]?$`,
  `\\s*[(\\[{]\\s*(?:in\\s+)?(?<unit>${UNIT})\\s*[)\\]}]`,
  `(?<=[\\s,/:-])(?:in\\s+)?(?<unit>${UNIT})$`,
  `\\s*(?<unit>["″”'′])$`,
].map((form) => new RegExp(form, 'iu'));

/** Without a list of possible values, as in `Rock test (firm/loose)`, or signs such as `(+/-)`. */
function withoutLists(words: string): string {
  return words.replace(/[([][^)\]]*\/[^)\]]*[)\]]/g, ' ').trim();
}
