import { book } from '../link/desk.ts'

/** The unit of the crew's tapes and of scale bars. */
export const tapeUnit = (): 'ft' | 'm' => book.value?.units === 'feet and oz/ton' ? 'ft' : 'm'
