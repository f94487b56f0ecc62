type Left<T> = { [K in keyof T]: undefined extends T[K] ? K : never }[keyof T]
type Given<T> = Omit<T, Left<T>> & { [K in Left<T>]?: Exclude<T[K], undefined> }

/** The fields that were given: one left out stays left out, so that its usual value holds. */
export const given = <T extends object>(fields: T): Given<T> =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Given<T>
