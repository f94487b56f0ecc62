/** What is half written, as typed, by field; kept on the device at every key, so that a flat battery costs nothing. */
export type Texts = Readonly<Record<string, string>>

const key = (kind: string, entry: string | undefined): string => `draft:${kind}${entry === undefined ? '' : `:${entry}`}`

export function keptDraft(kind: string, entry?: string): Texts | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key(kind, entry)) ?? 'null')
    if (typeof kept !== 'object' || kept === null) return undefined
    return Object.fromEntries(Object.entries(kept).filter((pair): pair is [string, string] => typeof pair[1] === 'string'))
  } catch { return undefined }
}

export const keepDraft = (kind: string, texts: Texts, entry?: string): void => localStorage.setItem(key(kind, entry), JSON.stringify(texts))
export const dropDraft = (kind: string, entry?: string): void => localStorage.removeItem(key(kind, entry))

/** Kinds of which a new entry is half written. */
export const kindsBegun = (): readonly string[] =>
  Object.keys(localStorage).flatMap(k => /^draft:([a-z-]+)$/.exec(k)?.[1] ?? [])
