/** Below this many samples a variogram is noise drawn as a curve. Common practice, no source. */
export const fewestForVariogram = 10
