import { signal } from '@preact/signals'

/** The last piece of news, said once by a screen reader and shown in the news line. */
export const newsOf = signal('')
