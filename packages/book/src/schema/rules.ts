import type { Quantity } from '@lodebook/reckon/units'
import { dipToward } from '../input/dip-toward.ts'
import type { Place } from '../place.ts'
import { airDoubt } from './air-doubts.ts'
import type { Rule } from './rule.ts'
import { after, differ, needs, notBoth, ordered, oneOf } from './rule.ts'

const tapeDirection: readonly Rule[] = [
  needs('direction', ['along a line'], 'trend', 'the trend of the tape'),
  needs('direction', ['along a line'], 'plunge', 'the plunge of the tape'),
]

const placeIsNumbers: Rule = (fields) => {
  const place = fields['place'] as Place | undefined
  return place === undefined || place.by === 'grid' || place.by === 'gps' ? undefined
    : { field: 'place', expected: 'grid or GPS numbers', sentence: 'a tie joins a station to the grid or to GPS, so it takes grid or GPS numbers' }
}

/** A receiver without a fix, and a form filled in with noughts, both say 0, 0: a point in the sea off Africa. */
const notAtNought: Rule = fields => fields['latitude'] === 0 && fields['longitude'] === 0
  ? { field: 'latitude', expected: 'the mine\'s own latitude and longitude', sentence: '0, 0 lies in the sea off Africa; it is what a receiver without a fix shows' } : undefined

const steepest = 80 // degrees from which a sight to the rock needs no azimuth

const needsAzimuth: Rule = (fields) => {
  const tilt = (fields['inclination'] as { readonly value: number | null } | undefined)?.value ?? 0
  return fields['azimuth'] !== undefined || Math.abs(tilt) >= steepest ? undefined
    : { field: 'azimuth', expected: 'the azimuth of the sight', sentence: 'nothing is written; a sight that is not plumb needs its azimuth' }
}

const planeOrLine: Rule = (fields) => {
  const striae = fields['feature'] === 'striae'
  const plane = fields['strike'] !== undefined || fields['dipDirection'] !== undefined
  if (fields['trend'] !== undefined || plane || fields['rake'] !== undefined) return undefined
  return striae
    ? { field: 'trend', expected: 'trend and plunge, or rake in a plane', sentence: 'striae need a trend and plunge, or a rake in a plane' }
    : { field: 'strike', expected: 'strike and dip', sentence: 'no strike and dip are written, so it counts for no direction', doubt: true }
}

const closedOutline: Rule = (fields) => {
  const corners = fields['corners']
  return Array.isArray(corners) && corners.length < 3 ? { field: 'corners', expected: 'three or more places', sentence: 'an outline needs three or more corners' } : undefined
}

const noStandingStill: Rule = (fields) => {
  const stations = fields['stations'] as readonly string[] | undefined
  const twice = stations?.findIndex((name, i) => i > 0 && name === stations[i - 1]) ?? -1
  return twice < 0 ? undefined : { field: `stations[${twice}]`, expected: 'another station than the one before', sentence: `${stations![twice]!} stands twice in a row` }
}

/** A dip written with the side it goes down to must go down to the right of its strike, or to its dip direction. */
const dipSide: Rule = (fields) => {
  const [dip, strike, direction] = ['dip', 'strike', 'dipDirection'].map(name => fields[name] as Quantity | undefined)
  const toward = dip === undefined ? undefined : dipToward(dip.text).toward
  const down = typeof direction?.value === 'number' ? direction.value : typeof strike?.value === 'number' ? strike.value + 90 : undefined
  if (dip === undefined || toward === undefined || down === undefined || turnBetween(toward, down) < 90) return undefined
  if (direction !== undefined) return { field: 'dip', expected: 'a dip towards the dip direction', sentence: `${dip.text} does not go down towards ${direction.text}, the dip direction` }
  const other = Math.round(((strike!.value! + 180) % 360) * 10) / 10
  const expected = turnBetween(toward, down) > 90 ? `strike ${other}` : 'a strike that is not the way the plane dips'
  return { field: 'strike', expected, sentence: `a plane with strike ${strike!.text} dips to its right, towards ${Math.round(down % 360)}, and the dip is written ${dip.text}; expected ${expected}` }
}

const turnBetween = (a: number, b: number): number => Math.abs(((a - b) % 360 + 540) % 360 - 180)

const pieceIsBagged: Rule = fields => fields['became'] === 'piece for the mortar' && fields['bag'] === undefined
  ? { field: 'bag', expected: 'the bag it went into', sentence: 'without the bag of this piece its gold can never be joined to the signal', doubt: true } : undefined

