import { book } from '../../link/desk.ts'
import { crewText } from '../../words/crew-value.ts'

/** How far in, in the crew's units: '230 ft in'. */
export const farText = (distance: number | undefined): string =>
  distance === undefined ? 'not placed' : distance < 0.5 ? 'portal' : crewText(distance, 'm', book.value?.units ?? 'metres and g/t', 1)
