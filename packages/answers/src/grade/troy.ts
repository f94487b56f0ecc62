/** One troy ounce: 480 grains of 64.79891 mg. */
export const gramsPerOunce = 31.1034768
