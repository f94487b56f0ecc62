import { DegenerateError } from '@lodebook/reckon'
import type { Enu, VeinPoint } from '@lodebook/reckon'
import { angleBetween, attitudeOf as attitudeOfNormal, chooseSurface, convincing, normalOf, surfaceAt } from '@lodebook/reckon/structure'
import type { Attitude, FittedSurface, SurfaceChoice, SurfaceData } from '@lodebook/reckon/structure'
import { buildAnswer } from '../../build-answer.ts'
import { angle, azimuth, figure, length, plural } from '../../words.ts'
import type { CrewUnits } from '../../words.ts'
import type { VeinLie } from '../shapes.ts'
import type { VeinFound } from '../vein.ts'
import { attitudeOf, contactOf, dot } from '../vein-data.ts'
import { stationNear } from './on-stations.ts'

const names = { plane: 'one plane', bend: 'two planes that meet', step: 'a plane with a step', curve: 'a curve' } as const
const page = 'vein-surface'
const leastVariance = 1e-6 // m²: a millimetre, so that a place with no doubt of its own does not outweigh all others

/** Whether the vein is one plane, two, stepped or curved, by what best foretells places left out. */
export function lieOf(vein: VeinFound, units: CrewUnits): VeinLie {
  const data = surfaceData(vein)
  let choice: SurfaceChoice
  try {
    choice = chooseSurface(data)
  } catch (error) {
    if (!(error instanceof DegenerateError)) throw error
    const few = error.reason === 'too few'
    return {
      kind: 'not enough', trials: [],
      answer: {
        notEnough: true, cautions: [],
        sentence: few ? `${plural(data.points.length, 'place')} on the vein cannot tell a bend from a plane.` : 'The places on the vein lie on one line: they cannot tell a bend from a plane.',
        wanted: [{ kind: 'structure', why: few ? 'a dozen places with strike and dip, well apart, tell whether it bends' : 'a place up or down the dip from the others tells more than ten along the line' }],
      },
    }
  }
  const { chosen, trials, stretches, breakRange } = choice
  const { sentence, value, sides } = told(vein, chosen.surface, data, units)
  const others = trials.filter(t => t.kind !== 'plane')
  return {
    kind: chosen.kind,
    trials: trials.map(({ kind, rms, better }) => ({ kind: names[kind], rms, better })),
    ...(sides ? { sides } : {}),
    ...(chosen.surface.line ? { breakLine: drawn(chosen.surface, data) } : {}),
    ...(breakRange ? { breakRange } : {}),
    answer: buildAnswer({
      id: 'vein.lie', value, sentence,
      method: {
        name: 'one plane against two, a step and a curve, by places left out', page,
        working: [
          `${stretches} stretches left out in turn, each foretold from the rest; misfit of contacts: ${trials.map(t => `${names[t.kind]} ${t.rms.toFixed(3)} m`).join(', ')}`,
          ...others.map(t => `${names[t.kind]}: ${t.better >= 0 ? 'less' : 'more'} wrong than one plane by ${figure(Math.abs(t.better), 2)} standard errors; ${convincing} would be needed`),
        ],
      },
      sources: ['Cross-validation by blocks: Breiman, Friedman, Olshen and Stone 1984 (from memory)'], parts: [vein.at.strike, vein.at.dip],
    }),
  }
}

/** Places and readings beside the fitted plane. */
function surfaceData({ frame, plane, touched, read, north }: VeinFound): SurfaceData {
  return {
    points: touched.map((s) => {
      const { along, down, off } = frame.toVein(s.located.point)
      const { covariance } = contactOf(s)
      const own = covariance!.reduce((sum, row, i) => sum + row[i]! * frame.normal[i]! ** 2, 0) // contacts err on each axis by itself
      return { along, down, off, variance: own + plane.unevenness ** 2 + leastVariance }
    }),
    slopes: read.flatMap((s) => {
      const reading = attitudeOf(s.entry, north)!
      const n = normalOf(reading)
      const up = dot(n, frame.normal)
      if (Math.abs(up) < 0.5) return [] // read more than 60 degrees off: no slope of this surface
      const { along, down } = frame.toVein(s.located.point)
      const sigma = Math.hypot(reading.sigma ?? 3, plane.swing) * Math.PI / 180
      return [{ along, down, slopeAlong: -dot(n, frame.strike) / up, slopeDown: -dot(n, frame.dip) / up, variance: sigma ** 2 }]
    }),
  }
}

