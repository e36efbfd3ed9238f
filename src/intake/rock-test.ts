/** The outcome of a rock test in the words of the posts sheet; as it was typed where it is none of them. */
export function rockTest(cell: string): string {
  return OUTCOMES.find(([pattern]) => pattern.test(cell.trim()))?.[1] ?? cell;
}

/** Whether a cell says the outcome of a rock test and nothing else. */
export function isOutcome(cell: string): boolean {
  return OUTCOMES.some(([pattern]) => pattern.test(cell.trim()));
}

/** Whether a note on the wood says that the post is broken through. */
export function saysSnapped(soundness: string): boolean {
  return SNAPPED.test(soundness.trim());
}

const SNAPPED =
  /^(?:snapped|broken|broke|snapped off|broken off|gebrochen|abgebrochen|rot[oa]|partid[oa]|quebrad[oa])$/i;

const OUTCOMES: readonly (readonly [RegExp, string])[] = [
  [/^(?:firm|solid|tight|stiff|rigid|no movement|none|fest|firme|sólid[oa]|solid[oa])$/i, 'firm'],
  [/^(?:loose|wobbly|wobbles|floppy|lose|locker|floj[oa]|suelt[oa])$/i, 'loose'],
  [
    /^(?:moves?|moving|rocks|loose|turns|tilts|bewegt sich|se mueve)(?: with footing)? (?:at|bei|en|am) (?:the )?(?:grade|ground|boden|gelände|suelo|terreno)$/i,
    'moves at grade',
  ],
  [
    /^(?:moves?|moving|rocks|loose|turns|bewegt sich|se mueve) (?:in|inside|within|im|en) (?:the |el )?(?:collar|concrete|footing|kragen|collarín|concreto)$/i,
    'moves in collar',
  ],
  [SNAPPED, 'snapped'],
];
