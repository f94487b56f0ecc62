/** The name of a field inside another as messages write it: legs[3].azimuth. */
export function at(parent: string, key: string | number): string {
  if (typeof key === 'number') return `${parent}[${key}]`
  if (!/^[\w-]+$/.test(key)) return `${parent}[${JSON.stringify(key)}]`
  return parent === '' ? key : `${parent}.${key}`
}

/** The name of the field at a path. */
export const fieldPath = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((field, key) => at(field, typeof key === 'symbol' ? String(key) : key), '')

/** What stands at a path; undefined where there is nothing. */
export const valueAt = (root: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((value, key) => typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined, root)
