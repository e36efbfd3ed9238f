/**
 * A direction as everything else names it, so that `S`, `s`, `South` and `to the south` are one: compass points in
 * capitals, other sides in small letters; words that name none stay as they are.
 */
export function readDirection(text: string): string {
  const plain = text.trim().replace(/\s+/g, ' ');
  const bare = plain.replace(/^(?:(?:leans|leaning) )?(?:(?:towards?|to) )?(?:the )?(?=\S)/i, '');
  const word = bare.toLowerCase().replace(/\.$/, '');
  const point = POINTS.get(word.replace(/[ -]/g, ''));
  return point ?? (SIDE.test(word) ? word.replace('neighbour', 'neighbor') : plain);
}

const POINTS: ReadonlyMap<string, string> = new Map(
  (
    [
      ['N', 'n north nord norte'],
      ['E', 'e east ost osten este'],
      ['S', 's south süd sud sur'],
      ['W', 'w west westen oeste'],
      ['NE', 'ne northeast nordost noreste nordeste'],
      ['SE', 'se southeast südost suedost sureste sudeste'],
      ['SW', 'sw southwest südwest suedwest suroeste sudoeste'],
      ['NW', 'nw northwest nordwest noroeste'],
    ] as const
  ).flatMap(([point, words]) => words.split(' ').map((word) => [word, point] as const)),
);

const SIDE =
  /^(?:up ?hill|down ?hill|left|right|street|house|yard|road|field|neighbou?r)(?: side)?$/;
