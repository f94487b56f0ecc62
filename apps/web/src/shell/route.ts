import { signal } from '@preact/signals'

/** Where the reader is: the parts of the address after '#/'. */
const read = (): readonly string[] => location.hash.replace(/^#\/?/, '').split('/').filter(Boolean).map(decodeURIComponent)

export const route = signal<readonly string[]>(read())

export const linkTo = (...parts: readonly string[]): string => `#/${parts.map(encodeURIComponent).join('/')}`
export const go = (...parts: readonly string[]): void => { location.hash = linkTo(...parts) }

addEventListener('hashchange', () => { route.value = read() })
