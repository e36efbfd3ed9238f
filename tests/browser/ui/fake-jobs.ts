import { DURATION, LENGTH, TEXT, choiceOf, quantity } from '../../../src/units/index.ts';
import { FakeBook, fakeColumn } from './fake-book.ts';

/** The columns and rows of a run that leans by a tree, with one reading to be asked about. */
export function treeRun(): FakeBook {
  const length = { kind: quantity(LENGTH), unit: 'in' };
  const worked = { entered: false, formula: 'atan(lean_gap / level_length)' };
  const book = new FakeBook([
    {
      id: 'job',
      title: 'Job',
      question: 'What holds for the whole fence?',
      rowWord: 'job',
      columns: [
        fakeColumn('units', 'Units', {
          kind: choiceOf(['inch', 'metric']),
          choices: ['inch', 'metric'],
          group: 'The fence',
        }),
        fakeColumn('fence_height', 'Fence height', {
          kind: quantity(LENGTH),
          unit: 'ft',
          group: 'The fence',
          help: 'Top of the pickets above the ground.',
          source: 'common practice',
          standing: 'common practice',
        }),
        fakeColumn('ground_gap', 'Gap under the fence', {
          ...length,
          group: 'The fence',
          standing: 'common practice',
        }),
        fakeColumn('post_spacing', 'Post spacing', {
          kind: quantity(LENGTH),
          unit: 'ft',
          group: 'The fence',
          standing: 'common practice',
        }),
        fakeColumn('post_size', 'Post size', { group: 'The fence' }),
        fakeColumn('soil', 'Soil', {
          kind: choiceOf(['sand', 'clay', 'gravel']),
          choices: ['sand', 'clay', 'gravel'],
          group: 'The ground',
          standing: 'code',
          source: 'IBC Table 1806.2',
        }),
        fakeColumn('frost_depth', 'Frost depth', { ...length, group: 'The ground' }),
        fakeColumn('depth_rule', 'Depth rule', {
          kind: choiceOf(['greatest', 'local minimum', 'by height']),
          choices: ['greatest', 'local minimum', 'by height'],
          group: 'The ground',
        }),
        fakeColumn('hole_width', 'Hole width', {
          ...length,
          group: 'The holes',
          standing: 'standard',
          source: 'ASTM F567',
        }),
        fakeColumn('crown_height', 'Crown height', {
          ...length,
          group: 'The holes',
          standing: 'common practice',
        }),
        fakeColumn('mix', 'Mix', { group: 'The holes' }),
        fakeColumn('rehang_strength', 'Strength to rehang', { group: 'The holes' }),
      ],
      rows: [
        {
          units: 'inch',
          fence_height: '6',
          ground_gap: '2',
          post_spacing: '8',
          post_size: '4x4',
          hole_width: '12',
          crown_height: '2 1/4',
          depth_rule: 'greatest',
          mix: '80 lb',
        },
      ],
    },
    {
      id: 'posts',
      title: 'Posts',
      question: 'How far is each post out, and what does it need?',
      rowWord: 'post',
      growable: true,
      columns: [
        fakeColumn('post', 'Post'),
        fakeColumn('station', 'Station', {
          kind: quantity(LENGTH),
          unit: 'ft',
          hint: 'from post 1',
        }),
        fakeColumn('lean_gap', 'Lean gap', {
          ...length,
          hint: 'level held plumb',
          help: 'Gap between the level and the post, at the end that is away.',
        }),
        fakeColumn('level_length', 'Over', length),
        fakeColumn('lean_toward', 'Toward'),
        fakeColumn('probe_depth', 'Probe', { ...length, hint: 'at grade' }),
        fakeColumn('rock_test', 'Rock test', {
          kind: choiceOf(['firm', 'loose', 'moves at grade', 'moves in collar', 'snapped']),
          choices: ['firm', 'loose', 'moves at grade', 'moves in collar', 'snapped'],
        }),
        fakeColumn('collar', 'Collar', { show: 'when filled' }),
        fakeColumn('lean_angle', 'Lean', {
          ...worked,
          kind: quantity(LENGTH),
          unit: 'deg',
          help: 'How far the post is from plumb.',
          source: 'Geometry of the level and the tape',
          standing: 'arithmetic',
        }),
        fakeColumn('top_offset', 'Out at top', { ...worked, ...length, entered: false }),
        fakeColumn('cause', 'Likely cause', { ...worked, kind: TEXT }),
        fakeColumn('remedy', 'Remedy', {
          kind: choiceOf(['leave', 're-plumb', 'mend', 'replace']),
          choices: ['leave', 're-plumb', 'mend', 'replace'],
          formula: 'probe_depth >= probe_replace ? "replace" : "leave"',
        }),
        fakeColumn('note', 'Note', { show: 'when filled' }),
        fakeColumn('bow', 'Bow', { ...length, show: 'more' }),
      ],
      rows: [
        ['1', '0', '0', '48', '', '1/16', 'firm', '0.00', '0', '', '=leave'],
        ['2', '8', '3/8', '48', 'S', '1/8', 'firm', '0.45', '9/16', 'footing turning', '=re-plumb'],
        [
          '3',
          '16',
          '1 7/8',
          '48',
          'S',
          '1/8',
          'moves at grade',
          '2.24',
          '2 13/16',
          'tree, 14 in trunk',
          '=replace',
        ],
        [
          '4',
          '24',
          '2 1/4',
          '48',
          'S',
          '1/4',
          'moves at grade',
          '2.68',
          '3 3/8',
          'tree, 14 in trunk',
          'replace|mend',
        ],
        [
          '5',
          '32',
          '5/8',
          '48',
          'S',
          '1/8',
          'firm',
          '0.75',
          '15/16',
          'footing turning',
          '=re-plumb',
        ],
        [
          '6',
          '40',
          '?8-May',
          '48',
          'S',
          '1/16',
          'firm',
          '~lean gap',
          '~lean gap',
          '~lean gap',
          '~lean gap',
        ],
        ['7', '48', '0', '48', '', '0', 'firm', '0.00', '0', '', '=leave'],
      ].map((cells) =>
        Object.fromEntries(
          [
            'post',
            'station',
            'lean_gap',
            'level_length',
            'lean_toward',
            'probe_depth',
            'rock_test',
            'lean_angle',
            'top_offset',
            'cause',
            'remedy',
          ].map((id, place) => [id, cells[place] ?? '']),
        ),
      ),
    },
    {
      id: 'holes',
      title: 'Holes',
      question: 'How deep, how wide, how much concrete?',
      rowWord: 'post',
      columns: [
        fakeColumn('post', 'Post', { entered: false }),
        fakeColumn('frost', 'Frost', { ...length, ...worked, hint: '+ 6 in', kind: length.kind }),
        fakeColumn('by_height', 'By height', { ...length, ...worked }),
        fakeColumn('local', 'Local least', length),
        fakeColumn('governing_rule', 'Governs', { ...worked }),
        fakeColumn('depth', 'Hole', { ...length, ...worked, hint: 'with gravel' }),
        fakeColumn('concrete', 'Concrete', { kind: quantity(LENGTH), ...worked, unit: 'ft³' }),
        fakeColumn('bags', 'Bags', { kind: quantity(LENGTH), ...worked, hint: '80 lb' }),
      ],
      rows: [
        {
          post: '3',
          frost: '~frost depth',
          by_height: '30',
          local: '30',
          governing_rule: 'by height',
          depth: '36',
          concrete: '1.80',
          bags: '4',
        },
        {
          post: '4',
          frost: '~frost depth',
          by_height: '30',
          local: '30',
          governing_rule: 'by height',
          depth: '18',
          concrete: '1.06',
          bags: '2',
        },
      ],
      totals: new Map([
        ['concrete', '2.86 ft³'],
        ['bags', '6'],
      ]),
    },
    {
      id: 'cure',
      title: 'Cure',
      question: 'When may the panels go back up?',
      rowWord: 'reading',
      growable: true,
      columns: [fakeColumn('hours', 'Hours', { kind: quantity(DURATION), unit: 'h' })],
      rows: [],
    },
  ]);
  book.stopList = [
    {
      sheet: 'holes',
      row: 'r2',
      rowName: 'Hole 4',
      rule: 'short_hole',
      level: 'stop',
      message:
        'Rock at 18 in; 30 in wanted. An 18 in wide hole this deep holds 39% of what was wanted; equal strength would need 46 in of width.',
      source: 'IBC 1807.3.2.1',
    },
    {
      sheet: 'holes',
      row: undefined,
      rowName: '',
      rule: 'unchecked',
      level: 'caution',
      message: 'Frost and wind are not checked: their inputs are blank. Ask the local office.',
      source: 'common practice',
    },
  ];
  return book;
}

/** A long list of posts, for scrolling. */
export function longRun(count: number): FakeBook {
  return new FakeBook([
    {
      id: 'posts',
      title: 'Posts',
      question: 'How far is each post out?',
      rowWord: 'post',
      columns: [
        fakeColumn('post', 'Post'),
        fakeColumn('lean_gap', 'Lean gap', { kind: quantity(LENGTH), unit: 'in' }),
        ...Array.from({ length: 10 }, (_, place) =>
          fakeColumn(`reading_${String(place)}`, `Reading ${String(place + 1)}`),
        ),
      ],
      rows: Array.from({ length: count }, (_, place) => ({
        post: String(place + 1),
        lean_gap: '3/8',
        reading_0: 'firm',
      })),
    },
  ]);
}
