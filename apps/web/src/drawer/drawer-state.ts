import type { Answer } from '@lodebook/answers'
import { signal } from '@preact/signals'

/** One page of the drawer: a figure's trail, an entry, or a choice among things that lie under one finger. */
export type Page =
  | { readonly is: 'answer', readonly answer: Answer<unknown> }
  | { readonly is: 'entry', readonly id: string }
  | { readonly is: 'several', readonly title: string, readonly of: readonly { readonly label: string, readonly page: Page }[] }

/** The pages open on top of each other, the one seen last. Empty: the drawer is shut. */
export const drawer = signal<readonly Page[]>([])

/** Opens the drawer afresh. */
export const open = (page: Page): void => { drawer.value = [page] }
/** One level down. */
export const deeper = (page: Page): void => { drawer.value = [...drawer.value, page] }
export const back = (): void => { drawer.value = drawer.value.slice(0, -1) }
export const shut = (): void => { drawer.value = [] }

// The drawer belongs to the page it was opened on.
addEventListener('hashchange', shut)

export const openAnswer = (answer: Answer<unknown>): void => open({ is: 'answer', answer })
export const openEntry = (id: string): void => open({ is: 'entry', id })
