/** The gases a crew's meter reads and the unit they are read in. */
export const gases = {
  O2: { name: 'oxygen', field: 'o2_pct', unit: '%' },
  CO: { name: 'carbon monoxide', field: 'co_ppm', unit: 'ppm' },
  CO2: { name: 'carbon dioxide', field: 'co2_ppm', unit: 'ppm' },
  CH4: { name: 'methane', field: 'ch4_pct', unit: '%' },
  H2S: { name: 'hydrogen sulphide', field: 'h2s_ppm', unit: 'ppm' },
  NO2: { name: 'nitrogen dioxide', field: 'no2_ppm', unit: 'ppm' },
} as const

export type Gas = keyof typeof gases
export const gasNames = Object.keys(gases) as readonly Gas[]

/** One set of readings at one place and moment: O2 and CH4 in per cent by volume, the others in parts per million. */
export type GasReadings = Readonly<Partial<Record<Gas, number>>>
