import type { NetworkResult, NetworkShot } from './types.ts'

/** Readings agree worse than stated when a sum of squares this large had less than this chance. */
const unlikely = 0.01

/** What a person must know before relying on the result. */
export function cautionsOf(result: Omit<NetworkResult, 'cautions'>, shots: readonly NetworkShot[]): string[] {
  const level = shots.filter(s => s.inclination === undefined && s.backInclination === undefined && s.leaveOut !== 'shot').length
  const adrift = result.parts.filter(part => !part.located)
  const { test, suspects } = result
  const worse = test.p !== null && test.p < unlikely && test.varianceFactor !== null
  return [
    ...result.converged ? [] : ['some readings are too far off for least squares to settle: points are a straight-line fit about the readings that agree'],
    ...level === 0 ? [] : [`${level} ${level === 1 ? 'shot has' : 'shots have'} no inclination and ${level === 1 ? 'is' : 'are'} taken as level`],
    ...adrift.map(part => `no tie places ${listed(part.stations)}`),
    ...result.undetermined.length === 0 ? [] : [`the readings in use do not place ${listed(result.undetermined)}`],
    ...result.parts.filter(part => part.assumed.length > 0).map(part => `no tie gives ${part.assumed.join(' or ')} for ${listed(part.stations)}: the first tie's own value is held`),
    ...suspects.length === 0 ? [] : [`${suspects.length} ${suspects.length === 1 ? 'reading disagrees' : 'readings disagree'} with the rest and ${suspects.length === 1 ? 'is' : 'are'} still in use`],
    ...worse ? [`readings agree ${Math.sqrt(test.varianceFactor).toFixed(1)} times worse than stated: points are less certain than their ellipses say`] : [],
  ]
}

const listed = (names: readonly string[]): string => names.length <= 4 ? names.join(', ') : `${names.slice(0, 3).join(', ')} and ${names.length - 3} more`
