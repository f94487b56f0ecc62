type Given<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & { [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined> }

/** The fields that were given: one left out stays left out, so that its usual value holds. */
export const given = <T extends object>(fields: T): Given<T> => Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Given<T>