/** What the fields of one entry must say together, by kind. */
export const rules: Readonly<Record<string, readonly Rule[]>> = {
  mine: [notAtNought],
  shot: [differ('from', 'to', 'a shot goes from one station to another; both are the same here')],
  tie: [placeIsNumbers, needs('levelAccuracy', undefined, 'level', 'the elevation that is so good')],
  'wall-shot': [needsAzimuth],
  rename: [differ('was', 'now', 'the new name is the old one')],
  paced: [differ('from', 'to', 'a leg goes from one station to another; both are the same here'), oneOf('paces', [['paces'], ['distance']], 'the paces, or a length by eye')],
  heading: [noStandingStill],
  'worked-out': [closedOutline],
  panel: [closedOutline],
  heap: [oneOf('volume', [['volume'], ['length', 'breadth', 'height']], 'the volume, or length, breadth and mean height')],
  structure: [
    notBoth('strike', 'dipDirection', 'strike and dip direction say the same thing twice; write one of them'),
    needs('strike', undefined, 'dip', 'the dip of the plane'),
    needs('dipDirection', undefined, 'dip', 'the dip of the plane'),
    fields => fields['dip'] === undefined ? undefined : oneOf('strike', [['strike'], ['dipDirection']], 'the strike or the dip direction of the plane')(fields),
    needs('trend', undefined, 'plunge', 'the plunge of the line'),
    needs('plunge', undefined, 'trend', 'the trend of the line'),
    fields => fields['rake'] === undefined ? undefined : oneOf('dip', [['dip']], 'the plane in which the rake is measured')(fields),
    planeOrLine,
    dipSide,
  ],
  instrument: [fields => fields['sort'] === 'gas meter' && fields['calibrated'] === undefined
    ? { field: 'calibrated', expected: 'the day on which the meter was calibrated', sentence: 'no calibration date is written, so nobody can say how far its readings are to be trusted', doubt: true } : undefined],
  width: [...tapeDirection, ordered('gouge', 'measured', 'the gouge is thicker than the width it is a part of', { at: 'gouge' })],
  air: [
    oneOf('oxygen', ['oxygen', 'carbonMonoxide', 'carbonDioxide', 'methane', 'hydrogenSulphide', 'nitrogenDioxide', 'radon', 'airSpeed', 'airDirection', 'dryBulb',
      'wetBulb', 'barometer'].map(name => [name]), 'at least one reading', true),
    ordered('wetBulb', 'dryBulb', 'the wet bulb reads warmer than the dry bulb', { doubt: true }),
    airDoubt,
  ],
  sample: [
    ...tapeDirection,
    needs('role', ['duplicate'], 'duplicateOf', 'the bag it is a duplicate of'),
    needs('role', ['standard'], 'standard', 'the name of the standard'),
    differ('bag', 'duplicateOf', 'a bag cannot be its own duplicate'),
    ordered('mass', 'massWet', 'the dry mass is more than the wet mass'),
  ],
  split: [differ('bag', 'of', 'the new bag carries the number of the bag it was split from')],
  pan: [
    needs('found', undefined, 'seeded', 'the number of grains seeded'),
    ordered('found', 'seeded', 'more seeded grains were found than were put in', { at: 'found' }),
    oneOf('colours', [['colours'], ['goldMass']], 'what was seen in the pan (colours, or gold weighed; an empty list or nil when there was none)', true),
  ],
  assay: [
    notBoth('gold', 'result', 'a grade is written, and that there is none'),
    needs('plusGold', undefined, 'plusMass', 'the mass of what stayed on the screen'),
    needs('plusGold', undefined, 'minusMass', 'the mass of what passed the screen'),
    needs('plusGold', undefined, 'minusGold', 'the grade of what passed the screen'),
    needs('minusGold', undefined, 'plusGold', 'the grade of what stayed on the screen'),
    needs('minusAgain', undefined, 'minusGold', 'the grade of the first charge'),
  ],
  sweep: [needs('result', ['marks found'], 'marks', 'the marks that were found')],
  photo: [needs('markX', undefined, 'markY', 'how far down the picture the spot is'), needs('markY', undefined, 'markX', 'how far across the picture the spot is')],
  'target-check': [pieceIsBagged],
  'label-roll': [ordered('first', 'last', 'the last number comes before the first')],
  standard: [needs('sort', ['standard'], 'gold', 'its certified gold grade')],
  density: [
    oneOf('density', [['density'], ['dry', 'inWater'], ['bulkMass', 'bulkVolume'], ['dry', 'bulkVolume']],
      'the density, or the masses dry and in water, or a mass and the bulk volume'),
    ordered('inWater', 'dry', 'the mass in water is more than the dry mass'),
  ],
  relic: [ordered('from', 'to', 'the last year comes before the first')],
  crushing: [ordered('from', 'to', 'the last year comes before the first')],
  'going-in': [
    after('in', 'due', 'they are due out before they went in'),
    after('in', 'out', 'they came out before they went in'),
  ],
  assumption: [
    ordered('low', 'high', 'the high value is less than the low one'),
    ordered('low', 'value', 'the value is less than the low one'),
    ordered('value', 'high', 'the high value is less than the value'),
  ],
}
