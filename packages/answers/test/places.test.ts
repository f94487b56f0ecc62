import type { Place } from '@lodebook/book'
import type { Quantity } from '@lodebook/reckon/units'
import { describe, expect, it } from 'vitest'
import { isLocated, locate } from '../src/places/place-in-space.ts'
import type { Located, PlaceContext, StationPlace, Walls } from '../src/places/place-in-space.ts'

const m = (value: number): Quantity => ({ text: `${value} m`, value, unit: 'm' })

/** Walls as taped looking north: 0.5 m to the left, 0.9 m to the right; changed over when looking back south. */
const walls = (azimuth: number): Walls => {
  const back = Math.cos(azimuth * Math.PI / 180) < 0
  return { left: back ? 0.9 : 0.5, right: back ? 0.5 : 0.9, up: 1.1, down: 0.7, taped: true }
}
const station = (east: number, north: number, onward?: string): StationPlace =>
  ({ point: [east, north, 50], sigma: [0.1, 0.2, 0.3], entries: ['shot-1'], walls, onward })

const context: PlaceContext = {
  stations: new Map([['A1', station(0, 0, 'A2')], ['A2', station(0, 10)], ['A3', station(0, 20, 'A2')]]),
  grid: { origin: undefined, rotation: 0, from: [], sentence: '', fromGps: () => undefined }, precision: 0.15,
}
const at = (place: Place) => {
  const found = locate(place, context)
  expect(isLocated(found), JSON.stringify(found)).toBe(true)
  return found as Located
}

describe('places', () => {
  it('[L1] a mark on the left rib stands left of the line, looking from the station to the other', () => {
    expect(at({ by: 'station', station: 'A1', toward: 'A2', along: m(4), side: 'left rib' }).point).toEqual([-0.5, 4, 50])
    // Looking back the other way the same rib is on the right.
    const back = at({ by: 'station', station: 'A2', toward: 'A1', along: m(6), side: 'right rib' }).point
    expect(back[0]).toBeCloseTo(-0.5, 12)
    expect(back[1]).toBeCloseTo(4, 12)
  })

  it('[L2] height is above the sill; back and sill stand by their own offsets', () => {
    expect(at({ by: 'station', station: 'A1', toward: 'A2', along: m(1), side: 'right rib', height: m(1.2) }).point[2]).toBeCloseTo(50 - 0.7 + 1.2, 12)
    expect(at({ by: 'station', station: 'A1', toward: 'A2', side: 'back' }).point[2]).toBeCloseTo(51.1, 12)
    expect(at({ by: 'station', station: 'A1', toward: 'A2', side: 'sill' }).point[2]).toBeCloseTo(49.3, 12)
  })

  it('[L3] where one way only leads on it need not be said; where several do it is asked', () => {
    expect(at({ by: 'station', station: 'A1', along: m(3) }).point[1]).toBeCloseTo(3, 12)
    expect(locate({ by: 'station', station: 'A2', along: m(3) }, context)).toEqual({ why: '3 m from A2, but it does not say towards which station' })
  })

  it('[L4] two tapes meet on the named hand of the line between the stations', () => {
    const taped = (turn: 'left' | 'right') => at({ by: 'tapes', first: { station: 'A1', distance: m(5) }, second: { station: 'A2', distance: m(Math.sqrt(9 + 36)) }, turn, height: m(0.7) }).point
    expect(taped('right')[0]).toBeCloseTo(3, 9)
    expect(taped('right')[1]).toBeCloseTo(4, 9)
    expect(taped('left')[0]).toBeCloseTo(-3, 9)
    expect(locate({ by: 'tapes', first: { station: 'A1', distance: m(1) }, second: { station: 'A2', distance: m(2) } }, context)).toHaveProperty('why')
  })

  it('[L5] what can\'t be put anywhere says why, and is not guessed', () => {
    expect(locate(undefined, context)).toEqual({ why: 'no place was written' })
    expect(locate({ by: 'words', words: 'near the old chute' }, context)).toEqual({ why: 'known in words only: near the old chute' })
    expect(locate({ by: 'station', station: 'Z9' }, context)).toEqual({ why: 'station Z9 has not been surveyed' })
    expect(locate({ by: 'gps', latitude: 41, longitude: -117 }, context)).toHaveProperty('why')
  })

  it('[L6] a mark is known no better than its station, and worse where no offset was taped', () => {
    const taped = at({ by: 'station', station: 'A1', toward: 'A2', side: 'left rib' }).sigma
    expect(taped[0]).toBeGreaterThan(0.1)
    const bare = (s: StationPlace): StationPlace => ({ ...s, walls: a => ({ ...walls(a), taped: false }) })
    const untaped = { ...context, stations: new Map([...context.stations].map(([name, s]) => [name, bare(s)])) }
    expect((locate({ by: 'station', station: 'A1', toward: 'A2', side: 'left rib' }, untaped) as Located).sigma[0]).toBeGreaterThan(taped[0])
  })
})
