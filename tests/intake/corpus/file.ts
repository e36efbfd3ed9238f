/** One file as a crew might send it, with one defect, and what must come of it. */
export interface CorpusFile {
  /** The defect, ending the sentence “a file …”. */
  readonly is: string;
  readonly file: string | Uint8Array;
  /**
   * Every row, as `line: column=value; …` with all of its cells; lengths in millimeters. `?8-May` is asked about,
   * `!leaning` can't be read and is asked about too; `+Photo=7` is kept beside the row.
   */
  readonly rows?: string;
  /** Every ask: `line column`, `file column` for one about the whole file, `header column` for one about headers. */
  readonly asks?: readonly string[];
  /** Every line that is passed over, with words of the reason: `1 header`. */
  readonly over?: readonly string[];
  /** Words of a note on how the file was read. */
  readonly says?: string;
  /** The file is refused with words such as these. */
  readonly refused?: string;
}

// Files without probe readings or a rock test ask once for each; only the files that are about it list those asks.
export const SOUND = ['file probe_depth', 'file rock_test'];

/** Three posts without a defect: 1/4 in is 6.35 mm, 48 in 1219.2 mm, 8 ft 2438.4 mm, by definition of the inch. */
export const PLAIN = `Post,Sta ft,Gap in,Level in,To,Note
1,0,1/4,48,S,gate
2,8,3/8,48,S,
3,16,1 1/2,48,N,"bark, wet"`;

/** The rows of the plain file, at these lines. */
export function plain(first: number, second = first + 1, third = second + 1): string {
  return `${String(first)}: post=1; sta=0; gap=6.35; lvl=1219.2; to=S; note=gate
${String(second)}: post=2; sta=2438.4; gap=9.525; lvl=1219.2; to=S
${String(third)}: post=3; sta=4876.8; gap=38.1; lvl=1219.2; to=N; note=bark, wet`;
}

/** Short names of the columns, as the rows above write them. */
export const COLUMN_NAMES: Readonly<Record<string, string>> = {
  sta: 'station',
  gap: 'lean_gap',
  along: 'lean_gap_along',
  lvl: 'level_length',
  to: 'lean_toward',
  prb: 'probe_depth',
  rock: 'rock_test',
  snd: 'soundness',
  hgt: 'height',
  top: 'post_top',
  size: 'post_size',
  type: 'post_type',
  fw: 'footing_width',
  fd: 'footing_depth',
  tod: 'top_of_concrete_found',
  brk: 'break_at',
  want: 'depth_wanted',
  got: 'depth_reached',
  hw: 'hole_width',
  grv: 'gravel',
  shift: 'grade_shift',
  water: 'standing_water',
  stop: 'stopped_by',
};
