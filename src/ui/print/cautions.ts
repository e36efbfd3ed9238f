/** A caution that belongs on paper beside the work it guards, with the authority behind it. */
export interface Caution {
  readonly id: 'services' | 'lifting' | 'cement' | 'silica' | 'props' | 'code';
  readonly words: string;
  readonly authority: string;
}

/** Services, before any hole. */
export const SERVICES: Caution = {
  id: 'services',
  words: 'Have buried services marked before any hole is dug, and dig by hand near the marks.',
  authority: 'OSHA, 29 CFR 1926.651(b)',
};

/** Lifting, beside bags and old footings. */
export const LIFTING: Caution = {
  id: 'lifting',
  words:
    '51\u00a0lb is the best-case lift for one person: an 80\u00a0lb bag or a dug-out footing is over it. Share the lift, or use a cart or a lever.',
  authority: 'NIOSH 94-110',
};

/** Wet cement, beside concrete. */
export const CEMENT: Caution = {
  id: 'cement',
  words:
    'Wet cement is caustic, pH\u00a012 to 13, and burns before it hurts: gloves, boots, kneepads.',
  authority: 'OSHA 3351',
};

/** Dust, where an old footing is cut or broken. */
export const SILICA: Caution = {
  id: 'silica',
  words:
    'Cutting or breaking concrete: water at the point, or a shroud and vacuum. The limit for silica is 50 µg/m³ over 8\u00a0h.',
  authority: 'OSHA FS-3629; 29 CFR 1926.1153, Table 1',
};

/** A fence that only props hold. */
export const PROPS: Caution = {
  id: 'props',
  words: 'A propped fence can fall: keep that side clear, and nobody under a jack.',
  authority: 'common practice, no source',
};

/** Who decides. */
export const CODE: Caution = {
  id: 'code',
  words:
    'These figures are for estimating. Local code, the permit office and a licensed engineer decide.',
  authority: '',
};

/** The cautions that stand on every calculation page, in the order of the work. */
export const ALL_CAUTIONS: readonly Caution[] = [SERVICES, PROPS, SILICA, LIFTING, CEMENT, CODE];
