import type { Check } from './checks.ts'
import type { Finding } from './snoop.ts'
import type { NetworkShot, Suspect, Tie } from './types.ts'
import { signedAngle } from '../angles.ts'

/** What a reading is called when a person is told about it. */
const called = {
  distance: 'distance', azimuth: 'foresight azimuth', backAzimuth: 'backsight azimuth', inclination: 'foresight inclination', backInclination: 'backsight inclination',
  east: 'east', north: 'north', up: 'up',
} as const

const partner = { azimuth: 'backAzimuth', backAzimuth: 'azimuth', inclination: 'backInclination', backInclination: 'inclination' } as const

/** Puts findings into words. */
export function nameSuspects(findings: readonly Finding[], checks: readonly Check[], shots: readonly NetworkShot[], ties: readonly Tie[]): Suspect[] {
  return findings.map(({ check: at, w, blunder, alternatives }): Suspect => {
    const check = checks[at]!
    return {
      ...nameOf(check), w, blunder,
      alternatives: alternatives.map(({ check: other, w: otherW }) => ({ ...nameOf(checks[other]!), w: otherW })),
      says: say(check, blunder, alternatives.map(a => checks[a.check]!), shots, ties),
    }
  })
}

const nameOf = ({ shot, tie, reading }: Check): Pick<Suspect, 'shot' | 'tie' | 'reading'> =>
  ({ ...shot !== undefined && { shot }, ...tie !== undefined && { tie }, reading })

function say(check: Check, blunder: number, alternatives: readonly Check[], shots: readonly NetworkShot[], ties: readonly Tie[]): string {
  const hint = guess(check, blunder, shots)
  const off = `${amount(check, blunder)}${hint === undefined ? '' : ` (${hint})`}`
  const others = alternatives.map(other => describe(other, shots, ties))
  const more = others.length > 3 ? `, or ${others.length - 3} more` : ''
  const unsure = others.length === 0 ? '' : `; it could as well be ${others.slice(0, 3).join(', or ')}${more}`
  const pair = pairDifference(check, shots)
  if (pair === undefined) return `${describe(check, shots, ties)} is ${off}${unsure}`
  const { from, to } = shots[check.shot!]!
  const disagree = `foresight and backsight ${check.reading.toLowerCase().replace('back', '')} of ${from}-${to} disagree by ${angle(pair)}`
  const [only] = alternatives
  if (only && alternatives.length === 1 && only.shot === check.shot) return `${disagree}; nothing tells which of the two is off`
  return `${disagree}; ${only ? 'perhaps' : 'most likely'} the ${check.reading.startsWith('back') ? 'backsight' : 'foresight'} is ${off}${unsure}`
}

const describe = ({ shot, tie, reading }: Check, shots: readonly NetworkShot[], ties: readonly Tie[]): string =>
  shot === undefined ? `${called[reading]} of the tie at ${ties[tie!]!.station}` : `${called[reading]} ${shots[shot]!.from}-${shots[shot]!.to}`

/** The disagreement of foresight and backsight, when both are in use and it is most of the trouble. */
function pairDifference({ shot, reading, sigma }: Check, shots: readonly NetworkShot[]): number | undefined {
  if (shot === undefined || !(reading in partner)) return undefined
  const { azimuth, backAzimuth, inclination, backInclination, leaveOut } = shots[shot]!
  if (Array.isArray(leaveOut) && leaveOut.includes(partner[reading as keyof typeof partner])) return undefined
  const difference = reading === 'azimuth' || reading === 'backAzimuth'
    ? azimuth === undefined || backAzimuth === undefined ? undefined : signedAngle(azimuth - backAzimuth + 180)
    : inclination === undefined || backInclination === undefined ? undefined : inclination + backInclination
  return difference === undefined || Math.abs(difference) < 3 * Math.SQRT2 * sigma ? undefined : Math.abs(difference)
}

/** A common slip that would explain an error of this size, if one does within three standard deviations. */
function guess({ shot, reading, sigma }: Check, blunder: number, shots: readonly NetworkShot[]): string | undefined {
  if (shot === undefined) return undefined
  const near = (slip: number, within = 3 * sigma) => Math.abs(Math.abs(blunder) - slip) <= within
  if (reading === 'azimuth' || reading === 'backAzimuth') return near(180, Math.max(3 * sigma, 3)) ? 'the other end of the needle' : undefined
  if (reading === 'distance') return undefined
  const read = reading === 'inclination' ? shots[shot]!.inclination : shots[shot]!.backInclination
  return read !== undefined && Math.abs(read) > 3 * sigma && Math.abs(blunder - 2 * read) <= 3 * sigma ? 'its sign' : undefined
}

function amount({ reading }: Check, blunder: number): string {
  const size = Math.abs(blunder)
  if (reading === 'distance') return `${size.toFixed(2)} too ${blunder > 0 ? 'long' : 'short'}`
  return reading === 'east' || reading === 'north' || reading === 'up' ? `${size.toFixed(2)} off` : `${angle(size)} off`
}

const angle = (size: number): string => `${size.toFixed(1)}°`
