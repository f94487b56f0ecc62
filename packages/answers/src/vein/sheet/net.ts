import type { Entry } from '@lodebook/book'
import { DegenerateError } from '@lodebook/reckon'
import { attitudeOf as attitudeOfNormal, axesOf, equalArea, greatCircle, lineOf, meanPole, orientationTensor, planeIntersection, poleDensity, poleOf, smallCircle, vectorOf } from '@lodebook/reckon/structure'
import type { Attitude, FittedVein, Line } from '@lodebook/reckon/structure'
import { buildAnswer } from '../../build-answer.ts'
import { textOf, valueOf } from '../../read.ts'
import type { North } from '../../survey/north.ts'
import { angle, azimuth, figure, plural } from '../../words.ts'
import type { Net, NetGroup, NetMean, NetReading } from '../shapes.ts'
import { attitudeOf } from '../vein-data.ts'

const order = ['vein', 'fault', 'striae', 'contact', 'stringer', 'joint', 'foliation', 'piercing point']
const many: Readonly<Record<string, string>> = { vein: 'vein', fault: 'fault', striae: 'grooves', contact: 'contact', stringer: 'stringers', joint: 'joints', foliation: 'foliation' }
const densityFrom = 6
/** Share of the first eigenvalue below which readings lie in more than one set, or all round: one mean would lie. */
const oneSet = 0.75

interface NetInput {
  readonly structures: readonly Entry[]
  readonly north: North
  readonly vein: { readonly name: string, readonly plane: FittedVein }
  readonly fault: { readonly name: string, readonly plane: FittedVein } | undefined
}

/** Every reading of a plane or a line on the net, by feature and name, with means, cones and densities. */
export function netOf({ structures, north, vein, fault }: NetInput): Net {
  const groups = new Map<string, Group>()
  for (const entry of structures) {
    const feature = textOf(entry, 'feature')!
    const reading = readingOf(entry, north, fault?.plane)
    if (!reading) continue
    const name = feature === 'joint' || feature === 'foliation' ? '' : textOf(entry, 'name') ?? ''
    const key = `${feature} ${name}`.trim()
    const group = groups.get(key) ?? { feature, name, readings: [] }
    group.readings.push(reading)
    groups.set(key, group)
  }
  const cut = fault && meeting(vein, fault)
  return {
    groups: [...groups].map(([key, g]) => groupOf(key, g))
      .sort((a, b) => order.indexOf(a.feature) - order.indexOf(b.feature) || b.readings.length - a.readings.length),
    planes: [{ ...vein, is: 'vein' as const }, ...(fault ? [{ ...fault, is: 'fault' as const }] : [])].map(({ name, is, plane: { strike, dip } }) =>
      ({ name, is, attitude: { strike, dip }, circle: greatCircle({ strike, dip }), pole: equalArea(poleOf({ strike, dip })) })),
    cutoff: cut,
  }
}

/** What one entry says of a direction: a line where it has one, else the pole of its plane. */
function readingOf(entry: Entry, north: North, fault: Attitude | undefined): NetReading | undefined {
  const attitude = attitudeOf(entry, north)
  const title = [textOf(entry, 'feature'), textOf(entry, 'name')].filter(Boolean).join(', ')
  const line = lineRead(entry, north, attitude ?? fault)
  if (line) return { entry: entry.id, is: 'line', xy: equalArea(line), attitude, line, says: `${title}: line to ${azimuth(line.trend)}, plunging ${angle(line.plunge)}` }
  if (!attitude) return undefined
  const pole = poleOf(attitude)
  return { entry: entry.id, is: 'pole', xy: equalArea(pole), attitude, line: pole, says: `${title}: strike ${azimuth(attitude.strike)}, dip ${angle(attitude.dip)}` }
}

function lineRead(entry: Entry, north: North, plane: Attitude | undefined): Line | undefined {
  const [trend, plunge, rake] = [valueOf(entry, 'trend'), valueOf(entry, 'plunge'), valueOf(entry, 'rake')]
  if (trend !== undefined && plunge !== undefined) return { trend: north.toGrid(trend, textOf(entry, 'north') ?? 'magnetic', textOf(entry, 'taken')), plunge }
  if (rake === undefined || !plane) return undefined
  const { strike, dip } = axesOf(plane)
  const turn = rake * Math.PI / 180
  return lineOf([0, 1, 2].map(k => Math.cos(turn) * strike[k]! + Math.sin(turn) * dip[k]!) as unknown as [number, number, number])
}

