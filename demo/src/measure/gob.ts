/** The stacked waste in the old stope: lean, but picked over by eye only. Grade is lognormal about its median, g/t. */
export const gob = { median: 3, logDeviation: 0.7, tonnes: 14 } as const
