import type { Entry } from '@lodebook/book'
import { utm } from '@lodebook/reckon/survey'
import { numberOf, placeOf, textOf, valueOf } from '../read.ts'
import type { RescueFacts } from './shapes.ts'

const sexagesimal = (degrees: number, positive: string, negative: string): string => {
  const seconds = Math.round(Math.abs(degrees) * 36_000) / 10, d = Math.floor(seconds / 3600)
  const m = Math.floor(seconds % 3600 / 60), s = (seconds % 60).toFixed(1)
  return `${d}° ${String(m).padStart(2, '0')}′ ${s.padStart(4, '0')}″ ${degrees < 0 ? negative : positive}`
}
const minutes = (degrees: number, positive: string, negative: string): string => {
  const all = Math.round(Math.abs(degrees) * 60_000) / 1000, d = Math.floor(all / 60)
  return `${d}° ${(all % 60).toFixed(3).padStart(6, '0')}′ ${degrees < 0 ? negative : positive}`
}

/** Where the portal is, in the forms that rescuers ask for. The GPS tie at the portal counts before the mine's own latitude and longitude. */
export function rescueFacts(mine: Entry | undefined, ties: readonly Entry[], portal: string | undefined): RescueFacts {
  const fixes = ties.filter(tie => placeOf(tie)?.by === 'gps'), fix = fixes.find(tie => textOf(tie, 'station') === portal) ?? fixes[0], place = fix && placeOf(fix)
  const at = place?.by === 'gps' ? { latitude: place.latitude, longitude: place.longitude } : { latitude: mine && numberOf(mine, 'latitude'), longitude: mine && numberOf(mine, 'longitude') }
  const { latitude, longitude } = at, elevation = mine && valueOf(mine, 'elevation')
  const known = latitude !== undefined && longitude !== undefined
  const grid = known ? utm({ latitude, longitude }) : undefined
  return {
    mine: (mine && textOf(mine, 'name')) ?? 'The mine has no name yet', district: mine && textOf(mine, 'district'),
    position: known && grid ? [
      { form: 'Degrees, WGS 84', text: `${latitude.toFixed(6)}, ${longitude.toFixed(6)}` },
      { form: 'Degrees and minutes', text: `${minutes(latitude, 'N', 'S')}, ${minutes(longitude, 'E', 'W')}` },
      { form: 'Degrees, minutes, seconds', text: `${sexagesimal(latitude, 'N', 'S')}, ${sexagesimal(longitude, 'E', 'W')}` },
      { form: 'UTM', text: `zone ${grid.zone} ${latitude < 0 ? 'south' : 'north'}, ${grid.easting.toFixed(0)} east, ${grid.northing.toFixed(0)} north` },
      ...elevation === undefined ? [] : [{ form: 'Elevation', text: `${elevation.toFixed(0)} m, ${(elevation / 0.3048).toFixed(0)} ft` }],
    ] : [],
    note: place?.by === 'gps' ? `GPS fix at station ${textOf(fix!, 'station')!}` : known ? 'latitude and longitude of the mine, as written' : 'Where the mine is has not been written: put a GPS tie at the portal.',
  }
}
