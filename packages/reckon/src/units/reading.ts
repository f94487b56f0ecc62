/** Why a written value will not do: what stood there, what would be right, and in one sentence why. Never thrown. */
export interface Problem { readonly value: string, readonly expected: string, readonly why: string }

export type Reading<T> = { readonly ok: true, readonly value: T } | { readonly ok: false, readonly why: string }

export const read = <T>(value: T): Reading<T> => ({ ok: true, value })
export const refuse = (why: string): { readonly ok: false, readonly why: string } => ({ ok: false, why })
