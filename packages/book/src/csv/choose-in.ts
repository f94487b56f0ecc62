import type { FieldType } from '../kinds/index.ts'
import { loosely } from './heading-text.ts'

type Choices = Extract<FieldType, { type: 'choice' }>

/** `by` holds the words that gave the meaning, where the cell is not the choice itself. */
export interface Chosen { readonly choice: string, readonly by?: string }

const words = (text: string): string => ` ${text.toLowerCase().split(/[^\p{L}\p{N}]+/u).filter(word => word !== '').join(' ')} `

/**
 * Which choice a cell means: the choice itself, or what the crew says that words in it mean.
 * @returns undefined where it means none, or where its words mean two different ones
 */
export function choose(text: string, { of, also = {} }: Choices, read: readonly { readonly text: string, readonly choice: string }[]): Chosen | undefined {
  const itself = of.find(choice => loosely(choice) === loosely(text)) ?? Object.keys(also).find(word => loosely(word) === loosely(text))
  if (itself !== undefined) return { choice: also[itself] ?? itself }
  const meant = read.filter(one => words(text).includes(words(one.text)))
  const [first] = meant
  return first === undefined || meant.some(one => one.choice !== first.choice) ? undefined : { choice: first.choice, by: first.text }
}
