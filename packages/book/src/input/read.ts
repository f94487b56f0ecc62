/** What a written text says, or what would be right in its place and why it is not. */
export type Read<T> = { readonly ok: true, readonly value: T } | { readonly ok: false, readonly expected: string, readonly why?: string }

export const says = <T>(value: T): { readonly ok: true, readonly value: T } => ({ ok: true, value })
export const wants = (expected: string, why?: string): { readonly ok: false, readonly expected: string, readonly why?: string } =>
  ({ ok: false, expected, ...(why === undefined ? {} : { why }) })
