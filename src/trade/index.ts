export * from './bags.ts';
export * from './bracing.ts';
export * from './broms.ts';
export * from './catalog.ts';
export * from './condition.ts';
export * from './cure.ts';
export * from './cut-rules.ts';
export * from './cutting.ts';
export * from './depth.ts';
export * from './end-wind.ts';
export * from './fasteners.ts';
export * from './frost.ts';
export * from './ground.ts';
export * from './hole.ts';
export * from './lumber.ts';
export * from './plumb.ts';
export * from './post.ts';
export * from './price.ts';
export * from './rule.ts';
export * from './slope.ts';
export * from './temperature-log.ts';
export {
  EXPOSURES,
  fenceWind,
  openAreaFactor,
  velocityPressure,
  wallForceCoefficient,
} from './wind.ts';
