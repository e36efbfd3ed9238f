/** What the words of a header can mean: a column of the posts sheet, or `footing`, a width and a depth in one cell. */
export interface Meaning {
  readonly column: string;
  readonly words: readonly string[];
}

/** Every meaning the importer knows, in plain words. */
export const MEANINGS: readonly Meaning[] = meanings({
  post: 'post number|post|number|hole number|hole|post hole number|post id|mark',
  station: 'station|station start|station line|distance start|running distance',
  post_type: 'post type|type',
  post_size: 'post size|size|nominal size|post nominal size|post nominal',
  height: 'fence height|height',
  post_top:
    'height above grade|post height above grade|post top above grade|top above grade|post above grade|above grade',
  lean_gap:
    'lean gap|lean|gap|lean gap across|gap across|lean across|gap out|lean gap out|lean distance|lean out|out|lean off',
  lean_gap_along: 'lean gap along|gap along|lean along',
  level_length:
    'level length|level|over|level over|lean over|lean length|gap over|over level|over length',
  lean_toward: 'lean toward|toward|which toward|lean which toward|lean gap toward|post lean toward',
  probe_depth:
    'probe depth|probe|rot depth|rot|soft depth|probe grade|probe depth grade|rot grade|rot depth grade|deepest probe',
  rock_test: 'rock test|rock test result|post rock test',
  soundness: 'soundness|soundness grade|post soundness|wood soundness',
  collar: 'collar|collar soundness|collar crack|concrete collar',
  footing: 'footing|footing size|concrete footing',
  footing_width:
    'footing dia|footing width|footing dia width|concrete dia|concrete width|concrete footing dia',
  footing_depth: 'footing depth|concrete depth|concrete footing depth',
  break_at: 'break|break depth|break height|break point|break below grade|break grade|post break',
  depth_reached:
    'depth reached|reached|hole depth reached|reached hole depth|dug|dug depth|depth dug|dug toward|depth dug toward',
  stopped_by: 'stop|hole stop|what stop',
  top_above_line: 'top above line|top height line|top line|heave|height above line|post heave',
  grade_shift: 'grade shift|shift|post shift|shift line grade',
  drop: 'drop|drop last post|drop last|drop post|drop bay|grade drop|grade drop last post',
  standing_water:
    'standing water|water|water depth|water hole|standing water depth|water standing|standing water hole',
  note: 'note|post note|site note|other note',
  top_of_concrete_found:
    'top concrete|concrete top|top concrete grade|top footing|concrete top grade|top concrete below grade|concrete below grade|concrete above grade',
  depth_wanted:
    'depth wanted|wanted|hole depth wanted|embedment|embedment wanted|wanted embedment|embedment depth',
  gravel: 'gravel|gravel depth|gravel base|gravel bottom',
  hole_width: 'hole dia|hole width|dia width|hole dia width|hole size',
  tree_diameter: 'tree dia|tree size|tree width|tree',
  tree_distance: 'tree distance|distance toward tree|tree off|tree out|distance off tree',
});

/** Words that could stand for two columns; nobody but the person who wrote them knows which. */
export const OPEN_MEANINGS: readonly (Meaning & { readonly why: string })[] = [
  {
    column: 'height',
    words: ['post', 'height'],
    why: 'it could be the fence’s height at the post, or the post’s top above grade',
  },
  {
    column: 'depth_reached',
    words: ['hole', 'depth'],
    why: 'it could be the depth wanted or the depth reached',
  },
  {
    column: 'depth_reached',
    words: ['depth'],
    why: 'it could be a hole’s depth, a footing’s or a probe’s',
  },
];

/** Words that mean a column only where its values bear it out. */
export const WEAK_MEANINGS: readonly (Meaning & { readonly values: ValuesShow })[] = [
  ...weak('station', 'rising', 'distance|position|pos|location|loc|length'),
  ...weak('level_length', 'level', 'length|lean level|used|span|tool|on'),
  ...weak(
    'rock_test',
    'rock',
    'rock|test|loose|wobble|wobbly|firm|moves|move|loose firm|push|footing test',
  ),
  ...weak(
    'lean_toward',
    'directions',
    'lean|side|face|where|which side|lean which side|leaning side|lean side|compass',
  ),
  ...weak('soundness', 'soundness', 'grade|post grade|rot|state|wood|post'),
  ...weak('hole_width', 'numbers', 'dia|width'),
  ...weak('post', 'posts', 'item|position|pos|line|location|loc|tag|label|name|p|n'),
  ...weak('post_size', 'sizes', 'post|nominal|material|wood|lumber'),
  ...weak(
    'lean_gap',
    'small',
    'offset|off|how far off|how far out|far off|far out|how much|top offset level|deviation|dev|delta|amount lean',
  ),
];

/** What the values of a column look like. */
export type ValuesShow =
  | 'rising'
  | 'level'
  | 'rock'
  | 'outcomes'
  | 'directions'
  | 'soundness'
  | 'numbers'
  | 'posts'
  | 'sizes'
  | 'small';

function meanings(table: Readonly<Record<string, string>>): Meaning[] {
  return Object.entries(table).flatMap(([column, phrases]) =>
    phrases.split('|').map((phrase) => ({ column, words: phrase.split(' ') })),
  );
}

function weak(
  column: string,
  values: ValuesShow,
  phrases: string,
): (Meaning & { readonly values: ValuesShow })[] {
  return phrases.split('|').map((phrase) => ({ column, values, words: phrase.split(' ') }));
}
