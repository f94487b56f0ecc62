import type { Making } from '../making.ts'
import { stated } from '../truth/stated.ts'
import { timeOn } from '../write/clock.ts'
import { everyone, mineName, moss } from '../write/crew.ts'
import { clothTape, firstCompass, secondCompass, steelTape, tools } from './tools.ts'

/** The mine itself and the crew's tools, each by what it is and not by a maker. */
export function mineAndTools({ diary }: Making): void {
  const day = '2026-04-27'
  diary.write(moss, timeOn(day, 18), 'mine', {
    name: mineName, district: 'Nowhere district (invented)', latitude: `${stated.latitude}`, longitude: `${stated.longitude}`, elevation: `${stated.portal[2]} m`, datum: 'sea level by hand GPS',
    currency: 'USD', people: everyone, units: 'feet and oz/ton',
    note: 'INVENTED DATA. This mine, its district, its people and every reading in this book were made up by a script, so that the book can be tried out. '
      + 'The latitude and longitude lie on an empty salt flat. Nothing here may be used for any decision about real ground.',
  })
  const compass = `${tools.compass}`
  const rows: readonly Record<string, string>[] = [
    { name: firstCompass, sort: 'compass and clinometer', anglePrecision: compass, calibrated: day, note: 'Checked on the road between two posts.' },
    { name: secondCompass, sort: 'compass and clinometer', correction: `${tools.secondCompassLow}`, anglePrecision: compass, calibrated: day, note: 'Reads a degree low against the brass one, so a degree is added.' },
    { name: clothTape, sort: 'tape', lengthPrecision: '2 cm', note: '30 m, a little stretched.' },
    { name: steelTape, sort: 'tape', lengthPrecision: '1 cm' },
    { name: 'VLF detector', sort: 'detector', note: 'Two coils, small and large.' },
    { name: 'four-gas meter', sort: 'gas meter', calibrated: day, note: 'Oxygen, carbon monoxide, methane, hydrogen sulphide. It does not read carbon dioxide or radon.' },
    { name: 'spring scale', sort: 'scale', note: 'Bags to 25 lb.' },
    { name: 'jeweller\'s scale', sort: 'scale', note: 'Reads to a milligram.' },
    { name: 'sling thermometer', sort: 'other', note: 'Wet and dry bulb.' },
  ]
  rows.forEach((row, i) => diary.write(moss, timeOn(day, 18, 10 + 3 * i), 'instrument', row))
}