interface Group { readonly feature: string, readonly name: string, readonly readings: NetReading[] }

function groupOf(key: string, { feature, name, readings }: Group): NetGroup {
  const lines = readings.map(r => r.line)
  const { mean, noMean } = meanOf(key, feature, readings)
  return {
    key, feature, label: [many[feature] ?? feature, name].filter(Boolean).join(', '), readings, mean, noMean,
    density: lines.length >= densityFrom ? poleDensity(lines) : undefined,
  }
}

function meanOf(key: string, feature: string, readings: readonly NetReading[]): { readonly mean: NetMean | undefined, readonly noMean: string | undefined } {
  if (readings.length < 2) return { mean: undefined, noMean: 'one reading has no mean' }
  const lines = readings.map(r => r.line)
  const { eigenvalues } = orientationTensor(lines)
  if (eigenvalues[0] < oneSet) return { mean: undefined, noMean: 'the readings lie in more than one set: one mean would say nothing' }
  try {
    const found = meanPole(lines)
    const poles = readings.every(r => r.is === 'pole')
    const plane = poles ? attitudeOfNormal(vectorOf(found).map(v => -v) as unknown as [number, number, number]) : undefined
    const says = plane ? `strike ${azimuth(plane.strike)}, dip ${angle(plane.dip)}` : `line to ${azimuth(found.trend)}, plunging ${angle(found.plunge)}`
    const cone = found.alpha95 > 0 && found.alpha95 < 90
    return {
      noMean: undefined,
      mean: {
        line: { trend: found.trend, plunge: found.plunge }, xy: equalArea(found),
        circle: plane ? greatCircle(plane) : [], cone: cone ? smallCircle(found, found.alpha95) : [],
        answer: buildAnswer({
          id: `vein.net.${key}`, value: found.alpha95, unit: '°',
          sentence: `${(many[feature] ?? feature).replace(/^./, c => c.toUpperCase())}: mean ${says}, good to a cone of ${angle(found.alpha95)} (95 in 100), from ${plural(readings.length, 'reading')}.`,
          method: {
            name: 'mean of poles with Fisher\'s cone', page: 'directions',
            working: [
              `R ${found.resultant.toFixed(3)} of ${readings.length}, kappa ${figure(found.kappa, 3)}, alpha95 ${found.alpha95.toFixed(1)}°`,
              `orientation tensor ${eigenvalues.map(v => v.toFixed(3)).join(', ')}: near 1, 0, 0 a cluster; near ½, ½, 0 a girdle`,
            ],
          },
          sources: ['Fisher, Proc. R. Soc. A 217, 1953, 295; checked against Fisher, Lewis and Embleton, set B2', 'Woodcock 1977 (from memory)'],
          from: readings.map(r => r.entry),
          cautions: readings.length < 5 ? ['Few readings: the cone is then itself hardly known.'] : [],
        }),
      },
    }
  } catch (error) {
    if (error instanceof DegenerateError) return { mean: undefined, noMean: 'the readings cancel out' }
    throw error
  }
}

/** The line in which vein and fault meet; undefined when they run parallel. */
function meeting(vein: NetInput['vein'], fault: { readonly name: string, readonly plane: FittedVein }): Net['cutoff'] {
  try {
    const { trend, plunge, rakeA, rakeB } = planeIntersection(vein.plane, fault.plane)
    const line = { trend, plunge }
    return {
      line, xy: equalArea(line),
      answer: buildAnswer({
        id: 'vein.cutoff', value: plunge, unit: '°',
        sentence: `${vein.name} is cut off along a line that runs down to ${azimuth(trend)}, plunging ${angle(plunge)}: it rakes ${angle(rakeA)} in the vein and ${angle(rakeB)} in ${fault.name}. Movement along that line parts nothing.`,
        method: { name: 'where two planes meet', page: 'planes', working: [`vein ${vein.plane.strike.toFixed(1)}°/${vein.plane.dip.toFixed(1)}°, fault ${fault.plane.strike.toFixed(1)}°/${fault.plane.dip.toFixed(1)}°`] },
        sources: ['Plane geometry'],
      }),
    }
  } catch (error) {
    if (error instanceof DegenerateError) return undefined
    throw error
  }
}