function attitudeAt({ frame }: VeinFound, surface: FittedSurface, along: number, down: number): Attitude {
  const { slopeAlong, slopeDown } = surfaceAt(surface, along, down)
  return attitudeOfNormal([0, 1, 2].map(k => frame.normal[k]! - slopeAlong * frame.strike[k]! - slopeDown * frame.dip[k]!) as unknown as Enu)
}

interface LieTold { readonly sentence: string, readonly value: string, readonly sides?: readonly [Attitude, Attitude] }

const lies = ({ strike, dip }: Attitude) => `strike ${azimuth(strike)}, dip ${angle(dip)}`

function told(vein: VeinFound, surface: FittedSurface, data: SurfaceData, units: CrewUnits): LieTold {
  const { line } = surface
  const middle = line && { along: line.at * Math.cos(line.turn * Math.PI / 180), down: line.at * Math.sin(line.turn * Math.PI / 180) }
  const near = middle && stationNear(vein.at.stations, middle.along, Math.abs(middle.down) > 1 ? middle.down : undefined)
  const where = near === undefined ? '' : ` about ${near}`
  if (surface.kind === 'plane') return { value: 'one plane', sentence: 'It runs as one plane: neither two planes, nor a step, nor a curve foretells places that were left out clearly better.' }
  if (surface.kind === 'step') {
    const high = surface.coefficients[3]!
    return {
      value: `step${where}`,
      sentence: `It steps by ${length(Math.abs(high), units, 2)}${where}, to the ${high > 0 ? 'hanging wall' : 'footwall'} side past it: a fault that nobody has read may cut it there. Look for gouge and grooves.`,
    }
  }
  const [low, far] = surface.kind === 'curve' ? ends(data) : [
    { along: middle!.along - 5 * Math.cos(line!.turn * Math.PI / 180), down: middle!.down - 5 * Math.sin(line!.turn * Math.PI / 180) },
    { along: middle!.along + 5 * Math.cos(line!.turn * Math.PI / 180), down: middle!.down + 5 * Math.sin(line!.turn * Math.PI / 180) },
  ]
  const sides = [attitudeAt(vein, surface, low.along, low.down), attitudeAt(vein, surface, far.along, far.down)] as const
  const apart = angle(angleBetween(...sides))
  return surface.kind === 'bend'
    ? { value: `two planes that meet${where}`, sides, sentence: `It is two planes that meet${where}: ${lies(sides[0])} before, ${lies(sides[1])} past it, ${apart} apart.` }
    : { value: 'curve', sides, sentence: `It curves: ${lies(sides[0])} at one end of what is seen, ${lies(sides[1])} at the other, ${apart} apart. One plane is then only a middle way.` }
}

function ends({ points }: SurfaceData): readonly [VeinPoint, VeinPoint] {
  const sorted = [...points].sort((a, b) => a.along - b.along)
  return [sorted[Math.floor(0.05 * sorted.length)]!, sorted[Math.ceil(0.95 * sorted.length) - 1]!]
}

/** The break across the part of the vein that was seen. */
function drawn({ line }: FittedSurface, { points }: SurfaceData): readonly [VeinPoint, VeinPoint] {
  const [c, s] = [Math.cos(line!.turn * Math.PI / 180), Math.sin(line!.turn * Math.PI / 180)]
  const t = points.map(p => p.down * c - p.along * s)
  const at = (v: number): VeinPoint => ({ along: line!.at * c - v * s, down: line!.at * s + v * c })
  return [at(Math.min(...t) - 2), at(Math.max(...t) + 2)]
}
