import { imperial, metric, tapeText } from '@lodebook/answers'
import { book } from '../link/desk.ts'

/** Metres as the crew's tape reads them: '7 ft 3 in' or '2.21 m'. */
export const inTape = (metres: number): string => tapeText(metres, book.value?.units === 'feet and oz/ton' ? imperial : metric)
