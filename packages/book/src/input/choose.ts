import type { Read } from './read.ts'
import { says, wants } from './read.ts'

const plain = (word: string): string => word.toLowerCase().replace(/[\s_-]+/g, ' ').trim()

/**
 * Finds which of the words is meant, without regard to case, hyphens and underscores.
 * @param also  other words for some of them
 */
export function choose(text: string, of: readonly string[], also: Readonly<Record<string, string>> = {}): Read<string> {
  const found = of.find(word => plain(word) === plain(text)) ?? also[Object.keys(also).find(word => plain(word) === plain(text)) ?? '']
  return found === undefined ? wants(`one of ${of.join(', ')}`) : says(found)
}

const yes = ['yes', 'y', 'true', '1', 'x', '✓']
const no = ['no', 'n', 'false', '0']

export const readYesNo = (text: string): Read<boolean> =>
  yes.includes(text.toLowerCase()) ? says(true) : no.includes(text.toLowerCase()) ? says(false) : wants('yes or no')
