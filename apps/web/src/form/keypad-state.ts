import type { Dimension } from '@lodebook/reckon/units'
import { signal } from '@preact/signals'

/** The field that the keypad types into; undefined when it is shut. */
export const typingInto = signal<{ readonly input: HTMLInputElement, readonly label: string, readonly keys: readonly string[] } | undefined>(undefined)

const coarse = matchMedia('(pointer: coarse)')
const asked = localStorage.getItem('keypad')
/** Whether fields for figures get big keys of our own: on a touch screen, unless the crew has said otherwise on this device. */
export const bigKeys = signal(asked === null ? coarse.matches : asked === 'big')
export function useBigKeys(yes: boolean): void {
  bigKeys.value = yes
  localStorage.setItem('keypad', yes ? 'big' : 'phone')
  if (!yes) typingInto.value = undefined
}

const byDimension: Partial<Record<Dimension, readonly string[]>> = {
  length: ['\'', '"', '½', '¼', '¾', '/', 'ft', 'in', 'm', 'cm'],
  azimuth: ['N', 'S', 'E', 'W', '-', '½'],
  inclination: ['−', '½', 'up', 'down', '-'],
  angle: ['−', '½', '-'],
  mass: ['g', 'kg', 'mg', 'lb', 'oz', '<', 'nil'],
  grade: ['g/t', 'oz/ton', 'dwt', 'ppb', '<', 'tr', 'nil'],
  temperature: ['−', '°C', '°F'],
  concentration: ['ppm', '%', '<', 'nil'],
  percent: ['%', '<'],
}
/** The marks and units that a value of that sort may need beside figures. */
export const keysFor = (dimension: Dimension | undefined): readonly string[] => dimension === undefined ? [] : byDimension[dimension] ?? []

/** The key that takes away what is before the caret. */
export const takeBack = '⌫'

/** Types a text where the caret is, or takes away what is before it, as a keyboard would. */
export function type(input: HTMLInputElement, text: string): void {
  const start = input.selectionStart ?? input.value.length, end = input.selectionEnd ?? start
  if (text === takeBack) input.setRangeText('', start === end ? Math.max(0, start - 1) : start, end, 'end')
  else input.setRangeText(/^[a-z]{2,}|^[a-z]$/i.test(text) && /\d$/.test(input.value.slice(0, start)) ? ` ${text}` : text, start, end, 'end')
  input.dispatchEvent(new Event('input', { bubbles: true }))
}
