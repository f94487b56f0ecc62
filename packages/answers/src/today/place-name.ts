import type { Place } from '@lodebook/book'

/** Where something is, in a few words that stay the same for the same place: readings at one place make one line through time. */
export function placeName(place: Place | undefined): string {
  switch (place?.by) {
    case undefined: return 'no place written'
    case 'station': return [place.station, place.along ? `+ ${place.along.text}` : '', place.along && place.toward ? `toward ${place.toward}` : ''].filter(Boolean).join(' ')
    case 'tapes': return `taped from ${place.first.station} and ${place.second.station}`
    case 'grid': return place.text ?? `E ${place.east.toFixed(1)} N ${place.north.toFixed(1)}`
    case 'gps': return place.text ?? `${place.latitude.toFixed(5)}, ${place.longitude.toFixed(5)}`
    case 'words': return place.words
  }
}
