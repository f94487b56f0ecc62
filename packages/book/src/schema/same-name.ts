/** Bag B-017, b-017 and `B-017 ` are one name to a person; so they are one name here. */
export const sameName = (name: string): string => name.trim().replace(/\s+/g, ' ').toLowerCase()
